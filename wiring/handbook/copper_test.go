package handbook

import (
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// copper_constants.csv: IACS, NBS Handbook 100.
func TestCopperConstants(t *testing.T) {
	want := map[string]float64{}
	for _, row := range check(t, "copper_constants.csv") {
		if x, ok := row.number(t, "value"); ok {
			want[row["name"]] = x
		}
	}
	nearly(t, "resistivity in ohm m", CopperResistivity*1e-6, want["iacs_resistivity_20C"], 1e-5)
	nearly(t, "conductivity in S/m", 1e6/CopperResistivity, want["iacs_conductivity"], 1e-12)
	near(t, "alpha", CopperAlpha, want["alpha_20C"], 0)
	nearly(t, "cmil per mm2", CircularMils(1), want["cmil_per_mm2"], 1e-6)
	perFoot := float64(CopperPerMetre(FromCircularMils(1), 20).Of(quantity.Feet(1)))
	nearly(t, "resistivity in ohm cmil/ft", perFoot, want["iacs_resistivity_20C_cmil"], 1e-5)
	near(t, "temperature of no resistance", 1/CopperAlpha-20, want["inferred_zero_resistance"], 0.06)
	nearly(t, "foot in m", float64(quantity.Feet(1)), want["ft_m"], 1e-15)
}

// The law of the hot length and that of resistance are one: a conductor of the hot length
// has the resistance that the cold one had. The circular rounds 234.45 to 234.5.
func TestHotLengthKeepsResistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cold := quantity.Metre(rapid.Float64Range(0.1, 100).Draw(t, "length"))
		hot := quantity.Celsius(rapid.Float64Range(-40, 200).Draw(t, "conductor"))
		r := CopperPerMetre(10, hot).Of(HotLength(cold, hot))
		r20 := CopperPerMetre(10, 20).Of(cold)
		if off := float64(r/r20) - 1; off > 2e-4 || off < -2e-4 {
			t.Fatalf("at %v the resistance is off by %v", hot, off)
		}
	})
}

func TestResistanceRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-3, 24).Draw(t, "gauge")
		length := quantity.Metre(rapid.Float64Range(0.01, 100).Draw(t, "length"))
		low := quantity.Celsius(rapid.Float64Range(-40, 100).Draw(t, "cold"))
		high := low + quantity.Celsius(rapid.Float64Range(1, 100).Draw(t, "rise"))
		cold, err := Default().Resistance(quantity.Gauge(n), length, low)
		if err != nil {
			t.Fatal(err)
		}
		hot, _ := Default().Resistance(quantity.Gauge(n), length, high)
		thin, _ := Default().Resistance(quantity.Gauge(n+1), length, low)
		long, _ := Default().Resistance(quantity.Gauge(n), length*2, low)
		if cold <= 0 || hot <= cold || thin <= cold || long <= cold {
			t.Fatalf("%v: hot %v, thinner %v, longer %v", cold, hot, thin, long)
		}
	})
}

func TestParallel(t *testing.T) {
	tests := []struct {
		ohms []quantity.Ohm
		want float64
	}{
		{nil, 0},
		{[]quantity.Ohm{4}, 4},
		{[]quantity.Ohm{4, 1}, 0.8},
		{[]quantity.Ohm{4, 0}, 0},
	}
	for _, test := range tests {
		near(t, "parallel", float64(Parallel(test.ohms...)), test.want, 1e-12)
	}
}

func TestUnknownSizeHasNoResistance(t *testing.T) {
	if r, err := Default().Resistance(quantity.Size{}, 1, 20); err == nil {
		t.Errorf("an unknown size has %v", r)
	}
}
