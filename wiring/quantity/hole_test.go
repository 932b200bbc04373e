package quantity

import (
	"math"
	"testing"
)

func TestParseHole(t *testing.T) {
	tests := []struct {
		text     string
		says     string
		inInches string
		mm       float64 // 0: a cut-out
	}{
		{"22 mm", "22 mm", "7/8 in", 22},
		{"37 mm x 21 mm", "37 mm x 21 mm", "1-7/16 in x 13/16 in", 0},
		{"37 X 21 mm", "37 mm x 21 mm", "1-7/16 in x 13/16 in", 0},
		{"2-1/16 in", "2-1/16 in", "2-1/16 in", 52.3875},
		{"1-1/8 in × 2 in", "1-1/8 in x 2 in", "1-1/8 in x 2 in", 0},
	}
	for _, test := range tests {
		got, err := ParseHole(test.text)
		if err != nil || got.String() != test.says || got.In(Inch) != test.inInches || math.Abs(got.DiameterMM()-test.mm) > 1e-9 {
			t.Errorf("ParseHole(%q) = %v (%v, %v mm), %v", test.text, got, got.In(Inch), got.DiameterMM(), err)
		}
		if got.Round() != (test.mm != 0) {
			t.Errorf("ParseHole(%q) is round: %v", test.text, got.Round())
		}
	}
	for _, text := range []string{"", "22", "0 mm", "x", "22 mm x", "x 22 mm", "22 mm x 0 mm", "1 mm x 2 mm x 3 mm"} {
		if got, err := ParseHole(text); err == nil {
			t.Errorf("ParseHole(%q) = %v, want an error", text, got)
		}
	}
}
