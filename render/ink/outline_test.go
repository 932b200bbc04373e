package ink

import (
	"math"
	"testing"
)

func TestOutlineStandsWhereTheTextDoes(t *testing.T) {
	for _, face := range Faces() {
		for _, anchor := range []Anchor{Start, Middle, End} {
			for _, turned := range []bool{false, true} {
				text := Text{At: At(50, 50), String: "HEH", Capital: 2.5, Face: face, Anchor: anchor, Turned: turned}
				p, err := Outline(text)
				if err != nil {
					t.Fatal(err)
				}
				got, _ := p.Bounds()
				if !text.Box().Grow(0.01).Holds(got) {
					t.Errorf("%v anchor %d turned %v: ink %v outside %v", face, anchor, turned, got, text.Box())
				}
				high := got.Height()
				if turned {
					high = got.Width()
				}
				if math.Abs(high-2.5) > 0.01 {
					t.Errorf("%v: capitals are %.3f mm high, want 2.5", face, high)
				}
			}
		}
	}
}

func TestOutlineOfAnyCharacterIsClosed(t *testing.T) {
	p, err := Outline(Text{String: "a Ω ✓\x00", Capital: 2.5})
	if err != nil {
		t.Fatal(err)
	}
	open := false
	for i, s := range p {
		switch s.Op {
		case MoveTo:
			if open {
				t.Fatalf("contour before segment %d is open", i)
			}
			open = true
		case ClosePath:
			open = false
		}
	}
	if open {
		t.Error("the last contour is open")
	}
}
