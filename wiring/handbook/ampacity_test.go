package handbook

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/quantity"
)

var insulations = []quantity.Celsius{60, 75, 80, 90, 105, 125, 200}

// 33 CFR 183.425 Table 5, every cell.
func TestAmpacityAgainstTable(t *testing.T) {
	rows := check(t, "ampacity_33cfr183.csv")
	if len(rows) != 15 {
		t.Fatalf("%d rows, want 15", len(rows))
	}
	for _, row := range rows {
		size := row.gauge(t, "awg")
		for _, c := range insulations {
			got, err := Default().Ampacity(size, c)
			if err != nil {
				t.Fatal(err)
			}
			want := row.must(t, "A_"+strconv.Itoa(int(c))+"C")
			if float64(got.Amps) != want || !got.Exact() || got.Note() != "" {
				t.Errorf("%v at %v = %v (%s), want %v", size, c, got.Amps, got.Note(), want)
			}
		}
	}
}

func TestAmpacityBetweenRows(t *testing.T) {
	tests := []struct {
		size       string
		insulation quantity.Celsius
		want       quantity.Ampere
		note       string
	}{
		{"35 mm2", 105, 210, "35 mm2 counts as the next smaller row, 2 AWG"},
		{"250 kcmil", 105, 445, "250 kcmil counts as the next smaller row, 4/0 AWG"},
		{"10 SAE", 105, 45, "10 SAE counts as the next smaller row, 12 AWG"},
		{"5 AWG", 105, 120, "5 AWG counts as the next smaller row, 6 AWG"},
		{"10 AWG", 110, 60, "110 C insulation counts as 105 C"},
		{"10 AWG", 250, 70, "250 C insulation counts as 200 C"},
		{"1 mm2", 70, 10, "1 mm2 counts as the next smaller row, 18 AWG; 70 C insulation counts as 60 C"},
	}
	for _, test := range tests {
		size, err := quantity.ParseSize(test.size)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Default().Ampacity(size, test.insulation)
		if err != nil || got.Amps != test.want || got.Note() != test.note || got.Exact() {
			t.Errorf("%v at %v = %v (%s), %v; want %v (%s)", size, test.insulation, got.Amps, got.Note(), err, test.want, test.note)
		}
	}
}

func TestAmpacityFaults(t *testing.T) {
	tests := []struct {
		size       quantity.Size
		insulation quantity.Celsius
		says       string
	}{
		{quantity.Gauge(20), 105, "no ampacity is tabled for 20 AWG: the smallest row is 18 AWG"},
		{quantity.Gauge(2), 50, "no ampacity is tabled for 50 C insulation: the lowest column is 60 C"},
		{quantity.Gauge(2), 0, "no ampacity is tabled for 0 C insulation: the lowest column is 60 C"},
		{quantity.Size{}, 105, "no conductor size is stated"},
		{quantity.Size{System: quantity.SAE, Number: 3}, 105, "the handbook has no copper area for 3 SAE"},
	}
	for _, test := range tests {
		got, err := Default().Ampacity(test.size, test.insulation)
		if err == nil || !strings.HasPrefix(err.Error(), test.says) {
			t.Errorf("%v at %v = %v, %v; want %q", test.size, test.insulation, got.Amps, err, test.says)
		}
	}
}

// More copper or better insulation never carries less, whatever the size is counted in.
func TestAmpacityRises(t *testing.T) {
	anyArea := rapid.Float64Range(0.9, 400)
	rapid.Check(t, func(t *rapid.T) {
		low, high := anyArea.Draw(t, "a"), anyArea.Draw(t, "b")
		if low > high {
			low, high = high, low
		}
		cool := rapid.SampledFrom(insulations).Draw(t, "insulation")
		warm := cool + quantity.Celsius(rapid.IntRange(0, 100).Draw(t, "more"))
		a, errA := Default().Ampacity(quantity.Size{System: quantity.MM2, Number: low}, cool)
		b, errB := Default().Ampacity(quantity.Size{System: quantity.KCMIL, Number: CircularMils(quantity.SquareMillimetre(high)) / 1000}, warm)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if a.Amps > b.Amps {
			t.Fatalf("%g mm2 at %v carries %v, %g mm2 at %v only %v", low, cool, a.Amps, high, warm, b.Amps)
		}
	})
}

