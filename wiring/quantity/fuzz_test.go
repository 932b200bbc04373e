package quantity

import (
	"errors"
	"math"
	"testing"
	"unicode/utf8"
)

// checkError holds what every error of this package promises: its type, valid text, and
// not much of it.
func checkError(t *testing.T, text string, err error) {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("%q: a %T, want *Error", text, err)
	}
	says := err.Error()
	if says == "" || !utf8.ValidString(says) || utf8.RuneCountInString(says) > 400 {
		t.Fatalf("%q: the error says %q", text, says)
	}
}

func FuzzParse(f *testing.F) {
	f.Add("4 ft 6 in", uint8(Length))
	f.Add(`4'6-1/2"`, uint8(Length))
	f.Add("5 MOHM", uint8(Resistance))
	f.Add("−40 °F", uint8(Temperature))
	f.Add("about 1 1/8\u00a0in", uint8(Length))
	f.Add("1e999999999 V", uint8(Voltage))
	f.Fuzz(func(t *testing.T, text string, dimension uint8) {
		want := Dimension(dimension % uint8(len(dimensions)+2))
		a, err := Parse(text, want)
		if err != nil {
			checkError(t, text, err)
			return
		}
		if math.IsNaN(a.Value) || math.IsInf(a.Value, 0) || a.Value < 0 && want != Temperature {
			t.Fatalf("Parse(%q, %v) = %v", text, want, a.Value)
		}
		again, err := Parse(a.String(), want)
		if err != nil || again != a {
			t.Fatalf("Parse(%q, %v) = %#v, which reads back as %#v, %v", text, want, a, again, err)
		}
		if _, err := Parse(a.In(Inch), want); err != nil {
			t.Fatalf("Parse(%q, %v) prints in inches as %q: %v", text, want, a.In(Inch), err)
		}
		if _, err := Parse(a.In(Metric), want); err != nil {
			t.Fatalf("Parse(%q, %v) prints in metric units as %q: %v", text, want, a.In(Metric), err)
		}
	})
}

func FuzzParsePair(f *testing.F) {
	f.Add("10 to 15 V")
	f.Add("72 V to 30 V")
	f.Add("10..15 V")
	f.Add("about 10 - about 15 V")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := ParsePair(text, Voltage, Voltage, To)
		if err != nil {
			checkError(t, text, err)
			return
		}
		if p.First.Value > p.Second.Value {
			t.Fatalf("ParsePair(%q) runs downwards", text)
		}
		again, err := ParsePair(p.String(), Voltage, Voltage, To)
		if err != nil || again != p {
			t.Fatalf("ParsePair(%q) = %v, which reads back as %v, %v", text, p, again, err)
		}
	})
}

func FuzzParseSize(f *testing.F) {
	for _, seed := range []string{"2/0 AWG", "0000 awg", "35 mm²", "250 MCM", "#2", "AWG 2", "2 ga", "1.5.5 mm2", "-1 AWG"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseSize(text)
		if err != nil {
			checkError(t, text, err)
			return
		}
		again, err := ParseSize(s.String())
		if err != nil || again != s {
			t.Fatalf("ParseSize(%q) = %v, which reads back as %v, %v", text, s, again, err)
		}
	})
}

func FuzzParseThreadHoleCount(f *testing.F) {
	for _, seed := range []string{"M8x1.25", "5/16-18", "10-32", "0.3 in", "37 mm x 21 mm", "1/0-20", "16"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		checkThread(t, text)
		if h, err := ParseHole(text); err != nil {
			checkError(t, text, err)
		} else if again, err := ParseHole(h.String()); err != nil || again != h {
			t.Fatalf("ParseHole(%q) = %v, which reads back as %v, %v", text, h, again, err)
		}
		if n, err := ParseCount(text); err != nil {
			checkError(t, text, err)
		} else if n < 0 || n > mostCount {
			t.Fatalf("ParseCount(%q) = %d", text, n)
		}
	})
}

func checkThread(t *testing.T, text string) {
	th, err := ParseThread(text)
	if err != nil {
		checkError(t, text, err)
		return
	}
	again, err := ParseThread(th.String())
	if err != nil || math.Abs(again.DiameterMM()-th.DiameterMM()) > 1e-6 {
		t.Fatalf("ParseThread(%q) = %v, which reads back as %v, %v", text, th, again, err)
	}
}
