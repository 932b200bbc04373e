package colour

import (
	"testing"

	"pgregory.net/rapid"
)

// Pairs from common practice, no published source: what electricians mix up under a seat,
// and what they do not.
func TestLookAlike(t *testing.T) {
	tests := []struct {
		a, b string
		want bool
	}{
		{"BK", "BK", true},
		{"BK", "BN", true},
		{"BN", "RD", true},
		{"RD", "OG", true},
		{"OG", "YE", true},
		{"BU", "VT", true},
		{"GY", "SR", true},
		{"WH", "CL", true},
		{"GN", "TQ", true},
		{"BK", "WH", false},
		{"BK", "RD", false},
		{"BK", "YE", false},
		{"RD", "BU", false},
		{"RD", "WH", false},
		{"YE", "BU", false},
		{"GN", "RD", false},
		{"GN", "WH", false},
		{"BU", "WH", false},
		{"BK", "BK/YE", false}, // a tracer tells them apart
		{"BK/YE", "BN/OG", true},
		{"BK/YE", "BK/BU", false},
		{"GNYE", "GNYE", true},
		{"GNYE", "GN", false},
		{"LBU", "DBU", false},
	}
	for _, test := range tests {
		a, b := mustParse(t, test.a), mustParse(t, test.b)
		if got := LookAlike(a, b); got != test.want {
			t.Errorf("LookAlike(%s, %s) = %v at a distance of %.1f, want %v", a, b, got, Distance(a.Base, b.Base), test.want)
		}
	}
	if LookAlike(Colour{}, Colour{}) {
		t.Error("two unknown colours are taken for alike")
	}
}

func mustParse(t *testing.T, text string) Colour {
	t.Helper()
	c, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestDistanceIsAMetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		codes := rapid.SampledFrom(allCodes())
		a, b, c := codes.Draw(t, "a"), codes.Draw(t, "b"), codes.Draw(t, "c")
		ab, ba := Distance(a, b), Distance(b, a)
		if ab != ba || ab < 0 || Distance(a, a) != 0 {
			t.Fatalf("Distance(%s, %s) = %v, the other way %v", a, b, ab, ba)
		}
		if ab > Distance(a, c)+Distance(c, b)+1e-9 {
			t.Fatalf("the way from %s to %s is shorter over %s", a, b, c)
		}
	})
}

// allCodes are all codes with their shades.
func allCodes() []Code {
	var all []Code
	for _, c := range Codes() {
		all = append(all, c)
		if c.HasShades() {
			all = append(all, "L"+c, "D"+c)
		}
	}
	return all
}
