package label_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/arrange/arrangetest"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/route"
	"github.com/lugwright/lugwright/render/symbol"
)

func at(x, y int) arrange.Place { return arrange.Place{At: symbol.Cell{X: x, Y: y}} }

// lie turns a part so that its pins lie left and right: "1" right, "2" left of it.
func lie(x, y int) arrange.Place { return arrange.Place{At: symbol.Cell{X: x, Y: y}, Form: 1} }

func place(t *testing.T, b *arrangetest.Builder, l *arrange.Layout) *label.Result {
	t.Helper()
	r := route.Run(&b.D, l, nil)
	if len(r.Failed) > 0 {
		t.Fatalf("not routed: %v", r.Failed)
	}
	return label.Place(&b.D, l, r.Paths, r.Dots, true)
}

func TestLabelStandsAboveALevelWire(t *testing.T) {
	b := arrangetest.New(70, 30).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Wire("W1", "F1.1", "F2.2", "RD 18 AWG", 1)
	got := place(t, b, &arrange.Layout{Items: []arrange.Place{lie(15, 15), lie(55, 15)}})
	if len(got.Labels) != 1 || len(got.Labels[0].Lines) != 1 {
		t.Fatalf("%+v", got)
	}
	if x := got.Labels[0]; x.Box.Y1 >= 15 || x.Box.Y1 < 14 || x.Turned || x.Leader != nil {
		t.Errorf("it stands at %+v", x)
	}
}

func TestLabelStandsInTwoLinesBesideAnUprightWire(t *testing.T) {
	b := arrangetest.New(60, 50).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Wire("W1", "F1.2", "F2.1", "RD 18 AWG", 1)
	got := place(t, b, &arrange.Layout{Items: []arrange.Place{at(20, 4), at(20, 30)}})
	if len(got.Labels) != 1 {
		t.Fatalf("%+v", got)
	}
	if x := got.Labels[0]; len(x.Lines) != 2 || x.Box.X0 <= 20 || x.Box.X0 > 21 || x.Turned {
		t.Errorf("it stands at %+v", x)
	}
}

// A wire too short for its words gets them nearby, with a line that ends on the wire.
func TestShortWireGetsALeader(t *testing.T) {
	b := arrangetest.New(60, 40).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Wire("W1", "F1.2", "F2.1", "RD 18 AWG", 1)
	got := place(t, b, &arrange.Layout{Items: []arrange.Place{at(20, 10), at(20, 15)}})
	if got.Leaders != 1 || len(got.Labels) != 1 || len(got.Missing) != 0 {
		t.Fatalf("%+v", got)
	}
	if foot := got.Labels[0].Leader[1]; foot.X != 20 || foot.Y <= 14 || foot.Y >= 15 {
		t.Errorf("the leader ends at %v, not on the wire", foot)
	}
}

func TestWithoutLeadersItIsMissing(t *testing.T) {
	b := arrangetest.New(60, 40).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Wire("W1", "F1.2", "F2.1", "RD 18 AWG", 1)
	l := &arrange.Layout{Items: []arrange.Place{at(20, 10), at(20, 15)}}
	r := route.Run(&b.D, l, nil)
	got := label.Place(&b.D, l, r.Paths, r.Dots, false)
	if len(got.Missing) != 1 || got.Missing[0].Lines[0] != "W1 RD 18 AWG" {
		t.Errorf("%+v", got)
	}
}

// Wires two units apart, as at the pins of a controller, each carry their own label.
func TestLabelsFitBetweenNeighbours(t *testing.T) {
	b := arrangetest.New(60, 40).Box("U1", arrange.Host, "", "a b c d e", "", "").Box("U2", arrange.Host, "a b c d e", "", "", "")
	for i, pin := range []string{"a", "b", "c", "d", "e"} {
		b.Wire("W"+string(rune('1'+i)), "U1."+pin, "U2."+pin, "RD 18 AWG", 1)
	}
	got := place(t, b, &arrange.Layout{Items: []arrange.Place{at(3, 10), at(35, 10)}})
	if len(got.Missing) > 0 || got.Leaders > 0 {
		t.Errorf("missing %v, leaders %d", got.Missing, got.Leaders)
	}
}

func TestMarksAndNamesOfBars(t *testing.T) {
	b := arrangetest.New(60, 40).Bar("P", arrange.TopRow).Two("F1", arrange.InChain).Wire("W1", "P", "F1.1", "RD 18 AWG", 1)
	b.D.Wires[0].Marks = [2]arrange.Words{arrangetest.Words("3"), arrangetest.Words("in")}
	got := place(t, b, &arrange.Layout{Items: []arrange.Place{at(20, 20)}, Bars: []arrange.Span{{At: symbol.Cell{X: 2, Y: 3}, Length: 50}}})
	count := map[label.Kind]int{}
	for _, x := range got.Labels {
		count[x.Kind]++
	}
	if diff := cmp.Diff(map[label.Kind]int{label.OfWire: 1, label.OfMark: 2, label.OfBar: 1}, count); diff != "" {
		t.Error(diff)
	}
}

// Whatever the diagram: no words on words, lines, bodies or fixed words, all on the sheet,
// and the same again.
func TestRandomDiagrams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := arrangetest.Random(t)
		r := route.Run(d, l, nil)
		got := label.Place(d, l, r.Paths, r.Dots, true)
		for i, x := range got.Labels {
			if x.Box.X0 < 0 || x.Box.Y0 < 0 || x.Box.X1 > float64(d.Width) || x.Box.Y1 > float64(d.Height) {
				t.Fatalf("%v lies off the sheet: %+v", x.Lines, x.Box)
			}
			for _, y := range got.Labels[:i] {
				if arrange.Touch(x.Box, y.Box) {
					t.Fatalf("%v lies on %v", x.Lines, y.Lines)
				}
			}
			for w, path := range r.Paths {
				for k := 1; k < len(path); k++ {
					a, b := path[k-1], path[k]
					run := symbol.Box{X0: float64(min(a.X, b.X)), X1: float64(max(a.X, b.X)), Y0: float64(min(a.Y, b.Y)), Y1: float64(max(a.Y, b.Y))}
					if arrange.Touch(x.Box, arrange.Grown(run, 0.05)) {
						t.Fatalf("%v lies on %s", x.Lines, d.Wires[w].Name)
					}
				}
			}
			for k := range d.Items {
				for _, b := range l.Bodies(d, k) {
					if arrange.Touch(x.Box, b) {
						t.Fatalf("%v lies on %s", x.Lines, d.Items[k].Name)
					}
				}
				if c, ok := l.CaptionBox(d, k); ok && arrange.Touch(x.Box, c) {
					t.Fatalf("%v lies on the words of %s", x.Lines, d.Items[k].Name)
				}
			}
		}
		if n := len(got.Labels) + len(got.Missing); n < len(d.Wires)-len(r.Failed) {
			t.Fatalf("%d labels for %d wires", n, len(d.Wires)-len(r.Failed))
		}
		if diff := cmp.Diff(got, label.Place(d, l, r.Paths, r.Dots, true)); diff != "" {
			t.Fatalf("the same diagram is labelled otherwise:\n%s", diff)
		}
	})
}
