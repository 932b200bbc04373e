package quantity

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Conversion factors are exact by definition: the inch is 25.4 mm and the pound
// 0.45359237 kg (1959), standard gravity 9.80665 m/s2 (1901).
func TestParse(t *testing.T) {
	const nbsp, thin = "\u00a0", "\u202f"
	tests := []struct {
		text string
		want Amount
	}{
		{"12.5 V", Amount{12.5, Voltage, "V", "12.5 V", false}},
		{"58 volts", Amount{58, Voltage, "V", "58 volts", false}},
		{"12 mV", Amount{0.012, Voltage, "mV", "12 mV", false}},
		{"30A", Amount{30, Current, "A", "30 A", false}},
		{"30 a", Amount{30, Current, "A", "30 A", false}},
		{"1 AMP", Amount{1, Current, "A", "1 A", false}},
		{"20 kA", Amount{20000, Current, "kA", "20 kA", false}},
		{"20 MA", Amount{0.02, Current, "mA", "20 mA", false}},
		{"5 µA", Amount{5e-6, Current, "uA", "5 µA", false}},
		{"0.3 mohm", Amount{0.0003, Resistance, "mohm", "0.3 mohm", false}},
		{"0.3 mΩ", Amount{0.0003, Resistance, "mohm", "0.3 mΩ", false}},
		{"10 Mohm", Amount{1e7, Resistance, "Mohm", "10 Mohm", false}},
		{"10 KOHM", Amount{1e4, Resistance, "kohm", "10 kohm", false}},
		{"470 \u2126", Amount{470, Resistance, "ohm", "470 Ω", false}},
		{"42 watts", Amount{42, Power, "W", "42 watts", false}},
		{"4700 uF", Amount{0.0047, Capacitance, "uF", "4700 uF", false}},
		{"4700 \u00b5F", Amount{0.0047, Capacitance, "uF", "4700 µF", false}},
		{"4700 \u03bcF", Amount{0.0047, Capacitance, "uF", "4700 µF", false}},
		{"4.7 mF", Amount{0.0047, Capacitance, "mF", "4.7 mF", false}},
		{"110 AH", Amount{110, Charge, "Ah", "110 Ah", false}},
		{"5.6 kWh", Amount{5600, Energy, "kWh", "5.6 kWh", false}},
		{"14 in", Amount{0.3556, Length, "in", "14 in", false}},
		{`14"`, Amount{0.3556, Length, "in", `14"`, false}},
		{"14”", Amount{0.3556, Length, "in", `14"`, false}},
		{"14 IN", Amount{0.3556, Length, "in", "14 in", false}},
		{"14" + nbsp + "in", Amount{0.3556, Length, "in", "14 in", false}},
		{"  14 " + thin + nbsp + " in ", Amount{0.3556, Length, "in", "14 in", false}},
		{"1/2 in", Amount{0.0127, Length, "in", "1/2 in", false}},
		{"1-1/8 in", Amount{0.028575, Length, "in", "1-1/8 in", false}},
		{"1 1/8 in", Amount{0.028575, Length, "in", "1 1/8 in", false}},
		{"1⅛ in", Amount{0.028575, Length, "in", "1 1/8 in", false}},
		{"2-1/2 ft", Amount{0.762, Length, "ft", "2-1/2 ft", false}},
		{"4 ft 6 in", Amount{1.3716, Length, "ft", "4 ft 6 in", false}},
		{"4ft6in", Amount{1.3716, Length, "ft", "4 ft 6 in", false}},
		{"4 FT 6 IN", Amount{1.3716, Length, "ft", "4 ft 6 in", false}},
		{`4'6"`, Amount{1.3716, Length, "ft", `4'6"`, false}},
		{`4' 6"`, Amount{1.3716, Length, "ft", `4'6"`, false}},
		{"4’6''", Amount{1.3716, Length, "ft", `4'6"`, false}},
		{"4 ft 6-1/2 in", Amount{1.3843, Length, "ft", "4 ft 6-1/2 in", false}},
		{"5'", Amount{1.524, Length, "ft", "5'", false}},
		{"1.2 m", Amount{1.2, Length, "m", "1.2 m", false}},
		{"35cm", Amount{0.35, Length, "cm", "35 cm", false}},
		{".5 m", Amount{0.5, Length, "m", ".5 m", false}},
		{"about 2 ft", Amount{0.6096, Length, "ft", "2 ft", true}},
		{"About 2 ft", Amount{0.6096, Length, "ft", "2 ft", true}},
		{"-10 C", Amount{-10, Temperature, "C", "-10 C", false}},
		{"\u221210 °C", Amount{-10, Temperature, "C", "-10 °C", false}},
		{"95 F", Amount{35, Temperature, "F", "95 F", false}},
		{"-40 F", Amount{-40, Temperature, "F", "-40 F", false}},
		{"30 s", Amount{30, Time, "s", "30 s", false}},
		{"1.5 min", Amount{90, Time, "min", "1.5 min", false}},
		{"2 h", Amount{7200, Time, "h", "2 h", false}},
		{"80 %", Amount{0.8, Share, "%", "80 %", false}},
		{"3%", Amount{0.03, Share, "%", "3 %", false}},
		{"9 Nm", Amount{9, Torque, "Nm", "9 Nm", false}},
		{"9 N·m", Amount{9, Torque, "Nm", "9 N·m", false}},
		{"100 in-lb", Amount{11.29848290276167, Torque, "in lb", "100 in-lb", false}},
		{"10 ft lb", Amount{13.558179483314004, Torque, "ft lb", "10 ft lb", false}},
		{"80 lb", Amount{36.2873896, Mass, "lb", "80 lb", false}},
	}
	for _, test := range tests {
		got, err := Parse(test.text, test.want.Dimension)
		if err != nil {
			t.Errorf("Parse(%q): %v", test.text, err)
			continue
		}
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("Parse(%q) (-want +got):\n%s", test.text, diff)
		}
	}
}

