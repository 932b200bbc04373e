package handbook

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// fuse_series.csv: usual catalogue ratings and NEC 240.6(A).
func TestFuseSeriesAgainstTable(t *testing.T) {
	for _, row := range check(t, "fuse_series.csv") {
		series, ok := Default().FuseSeries(row["series"])
		if !ok {
			t.Errorf("no series %s", row["series"])
			continue
		}
		var got []string
		for _, a := range series.Ratings {
			got = append(got, strings.TrimSuffix(a.String(), " A"))
		}
		if diff := cmp.Diff(strings.Fields(row["ratings_A"]), got); diff != "" {
			t.Errorf("series %s (-want +got):\n%s", series.Name, diff)
		}
		if series.Status != Memory {
			t.Errorf("series %s is %s", series.Name, series.Status)
		}
	}
}

// The styles are the words that fuses in kind files use.
func TestFuseSeriesByStyle(t *testing.T) {
	for _, style := range []string{"blade", "mini blade", "maxi blade", "SF30", "SF51", "single bolt", "ANL", "class T", "10x38", "breaker", "Blade"} {
		if _, ok := Default().FuseSeries(style); !ok {
			t.Errorf("no series for the style %s", style)
		}
	}
	if s, ok := Default().FuseSeries("bent wire"); ok {
		t.Errorf("a bent wire comes in %v", s.Ratings)
	}
}

func TestFuseSeriesSteps(t *testing.T) {
	blade, _ := Default().FuseSeries("blade")
	tests := []struct {
		amps, up, down quantity.Ampere // 0: none
	}{
		{0.5, 1, 0},
		{1, 1, 1},
		{8, 10, 7.5},
		{7.5, 7.5, 7.5},
		{40, 40, 40},
		{41, 0, 40},
	}
	for _, test := range tests {
		up, okUp := blade.AtLeast(test.amps)
		down, okDown := blade.AtMost(test.amps)
		if up != test.up || okUp != (test.up > 0) || down != test.down || okDown != (test.down > 0) {
			t.Errorf("around %v: %v up, %v down; want %v, %v", test.amps, up, down, test.up, test.down)
		}
	}
	if !blade.Has(15) || blade.Has(12) {
		t.Error("blade fuses come in 15 A and not in 12 A")
	}
}

// 33 CFR 183.455(c): never over 150 %; from 50 V up the ampacity, or the next rating up.
func TestHighestFuse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ampacity := quantity.Ampere(rapid.Float64Range(1, 500).Draw(t, "ampacity"))
		nominal := quantity.Volt(rapid.Float64Range(12, 80).Draw(t, "nominal"))
		series := rapid.SampledFrom(Default().AllFuseSeries()).Draw(t, "series")
		got := Default().HighestFuse(ampacity, nominal, series)
		if got > 1.5*ampacity+1e-9 || got < ampacity {
			t.Fatalf("%v over an ampacity of %v", got, ampacity)
		}
		if nominal < 50 && float64(got) != 1.5*float64(ampacity) {
			t.Fatalf("below 50 V: %v, want 150 %% of %v", got, ampacity)
		}
		if nominal >= 50 && got != ampacity && !series.Has(got) {
			t.Fatalf("from 50 V: %v is no rating of the %s", got, series.Name)
		}
	})
	nec, _ := Default().FuseSeries("NEC 240.6(A)")
	near(t, "55 A at 51.2 V", float64(Default().HighestFuse(55, 51.2, nec)), 60, 0)
	near(t, "2 A at 51.2 V", float64(Default().HighestFuse(2, 51.2, nec)), 2, 0) // 15 A would be over 150 %
	near(t, "55 A on 49.9 V", float64(Default().HighestFuse(55, 49.9, nec)), 82.5, 1e-9)
	near(t, "55 A on 50 V", float64(Default().HighestFuse(55, 50, nec)), 60, 0)
}

// Common practice, no published source: 80 %, and 10 % less above 45 C.
func TestLargestContinuous(t *testing.T) {
	near(t, "10 A fuse", float64(Default().LargestContinuous(10, 40)), 8, 1e-12)
	near(t, "10 A fuse at 45 C", float64(Default().LargestContinuous(10, 45)), 8, 1e-12)
	near(t, "10 A fuse in a hot box", float64(Default().LargestContinuous(10, 50)), 7.2, 1e-12)
}

// fuse_classes.csv: ISO 8820 scope texts and trade sheets.
func TestFuseClassesAgainstTable(t *testing.T) {
	byName := map[string][]FuseClass{}
	for _, c := range Default().AllFuseClasses() {
		byName[c.Name] = append(byName[c.Name], c)
	}
	next := map[string]int{}
	for _, row := range check(t, "fuse_classes.csv") {
		name := row["class"]
		i := next[name]
		next[name]++
		if i >= len(byName[name]) {
			t.Errorf("no class %s", name)
			continue
		}
		c := byName[name][i]
		near(t, name+" largest", float64(c.Largest), row.must(t, "max_rating_A"), 0)
		near(t, name+" breaks", float64(c.Breaks), row.must(t, "breaking_A"), 0)
		if string(c.Status) != row["status"] || c.Standard != row["standard"] {
			t.Errorf("%s of %s is %s, want %s, %s", name, c.Standard, c.Status, row["standard"], row["status"])
		}
		checkClassVoltages(t, c, row)
	}
}