// Notes 1 and 2 of Table 5; the sqrt_law column was computed outside Go.
func TestDeratingAgainstTable(t *testing.T) {
	for _, row := range check(t, "ampacity_33cfr183_factors.csv") {
		want := row.must(t, "factor")
		switch row["kind"] {
		case "engine_space":
			checkEngineSpace(t, row, want)
		case "bundle":
			from, to, ok := countRange(row["key"])
			if !ok {
				t.Fatalf("bundle %q", row["key"])
			}
			if to == 0 {
				to = from + 100
			}
			for n := from; n <= to; n++ {
				near(t, "factor of "+strconv.Itoa(n), float64(Default().BundleFactor(n)), want, 0)
			}
		default:
			t.Errorf("kind %q", row["kind"])
		}
	}
	near(t, "factor of no conductor", float64(Default().BundleFactor(0)), 1, 0)
}

func checkEngineSpace(t *testing.T, row record, want float64) {
	t.Helper()
	insulation := quantity.Celsius(row.must(t, "key"))
	factor, status, ok := Default().EngineSpaceFactor(insulation)
	if !ok || float64(factor) != want || string(status) != row["status"] {
		t.Errorf("engine space at %v = %v (%s), want %v (%s)", insulation, factor, status, want, row["status"])
	}
	law := float64(AmbientFactor(insulation, 50))
	near(t, "law at "+row["key"], law, row.must(t, "sqrt_law"), 0.0006)
	if insulation < 200 { // where the rule prints 1.00
		near(t, "law against the rule at "+row["key"], law, want, 0.0101)
	}
}

func TestAmbientFactor(t *testing.T) {
	tests := []struct {
		insulation, ambient quantity.Celsius
		want                float64
	}{
		{105, 30, 1},
		{105, 20, 1}, // cold gives no credit
		{105, 40, 0.93},
		{75, 40, 0.88},
		{60, 60, 0},
		{60, 80, 0},
		{30, 25, 0},
		{20, 10, 0},
	}
	for _, test := range tests {
		near(t, "factor", float64(AmbientFactor(test.insulation, test.ambient)), test.want, 0.005)
	}
	if _, _, ok := Default().EngineSpaceFactor(100); ok {
		t.Error("the rule prints no factor for 100 C")
	}
}

// Time constants worked out by hand elsewhere from the same law, rounded to seconds.
func TestHeatingTime(t *testing.T) {
	want := map[int]float64{18: 19, 16: 31, 14: 40, 12: 61, 10: 86, 8: 123, 6: 138, 4: 197, 2: 289, 0: 396}
	for n, seconds := range want {
		got, err := Default().HeatingTime(quantity.Gauge(n))
		if err != nil {
			t.Fatal(err)
		}
		near(t, quantity.Gauge(n).String(), float64(got), seconds, 0.6)
	}
	if _, err := Default().HeatingTime(quantity.Gauge(22)); err == nil {
		t.Error("22 AWG has a time constant without an ampacity")
	}
}

// 300 A for 30 s is fine on 2 AWG at 105 C insulation (common practice): the law gives more.
func TestShortTime(t *testing.T) {
	tau, err := Default().HeatingTime(quantity.Gauge(2))
	if err != nil {
		t.Fatal(err)
	}
	if got := ShortTime(210, tau, 30); got < 300 {
		t.Errorf("2 AWG carries %v for 30 s, want at least 300 A", got)
	}
	near(t, "for ever", float64(ShortTime(210, tau, tau*1000)), 210, 1e-9)
	nearly(t, "for one time constant", float64(ShortTime(210, tau, tau)), 210/0.79506, 1e-4) // sqrt(1 - 1/e)
}
