package quantity

import "testing"

func TestParseSize(t *testing.T) {
	tests := []struct {
		text string
		want Size
		says string // as printed
	}{
		{"2 AWG", Size{AWG, 2}, "2 AWG"},
		{"2AWG", Size{AWG, 2}, "2 AWG"},
		{"2 awg", Size{AWG, 2}, "2 AWG"},
		{"2/0 AWG", Size{AWG, -1}, "2/0 AWG"},
		{"00 AWG", Size{AWG, -1}, "2/0 AWG"},
		{"0000 AWG", Size{AWG, -3}, "4/0 AWG"},
		{"0 AWG", Size{AWG, 0}, "1/0 AWG"},
		{"1/0 AWG", Size{AWG, 0}, "1/0 AWG"},
		{"10 SAE", Size{SAE, 10}, "10 SAE"},
		{"35 mm2", Size{MM2, 35}, "35 mm2"},
		{"35 mm²", Size{MM2, 35}, "35 mm2"},
		{"2.5mm2", Size{MM2, 2.5}, "2.5 mm2"},
		{"250 kcmil", Size{KCMIL, 250}, "250 kcmil"},
		{"250 MCM", Size{KCMIL, 250}, "250 kcmil"},
	}
	for _, test := range tests {
		got, err := ParseSize(test.text)
		if err != nil || got != test.want || got.String() != test.says {
			t.Errorf("ParseSize(%q) = %v, %v; want %v", test.text, got, err, test.says)
		}
	}
}

func TestParseSizeFaults(t *testing.T) {
	tests := []struct{ text, says string }{
		{"", "has no value: such as 12 AWG or 35 mm2"},
		{"18", "18: 18 AWG or 18 mm2?"},
		{"35", "35: write 35 mm2"},
		{"2/0", "2/0: write 2/0 AWG"},
		{"300", "300: write 300 kcmil"},
		{"2 ga", "2 ga does not say which gauge: 2 AWG, or 2 SAE, which is 3 to 11 % less copper?"},
		{"2 gauge", "2 gauge does not say which gauge: 2 AWG, or 2 SAE, which is 3 to 11 % less copper?"},
		{"#2 AWG", "#2 AWG: write 2 AWG"},
		{"#2", "#2: write 2 AWG"},
		{"AWG 2", "AWG 2: write 2 AWG"},
		{"35 mm", "35 mm is a length: write 35 mm2"},
		{"5/0 AWG", "5/0 AWG is larger than any gauge: above 4/0 sizes are in kcmil or mm2"},
		{"50 AWG", "50 AWG is finer than any wire here: the finest is 40 AWG"},
		{"2.5 AWG", "2.5 AWG is no gauge: a whole number, or 1/0 to 4/0"},
		{"012 AWG", "012 AWG is no gauge: a whole number, or 1/0 to 4/0"},
		{"-2 AWG", "-2 AWG is no gauge: a whole number, or 1/0 to 4/0"},
		{"2,5 mm2", "2,5 mm2: write 2.5 mm2"},
		{"0 mm2", "0 mm2 is no size of a conductor"},
		{"9999 mm2", "9999 mm2 is no size of a conductor"},
		{"1/2 mm2", "1/2 mm2 is no conductor size: such as 12 AWG or 35 mm2"},
		{"thick", "thick is no conductor size: such as 12 AWG or 35 mm2"},
		{"2 m", "2 m is no conductor size: such as 12 AWG or 35 mm2"},
		{"66000 cmil", "66000 cmil is no conductor size: circular mils are written in thousands: kcmil"},
	}
	for _, test := range tests {
		s, err := ParseSize(test.text)
		if err == nil || err.Error() != test.says {
			t.Errorf("ParseSize(%q) = %v, %v; want %q", test.text, s, err, test.says)
		}
	}
}
