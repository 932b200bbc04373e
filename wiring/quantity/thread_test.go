package quantity

import (
	"math"
	"testing"
)

// Diameters: ISO 261; ASME B1.1, where number n is 0.060 in + n x 0.013 in.
func TestParseThread(t *testing.T) {
	tests := []struct {
		text string
		says string
		mm   float64
	}{
		{"M8", "M8", 8},
		{"m8", "M8", 8},
		{"M 10", "M10", 10},
		{"M8x1.25", "M8x1.25", 8},
		{"M8 × 1", "M8x1", 8},
		{"5/16 in", "5/16 in", 7.9375},
		{`5/16"`, "5/16 in", 7.9375},
		{"5/16-18", "5/16-18", 7.9375},
		{"3/8-16", "3/8-16", 9.525},
		{"1-1/8 in", "1-1/8 in", 28.575},
		{"1 in", "1 in", 25.4},
		{"0.25 in", "1/4 in", 6.35},
		{"10-32", "10-32", 4.826},
		{"8-32", "8-32", 4.1656},
	}
	for _, test := range tests {
		got, err := ParseThread(test.text)
		if err != nil || got.String() != test.says || math.Abs(got.DiameterMM()-test.mm) > 1e-9 {
			t.Errorf("ParseThread(%q) = %v of %v mm, %v; want %v of %v mm", test.text, got, got.DiameterMM(), err, test.says, test.mm)
			continue
		}
		again, err := ParseThread(got.String())
		if err != nil || again != got {
			t.Errorf("%v reads back as %v, %v", got, again, err)
		}
		if got.Nominal().DiameterMM() != got.DiameterMM() || got.Nominal().Pitch != 0 {
			t.Errorf("%v without its pitch is %v", got, got.Nominal())
		}
	}
}

func TestParseThreadFaults(t *testing.T) {
	tests := []struct{ text, says string }{
		{"", "has no value: such as M8, 5/16 in or 10-32"},
		{"#10", "#10: write 10-24 or 10-32"},
		{"#10-32", "#10-32: write 10-32"},
		{"#99", "#99 is no thread: such as M8, 5/16 in or 10-32"},
		{"8 mm", "8 mm is no thread: write M8"},
		{"5/16", "5/16 has no unit: write 5/16 in"},
		{"8", "8 is no thread: write M8"},
		{"M99", "M99 is no size of a stud or screw: such as M8, 5/16 in or 10-32"},
		{"M0", "M0 is no size of a stud or screw: such as M8, 5/16 in or 10-32"},
		{"1/0-20", "1/0-20 is no thread: such as M8, 5/16 in or 10-32"},
		{"about 5/16 in", "about 5/16 in is no thread: such as M8, 5/16 in or 10-32"},
		{"4 ft", "4 ft is no thread: such as M8, 5/16 in or 10-32"},
		{"bolt", "bolt is no thread: such as M8, 5/16 in or 10-32"},
	}
	for _, test := range tests {
		got, err := ParseThread(test.text)
		if err == nil || err.Error() != test.says {
			t.Errorf("ParseThread(%q) = %v, %v; want %q", test.text, got, err, test.says)
		}
	}
}