func checkClassVoltages(t *testing.T, c FuseClass, row record) {
	t.Helper()
	if !strings.HasPrefix(row["rated_V"], strings.TrimSuffix(c.Lowest().String(), " V")) {
		t.Errorf("%s is for %v, want %s", c.Name, c.Lowest(), row["rated_V"])
	}
	if !strings.Contains(row["rated_V"], strings.TrimSuffix(c.Highest().String(), " V")) {
		t.Errorf("%s is for %v, want %s", c.Name, c.Highest(), row["rated_V"])
	}
	at := "rated"
	if c.At > 0 {
		at = strings.TrimSuffix(c.At.String(), " V")
	}
	if !strings.HasPrefix(row["at_V"], at) {
		t.Errorf("%s breaks at %s, want %s", c.Name, at, row["at_V"])
	}
}

func TestBreaking(t *testing.T) {
	tests := []struct {
		style  string
		at     quantity.Volt
		want   quantity.Ampere
		status Status
		ok     bool
	}{
		{"blade", 14, 1000, Read, true},
		{"blade", 54.4, 1000, Read, true}, // the 58 V types
		{"blade", 58.4, 0, "", false},
		{"SF51", 14, 2000, Read, true},
		{"SF51", 54.4, 0, "", false},
		{"single bolt", 54.4, 2000, Read, true},
		{"single bolt", 58.4, 0, "", false},
		{"marine", 12, 10000, Memory, true},
		{"marine", 24, 5000, Memory, true},
		{"marine", 51.2, 2000, Memory, true},
		{"class T", 58.4, 20000, Memory, true},
		{"10x38", 87.6, 30000, Memory, true},
		{"breaker", 12, 0, "", false},
	}
	for _, test := range tests {
		got, status, ok := Default().Breaking(test.style, test.at)
		if got != test.want || status != test.status || ok != test.ok {
			t.Errorf("%s at %v breaks %v (%s), %v; want %v (%s), %v", test.style, test.at, got, status, ok, test.want, test.status, test.ok)
		}
	}
}

// fuse_colours.csv: ISO 8820-3, SAE J1284 through public references.
func TestFuseColoursAgainstTable(t *testing.T) {
	for _, row := range check(t, "fuse_colours.csv") {
		rating := quantity.Ampere(row.must(t, "rating_A"))
		got, ok := Default().FuseColour(row["form"], rating)
		if !ok {
			t.Errorf("no colour for %v %s", rating, row["form"])
			continue
		}
		if got.Colour != row["colour"] || got.RGB.Hex() != row["srgb"] || float64(got.Volts) != row.must(t, "usual_rated_V") ||
			string(got.Status) != row["status"] || got.Standard != row["standard"] {
			t.Errorf("%v %s is %+v, want %v", rating, row["form"], got, row)
		}
		if series, ok := Default().FuseSeries(styleOfForm[row["form"]]); !ok || !series.Has(rating) {
			t.Errorf("%v %s has a colour and is not made", rating, row["form"])
		}
	}
	standard, _ := Default().FuseColour("blade", 10)
	maxi, _ := Default().FuseColour("maxi blade", 50)
	if standard.Colour != "red" || maxi.Colour != "red" {
		t.Errorf("10 A standard is %s and 50 A maxi %s, want red both", standard.Colour, maxi.Colour)
	}
	if _, ok := Default().FuseColour("blade", 12); ok {
		t.Error("there is a 12 A blade fuse")
	}
}

var styleOfForm = map[string]string{"standard blade": "blade", "mini blade": "mini blade", "maxi blade": "maxi blade"}

// A 30 A supply in its limit cannot open 25 A, takes minutes for 20 A and seconds for 15 A
// (common practice; gates of ISO 8820-3 from memory).
func TestFuseGates(t *testing.T) {
	tests := []struct {
		style    string
		multiple float64
		opens    quantity.Second
		ok       bool
	}{
		{"blade", 30.0 / 25, 0, false},
		{"blade", 30.0 / 20, 600, true},
		{"blade", 30.0 / 15, 5, true},
		{"blade", 10, 0.5, true},
		{"class T", 1.2, 0, false},
		{"bent wire", 10, 0, false},
	}
	for _, test := range tests {
		got, ok := Default().FuseOpens(test.style, test.multiple)
		if ok != test.ok || ok && got != test.opens {
			t.Errorf("%s at %.2f opens in %v, %v; want %v, %v", test.style, test.multiple, got, ok, test.opens, test.ok)
		}
	}
	holds := []struct {
		multiple float64
		want     quantity.Second
		ok       bool
	}{
		{1, 360000, true}, {1.1, 360000, true}, {1.2, 0.75, true}, {1.35, 0.75, true}, {2, 0.15, true}, {4, 0, false},
	}
	for _, test := range holds {
		got, ok := Default().FuseHolds("blade", test.multiple)
		if got != test.want || ok != test.ok {
			t.Errorf("a blade fuse holds %.2f for %v, %v; want %v, %v", test.multiple, got, ok, test.want, test.ok)
		}
	}
}

// A fuse never holds for longer than the time in which it is sure to have opened.
func TestFuseHoldsBeforeItOpens(t *testing.T) {
	styles := []string{"blade", "mini blade", "maxi blade", "class T"}
	rapid.Check(t, func(t *rapid.T) {
		style := rapid.SampledFrom(styles).Draw(t, "style")
		multiple := rapid.Float64Range(1, 8).Draw(t, "multiple")
		holds, bounded := Default().FuseHolds(style, multiple)
		opens, sure := Default().FuseOpens(style, multiple)
		if bounded && sure && holds > opens {
			t.Fatalf("%s at %.2f holds for %v and opens within %v", style, multiple, holds, opens)
		}
	})
}
