package handbook

import (
	"errors"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// awg.csv: ASTM B258 law, IACS resistance, and the printed NBS figures.
func TestGaugesAgainstTable(t *testing.T) {
	for _, row := range check(t, "awg.csv") {
		n := int(row.must(t, "n"))
		size := row.gauge(t, "awg")
		if size != quantity.Gauge(n) {
			t.Errorf("%s reads as %v, want number %d", row["awg"], size, n)
		}
		name := row["awg"] + " AWG"
		d := GaugeDiameter(n)
		near(t, name+" diameter in mm", d.Millimetres(), row.must(t, "diameter_mm"), 1e-4)
		near(t, name+" diameter by GNU units", d.Millimetres(), row.must(t, "diameter_units_mm"), 1e-4)
		near(t, name+" diameter in inches", d.Inches(), row.must(t, "diameter_in"), 1e-5)
		area, err := Default().Area(size)
		if err != nil {
			t.Fatal(err)
		}
		nearly(t, name+" area in mm2", float64(area), row.must(t, "area_mm2"), 0.0005)
		nearly(t, name+" area in cmil", CircularMils(area), row.must(t, "area_cmil"), 0.0005)
		checkGaugeResistance(t, name, size, row)
	}
}

func checkGaugeResistance(t *testing.T, name string, size quantity.Size, row record) {
	t.Helper()
	perKm, err := Default().Resistance(size, 1000, 20)
	if err != nil {
		t.Fatal(err)
	}
	nearly(t, name+" ohm per km", float64(perKm), row.must(t, "r20_ohm_per_km"), 0.001)
	perKft, err := Default().Resistance(size, quantity.Feet(1000), 20)
	if err != nil {
		t.Fatal(err)
	}
	nearly(t, name+" ohm per 1000 ft", float64(perKft), row.must(t, "r20_ohm_per_kft"), 0.001)
	if printed, ok := row.number(t, "printed_ohm_per_kft"); ok {
		nearly(t, name+" ohm per 1000 ft as NBS printed it", float64(perKft), printed, 0.001)
	}
}

// The sae_cmil column of awg.csv: a public cable catalogue page.
func TestSAEAgainstTable(t *testing.T) {
	seen := 0
	for _, row := range check(t, "awg.csv") {
		size := row.gauge(t, "awg")
		size.System = quantity.SAE
		area, err := Default().Area(size)
		cmil, ok := row.number(t, "sae_cmil")
		if !ok {
			if err == nil {
				t.Errorf("%v has %v of copper, but no source gives it", size, area)
			}
			continue
		}
		seen++
		if err != nil {
			t.Errorf("%v: %v", size, err)
			continue
		}
		near(t, size.String()+" in cmil", CircularMils(area), cmil, 1e-6)
		if less := 1 - float64(area/GaugeArea(int(size.Number))); less < 0.02 || less > 0.12 {
			t.Errorf("%v has %.1f %% less copper than AWG, want 3 to 11", size, 100*less)
		}
	}
	if seen == 0 {
		t.Error("no SAE row was checked")
	}
}

// needTool skips a test whose program is missing, unless the tools are required.
func needTool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("LUGWRIGHT_TOOLS") == "required" {
		t.Fatalf("the program %s is required and not installed", name)
	}
	t.Skipf("the program %s is not installed", name)
	return ""
}

// GNU units has its own definition of wire gauges, wiregauge().
func TestGaugesAgainstGNUUnits(t *testing.T) {
	units := needTool(t, "units")
	for n := -3; n <= 24; n++ {
		gauge := strconv.Itoa(n)
		out, err := exec.Command(units, "--terse", "--output-format", "%.12g", "wiregauge("+gauge+")", "mm").Output()
		if err != nil {
			var exit *exec.ExitError
			if errors.As(err, &exit) {
				t.Fatalf("units: %v: %s", err, exit.Stderr)
			}
			t.Fatal(err)
		}
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		if err != nil {
			t.Fatalf("units says %q", out)
		}
		nearly(t, quantity.Gauge(n).String()+" diameter in mm", GaugeDiameter(n).Millimetres(), want, 1e-8)
	}
}

func TestAreaOfOtherSizes(t *testing.T) {
	tests := []struct {
		size quantity.Size
		mm2  float64
	}{
		{quantity.Size{System: quantity.MM2, Number: 35}, 35},
		{quantity.Size{System: quantity.KCMIL, Number: 250}, 126.67686977}, // 250000 x 5.067075e-4, copper_constants.csv
	}
	for _, test := range tests {
		area, err := Default().Area(test.size)
		if err != nil {
			t.Fatal(err)
		}
		nearly(t, test.size.String(), float64(area), test.mm2, 1e-6)
	}
	if _, err := Default().Area(quantity.Size{}); err == nil {
		t.Error("a size that nobody stated has an area")
	}
	_, err := Default().Area(quantity.Size{System: quantity.SAE, Number: 11})
	want := "the handbook has no copper area for 11 SAE: it has SAE 4/0 3/0 2/0 1/0 1 2 4 6 8 10 12 14 16 18"
	if err == nil || err.Error() != want {
		t.Errorf("11 SAE: %v\nwant %s", err, want)
	}
}

func TestStandardSizes(t *testing.T) {
	sizes := StandardSizes()
	for i, s := range sizes {
		if _, err := Default().Ampacity(s, 105); err != nil {
			t.Errorf("%v may be chosen and has no ampacity: %v", s, err)
		}
		if i > 0 && GaugeArea(int(s.Number)) <= GaugeArea(int(sizes[i-1].Number)) {
			t.Errorf("%v stands behind %v", s, sizes[i-1])
		}
		if got, ok := SizeForArea(GaugeArea(int(s.Number))); !ok || got != s {
			t.Errorf("the size for the area of %v is %v", s, got)
		}
	}
	if s, ok := SizeForArea(200); ok {
		t.Errorf("200 mm2 is found in %v", s)
	}
}

// A thinner standard size must always be too thin.
func TestSizeForDropIsThinnest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amps := quantity.Ampere(rapid.Float64Range(0.1, 300).Draw(t, "amps"))
		loop := quantity.Metre(rapid.Float64Range(0.1, 60).Draw(t, "loop"))
		limit := quantity.Volt(rapid.Float64Range(0.05, 5).Draw(t, "limit"))
		conductor := quantity.Celsius(rapid.Float64Range(-20, 105).Draw(t, "conductor"))
		size, ok := SizeForDrop(amps, loop, limit, conductor)
		thinner := quantity.Size{}
		for _, s := range StandardSizes() {
			if ok && s == size {
				break
			}
			thinner = s
		}
		if ok {
			if drop, _ := Default().RunDrop(size, loop, amps, conductor); float64(drop) > float64(limit)*(1+1e-9) {
				t.Fatalf("%v drops %v of %v", size, drop, limit)
			}
		}
		if thinner.Known() {
			if drop, _ := Default().RunDrop(thinner, loop, amps, conductor); drop <= limit {
				t.Fatalf("%v would do: it drops %v of %v", thinner, drop, limit)
			}
		}
	})
	if _, ok := SizeForDrop(10, 1, 0, 20); ok {
		t.Error("some size drops nothing")
	}
}