func TestParseFaults(t *testing.T) {
	tests := []struct {
		want Dimension
		text string
		says string
	}{
		{Length, "", "has no value: a number and in, ft, mm, cm or m"},
		{Length, "14", "14 has no unit: 14 in, 14 mm or 14 cm?"},
		{Length, "1,5 m", "1,5 m: write 1.5 m"},
		{Length, ",5 m", ",5 m: write 0.5 m"},
		{Power, "1,500 W", "1,500 W: write 1500 W or 1.500 W"},
		{Power, "1 500 W", "1 500 W has a gap or too many digits in its number"},
		{Power, "9999999999999999999999 W", "9999999999999999999999 W has a gap or too many digits in its number"},
		{Power, "1.2.3 W", "1.2.3 W has a stray point in its number"},
		{Current, "30 V", "30 V is no current: A or mA"},
		{Current, "5 AH", "5 AH is no current: A or mA"},
		{Time, "30 m", "30 m is no time: s, min or h"},
		{Voltage, "14", "14 has no unit: write 14 V"},
		{Voltage, "48 VDC", "48 VDC: write 48 V"},
		{Voltage, "48 parsecs", "48 parsecs has an unknown unit: V or mV"},
		{Voltage, "V 48", "V 48: write 48 V"},
		{Voltage, "NaN V", "NaN V is no voltage: a number and V or mV"},
		{Voltage, "inf", "inf is no voltage: a number and V or mV"},
		{Voltage, "1e3 V", "1e3 V has an exponent: write the number out in full"},
		{Voltage, "1e999999999 V", "1e999999999 V has an exponent: write the number out in full"},
		{Voltage, "-5 V", "-5 V has a sign, which only temperatures have: write 5 V"},
		{Voltage, "+5 V", "+5 V has a sign, which only temperatures have: write 5 V"},
		{Voltage, "1/2 V", "1/2 V has a fraction, which stands before in and ft only: write 0.5 V"},
		{Voltage, "999999 V", "999999 V is beyond anything on a vehicle"},
		{Voltage, "10 A at 60 V", "10 A at 60 V is two quantities, and one belongs here"},
		{Resistance, "5 MOHM", "5 MOHM: 5 mohm or 5 Mohm?"},
		{Resistance, "5 mOHM", "5 mOHM: 5 mohm or 5 Mohm?"},
		{Resistance, "10k", "10k: write 10 kohm"},
		{Resistance, "1 M", "1 M: 1 mohm or 1 Mohm?"},
		{Resistance, "0.5", "0.5 has no unit: 0.5 mohm, 0.5 ohm or 0.5 kohm?"},
		{Capacitance, "5 MF", "5 MF: 5 uF or 5 mF?"},
		{Capacitance, "5 MFD", "5 MFD: 5 uF or 5 mF?"},
		{Share, "0.03", "0.03 has no unit: 3 % or 0.03 %?"},
		{Share, "80", "80 has no unit: write 80 %"},
		{Temperature, "40°", "40°: 40 C or 40 F?"},
		{Temperature, "-300 C", "-300 C is below absolute zero"},
		{Torque, "80 lb", "80 lb: 80 in lb or 80 ft lb?"},
		{Length, "~2 ft", "~2 ft: write about 2 ft"},
		{Length, "35 mm2", "35 mm2 is a conductor size and no length: in, ft, mm, cm or m"},
		{Length, "1 m 20 cm", "1 m 20 cm: only feet and inches are written in two parts"},
		{Length, "4 ft 6", "4 ft 6: write 4 ft 6 in"},
		{Length, "4'6", `4'6: write 4'6"`},
		{Length, "4 ft 14 in", "4 ft 14 in has a foot or more of inches: write 62 in"},
		{Length, "4.5 ft 6 in", "4.5 ft 6 in: before inches, feet are a whole number"},
		{Length, "4 ft 6 mm", "4 ft 6 mm is no length: such as 4 ft 6 in"},
		{Length, "1/0 in", "1/0 in is no number"},
		{Length, "5-9/8 in", "5-9/8 in is no number"},
		{Length, "about", "about is no length: a number and in, ft, mm, cm or m"},
		{Length, "14 in\x00", "14 in? has an unknown unit: in, ft, mm, cm or m"},
		{Length, "14 \xff in", "14 ? in is no UTF-8 text"},
		{Length, strings.Repeat("x", 5000), strings.Repeat("x", 39) + "… is too long"},
		{NoDimension, "5 V", "5 V stands where no quantity is expected"},
	}
	for _, test := range tests {
		_, err := Parse(test.text, test.want)
		if err == nil {
			t.Errorf("Parse(%q, %v) reports no error, want %q", test.text, test.want, test.says)
			continue
		}
		if diff := cmp.Diff(test.says, err.Error()); diff != "" {
			t.Errorf("Parse(%q, %v) (-want +got):\n%s", test.text, test.want, diff)
		}
		if _, ok := err.(*Error); !ok {
			t.Errorf("Parse(%q, %v) returns a %T, want *Error", test.text, test.want, err)
		}
	}
}

func TestParseAny(t *testing.T) {
	tests := []struct {
		text string
		from []Dimension
		want Dimension
	}{
		{"12 V", nil, Voltage},
		{"14 in", nil, Length},
		{"14 in lb", nil, Torque},
		{"95 F", nil, Capacitance},
		{"95 F", []Dimension{Temperature, Capacitance}, Temperature},
	}
	for _, test := range tests {
		got, err := ParseAny(test.text, test.from...)
		if err != nil || got.Dimension != test.want {
			t.Errorf("ParseAny(%q, %v) = %v, %v; want a %v", test.text, test.from, got.Dimension, err, test.want)
		}
	}
	if _, err := ParseAny("12 furlongs"); err == nil {
		t.Error("ParseAny takes furlongs")
	}
}
