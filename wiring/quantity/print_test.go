package quantity

import (
	"fmt"
	"math"
	"testing"
)

func TestPrint(t *testing.T) {
	tests := []struct {
		value fmt.Stringer
		want  string
	}{
		{Volt(12.5), "12.5 V"},
		{Volt(54.75), "54.75 V"},
		{Volt(58.4000001), "58.4 V"},
		{Volt(0), "0 V"},
		{Volt(math.Copysign(0, -1)), "0 V"},
		{Volt(-0.7), "-0.7 V"},
		{Volt(0.012), "12 mV"},
		{Volt(0.099999), "0.1 V"},
		{Ampere(0.02), "20 mA"},
		{Ampere(0.35), "0.35 A"},
		{Ampere(5.2e-6), "5.2 uA"},
		{Ampere(999.9), "1 kA"},
		{Ampere(5278), "5.28 kA"},
		{Ampere(-18), "-18 A"},
		{Ohm(0.0003), "0.3 mohm"},
		{Ohm(0.5), "0.5 ohm"},
		{Ohm(470), "470 ohm"},
		{Ohm(9999), "10 kohm"},
		{Ohm(1e7), "10 Mohm"},
		{Watt(1050), "1.05 kW"},
		{Watt(7.263), "7.26 W"},
		{Watt(0.005), "5 mW"},
		{Farad(0.0047), "4.7 mF"},
		{Farad(1e-4), "100 uF"},
		{Farad(1.5), "1.5 F"},
		{AmpereHour(110), "110 Ah"},
		{AmpereHour(0.015), "15 mAh"},
		{WattHour(5632), "5.63 kWh"},
		{SquareMillimetre(33.6308), "33.6 mm2"},
		{Celsius(105), "105 C"},
		{Celsius(-0.04), "0 C"},
		{Second(6.6176), "6.62 s"},
		{Second(0.0005), "0.5 ms"},
		{Second(150), "2.5 min"},
		{Second(86400), "24 h"},
		{NewtonMetre(9), "9 Nm"},
		{Kilogram(36.29), "36.3 kg"},
		{Ratio(0.03), "3 %"},
		{Ratio(0.0357), "3.57 %"},
		{Metre(1.3716), "1.37 m"},
	}
	for _, test := range tests {
		if got := test.value.String(); got != test.want {
			t.Errorf("%T prints as %q, want %q", test.value, got, test.want)
		}
	}
}

func TestMetreIn(t *testing.T) {
	tests := []struct {
		length       Metre
		inch, metric string
	}{
		{0, "0 in", "0 mm"},
		{Inches(14), "14 in", "35.6 cm"},
		{0.35, "13-3/4 in", "35 cm"},
		{Inches(2.125), "2-1/8 in", "54 mm"},
		{Inches(5.0 / 16), "5/16 in", "7.94 mm"},
		{Inches(24), "2 ft", "61 cm"},
		{Inches(23.99), "2 ft", "60.9 cm"},
		{Inches(40), "3 ft 4 in", "1.02 m"},
		{Inches(54), "4 ft 6 in", "1.37 m"},
		{Inches(54.4), "4 ft 6-1/2 in", "1.38 m"},
		{Feet(14.5), "14 ft 6 in", "4.42 m"},
		{Feet(11.99), "12 ft", "3.65 m"},
		{0.9999, "3 ft 3-1/2 in", "1 m"},
		{0.0084, "5/16 in", "8.4 mm"},
		{-0.0254, "-1 in", "-25.4 mm"},
	}
	for _, test := range tests {
		if got := test.length.In(Inch); got != test.inch {
			t.Errorf("%g m in inches is %q, want %q", float64(test.length), got, test.inch)
		}
		if got := test.length.In(Metric); got != test.metric {
			t.Errorf("%g m in metric units is %q, want %q", float64(test.length), got, test.metric)
		}
	}
}

// A printer never fails on what arithmetic can produce.
func TestPrintOddValues(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64} {
		for _, d := range AllDimensions() {
			if Computed(x, d).String() == "" {
				t.Errorf("%v prints %v as nothing", d, x)
			}
		}
		if Metre(x).In(Inch) == "" {
			t.Errorf("%v m prints as nothing in inches", x)
		}
	}
}

func TestAmountIn(t *testing.T) {
	tests := []struct {
		text         string
		d            Dimension
		inch, metric string
	}{
		{"4 ft 6 in", Length, "4 ft 6 in", "1.37 m"},
		{"about 35 cm", Length, "about 13-3/4 in", "about 35 cm"},
		{"9 Nm", Torque, "79.7 in lb", "9 Nm"},
		{"50 Nm", Torque, "36.9 ft lb", "50 Nm"},
		{"80 in lb", Torque, "80 in lb", "9.04 Nm"},
		{"80 lb", Mass, "80 lb", "36.3 kg"},
		{"36 kg", Mass, "79.4 lb", "36 kg"},
		{"40 C", Temperature, "104 F", "40 C"},
		{"95 F", Temperature, "95 F", "35 C"},
		{"12.5 V", Voltage, "12.5 V", "12.5 V"},
		{"2 F", Capacitance, "2 F", "2 F"},
	}
	for _, test := range tests {
		a, err := Parse(test.text, test.d)
		if err != nil {
			t.Fatal(err)
		}
		if got := a.In(Inch); got != test.inch {
			t.Errorf("%q in the inch system is %q, want %q", test.text, got, test.inch)
		}
		if got := a.In(Metric); got != test.metric {
			t.Errorf("%q in the metric system is %q, want %q", test.text, got, test.metric)
		}
		if got := a.In(AsWritten); got != a.String() {
			t.Errorf("%q as written is %q", test.text, got)
		}
	}
}

func TestAccessors(t *testing.T) {
	if got := (Amount{}).Volts(); got != 0 {
		t.Errorf("nothing stated is %v", got)
	}
	a := Computed(12.5, Voltage)
	if a.Volts() != 12.5 || a.String() != "12.5 V" {
		t.Errorf("computed 12.5 V is %v, printed %q", float64(a.Volts()), a)
	}
	defer func() {
		if recover() == nil {
			t.Error("a voltage passes for a current")
		}
	}()
	a.Amperes()
}
