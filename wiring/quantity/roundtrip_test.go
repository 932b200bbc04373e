package quantity

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// shown draws a quantity that has no more digits than the printer shows: up to 999 of some
// unit of the dimension, or with up to two decimals.
func shown(t *rapid.T, d Dimension) Amount {
	u := rapid.SampledFrom(d.Units()).Draw(t, "unit")
	text := fmt.Sprint(rapid.IntRange(0, 999).Draw(t, "number"))
	if point := rapid.IntRange(0, len(text)-1).Draw(t, "point"); point > 0 {
		text = text[:point] + "." + text[point:]
	}
	a, err := Parse(text+" "+u, d)
	if err != nil {
		t.Fatalf("Parse(%q): %v", text+" "+u, err)
	}
	return a
}

// What was written prints as it was written, and reads back as the same.
func TestAmountRoundTrip(t *testing.T) {
	for _, d := range AllDimensions() {
		t.Run(d.String(), rapid.MakeCheck(func(t *rapid.T) {
			want := shown(t, d)
			want.About = rapid.Bool().Draw(t, "about")
			got, err := Parse(want.String(), d)
			if err != nil || got != want {
				t.Fatalf("%q reads back as %#v, %v; want %#v", want, got, err, want)
			}
		}))
	}
}

// The printers lose no more than their last digit, and what they print is a fixed point:
// it reads and prints as itself.
func TestPrintedValueRoundTrip(t *testing.T) {
	for _, d := range AllDimensions() {
		t.Run(d.String(), rapid.MakeCheck(func(t *rapid.T) {
			exponent := rapid.Float64Range(-6, 4.9).Draw(t, "exponent")
			x := math.Min(math.Pow(10, exponent), d.facts().most*0.99)
			printed := Computed(x, d).String()
			back, err := Parse(printed, d)
			if err != nil {
				t.Fatalf("%g prints as %q, which does not read: %v", x, printed, err)
			}
			if off := math.Abs(back.Value - x); off > 0.00501*x && off > 0.0501 {
				t.Fatalf("%g prints as %q, which is %g", x, printed, back.Value)
			}
			if d != Temperature && math.Abs(back.Value-x) > 0.00501*x {
				t.Fatalf("%g prints as %q, which is %g", x, printed, back.Value)
			}
			if again := Computed(back.Value, d).String(); again != printed {
				t.Fatalf("%q prints again as %q", printed, again)
			}
		}))
	}
}

// Values of as many digits as a printer shows survive to the last bit. Minutes and hours
// are left out: 125 s prints as 2.08 min.
func TestExactValuesSurvive(t *testing.T) {
	for _, d := range AllDimensions() {
		if d == Length || d == Torque || d == Mass || d == Temperature || d == Time {
			continue // the printers of the first four know one system only
		}
		t.Run(d.String(), rapid.MakeCheck(func(t *rapid.T) {
			want := shown(t, d)
			got, err := Parse(Computed(want.Value, d).String(), d)
			if err != nil || got.Value != want.Value {
				t.Fatalf("%v prints as %q, which reads as %v, %v", want.Value, Computed(want.Value, d), got.Value, err)
			}
		}))
	}
}

// Lengths measured on a tape survive being printed in inches.
func TestTapeRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.Int64Range(0, 300*12*sixteenths).Draw(t, "sixteenths")
		want := Inches(float64(toTape(float64(parts)/sixteenths)) / sixteenths)
		got, err := Parse(want.In(Inch), Length)
		if err != nil || math.Abs(got.Value-float64(want)) > 1e-12*(1+float64(want)) {
			t.Fatalf("%v m prints as %q, which reads as %v, %v", float64(want), want.In(Inch), got.Value, err)
		}
	})
}

func anySize(t *rapid.T) Size {
	switch rapid.IntRange(0, 3).Draw(t, "system") {
	case 0:
		return Size{AWG, float64(rapid.IntRange(largestGauge, smallestGauge).Draw(t, "gauge"))}
	case 1:
		return Size{SAE, float64(rapid.IntRange(largestGauge, 20).Draw(t, "gauge"))}
	case 2:
		return Size{MM2, float64(rapid.IntRange(1, mostMM2*100).Draw(t, "mm2")) / 100}
	}
	return Size{KCMIL, float64(rapid.IntRange(1, mostKCMIL).Draw(t, "kcmil"))}
}

func TestSizeRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := anySize(t)
		got, err := ParseSize(want.String())
		if err != nil || got != want {
			t.Fatalf("%q reads back as %v, %v", want, got, err)
		}
	})
}
