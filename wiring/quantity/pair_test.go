package quantity

import "testing"

func TestParsePair(t *testing.T) {
	tests := []struct {
		text          string
		first, second Dimension
		joint         Joint
		says          string
		a, b          float64
	}{
		{"10 A at 60 V", Current, Voltage, At, "10 A at 60 V", 10, 60},
		{"35 W AT 12.8 V", Power, Voltage, At, "35 W at 12.8 V", 35, 12.8},
		{"220 A for 30 s", Current, Time, For, "220 A for 30 s", 220, 30},
		{"about 220 A for 30 s", Current, Time, For, "about 220 A for 30 s", 220, 30},
		{"30 V to 72 V", Voltage, Voltage, To, "30 V to 72 V", 30, 72},
		{"10 to 15 V", Voltage, Voltage, To, "10 V to 15 V", 10, 15},
		{"10\u00a0to\u00a015\u00a0V", Voltage, Voltage, To, "10 V to 15 V", 10, 15},
		{"-10 to 45 C", Temperature, Temperature, To, "-10 C to 45 C", -10, 45},
		{"500 mV to 2 V", Voltage, Voltage, To, "500 mV to 2 V", 0.5, 2},
	}
	for _, test := range tests {
		p, err := ParsePair(test.text, test.first, test.second, test.joint)
		if err != nil {
			t.Errorf("ParsePair(%q): %v", test.text, err)
			continue
		}
		if p.String() != test.says || p.First.Value != test.a || p.Second.Value != test.b || p.Joint != test.joint {
			t.Errorf("ParsePair(%q) = %q (%v, %v), want %q (%v, %v)", test.text, p, p.First.Value, p.Second.Value, test.says, test.a, test.b)
		}
		if got := JointOf(test.text); got != test.joint {
			t.Errorf("JointOf(%q) = %q, want %q", test.text, got, test.joint)
		}
	}
	if got := JointOf("12 V"); got != "" {
		t.Errorf("JointOf(12 V) = %q, want none", got)
	}
	if (Pair{}).String() != "" || (Pair{}).Known() {
		t.Error("the zero Pair says something")
	}
}

func TestParsePairFaults(t *testing.T) {
	tests := []struct {
		text          string
		first, second Dimension
		joint         Joint
		says          string
	}{
		{"10-15 V", Voltage, Voltage, To, "10-15 V: write 10 to 15 V"},
		{"10–15 V", Voltage, Voltage, To, "10-15 V: write 10 to 15 V"},
		{"30 V - 72 V", Voltage, Voltage, To, "30 V - 72 V: write 30 V to 72 V"},
		{"10..15 V", Voltage, Voltage, To, "10..15 V: write 10 to 15 V"},
		{"72 V to 30 V", Voltage, Voltage, To, "72 V to 30 V runs downwards: write 30 V to 72 V"},
		{"10 A", Current, Voltage, At, "10 A has no voltage with it: 10 A at a number and V or mV"},
		{"10 to 15", Voltage, Voltage, To, "15 has no unit: write 15 V"},
		{"10 A to 15 V", Voltage, Voltage, To, "10 A is no voltage: V or mV"},
		{"10 A at 60 A", Current, Voltage, At, "60 A is no voltage: V or mV"},
		{"10 A for 60 V", Current, Voltage, At, "10 A for 60 V is no current at voltage: such as 10 A at 60 V"},
		{"", Current, Voltage, At, "has no value: such as 10 A at 60 V"},
	}
	for _, test := range tests {
		p, err := ParsePair(test.text, test.first, test.second, test.joint)
		if err == nil || err.Error() != test.says {
			t.Errorf("ParsePair(%q) = %q, %v; want %q", test.text, p, err, test.says)
		}
	}
}

func TestParseCount(t *testing.T) {
	tests := []struct {
		text string
		want int
		says string // "": no error
	}{
		{"16", 16, ""},
		{" 0 ", 0, ""},
		{"08", 8, ""},
		{"10000", 10000, ""},
		{"10001", 0, "10001 is too many: at most 10000"},
		{"99999999999999999999", 0, "99999999999999999999 is too many: at most 10000"},
		{"16 V", 0, "16 V is no count: write 16"},
		{"16.0", 0, "16.0 is no count: write 16"},
		{"1.5", 0, "1.5 is no count: a plain whole number"},
		{"-1", 0, "-1 is no count: a plain whole number"},
		{"1e3", 0, "1e3 is no count: a plain whole number"},
		{"six", 0, "six is no count: a plain whole number"},
		{"", 0, "has no value: a plain whole number"},
	}
	for _, test := range tests {
		got, err := ParseCount(test.text)
		says := ""
		if err != nil {
			says = err.Error()
		}
		if got != test.want || says != test.says {
			t.Errorf("ParseCount(%q) = %d, %q; want %d, %q", test.text, got, says, test.want, test.says)
		}
	}
}
