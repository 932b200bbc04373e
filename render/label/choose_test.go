package label

import (
	"testing"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

func box(x float64) spot { return spot{box: symbol.Box{X0: x, X1: x + 1, Y1: 1}} }

// The second request has one place alone, which the first has taken: it moves out.
func TestEjectionMakesRoom(t *testing.T) {
	a := &request{spots: []spot{box(0), box(10)}, taken: -1}
	b := &request{spots: []spot{box(0)}, taken: -1}
	c := &choice{rs: []*request{a, b}}
	c.settle(a, depth)
	if !c.settle(b, depth) || a.taken != 1 || b.taken != 0 {
		t.Errorf("a took %d, b %d", a.taken, b.taken)
	}
}

// A chain of three moves.
func TestEjectionChain(t *testing.T) {
	a := &request{spots: []spot{box(0), box(10)}, taken: 0}
	b := &request{spots: []spot{box(10), box(20)}, taken: 0}
	c := &request{spots: []spot{box(0)}, taken: -1}
	all := &choice{rs: []*request{a, b, c}}
	if !all.settle(c, depth) || a.taken != 1 || b.taken != 1 {
		t.Errorf("a took %d, b %d, c %d", a.taken, b.taken, c.taken)
	}
}

func TestWithoutRoomNobodyMoves(t *testing.T) {
	a := &request{spots: []spot{box(0)}, taken: 0}
	b := &request{spots: []spot{box(0.5)}, taken: -1}
	c := &choice{rs: []*request{a, b}}
	if c.settle(b, depth) || a.taken != 0 || b.taken != -1 {
		t.Errorf("a took %d, b %d", a.taken, b.taken)
	}
}

// A slanted line through, beside and short of a box (checked on paper).
func TestCuts(t *testing.T) {
	b := symbol.Box{X0: 2, Y0: 2, X1: 4, Y1: 4}
	for _, c := range []struct {
		a, z ink.Point
		want bool
	}{
		{ink.Point{X: 0, Y: 0}, ink.Point{X: 6, Y: 6}, true},
		{ink.Point{X: 0, Y: 3}, ink.Point{X: 6, Y: 3.5}, true},
		{ink.Point{X: 0, Y: 0}, ink.Point{X: 1.5, Y: 1.5}, false},
		{ink.Point{X: 0, Y: 4.5}, ink.Point{X: 6, Y: 5}, false},
		{ink.Point{X: 5, Y: 0}, ink.Point{X: 5, Y: 9}, false},
		{ink.Point{X: 3, Y: 3}, ink.Point{X: 3, Y: 3.5}, true},
	} {
		if got := cuts(c.a, c.z, b); got != c.want {
			t.Errorf("from %v to %v: %v", c.a, c.z, got)
		}
	}
}

func TestFieldKnowsItsLines(t *testing.T) {
	f := newField(40, 20)
	f.line(symbol.Cell{X: 5, Y: 10}, symbol.Cell{X: 15, Y: 10})
	f.line(symbol.Cell{X: 15, Y: 10}, symbol.Cell{X: 15, Y: 3})
	f.sum()
	for _, c := range []struct {
		b    symbol.Box
		want bool
	}{
		{symbol.Box{X0: 6, Y0: 9.5, X1: 9, Y1: 10.5}, true},
		{symbol.Box{X0: 6.2, Y0: 9.5, X1: 6.8, Y1: 10.5}, true}, // within one stretch
		{symbol.Box{X0: 15.5, Y0: 9.5, X1: 19, Y1: 10.5}, false},
		{symbol.Box{X0: 1, Y0: 9.5, X1: 4.9, Y1: 10.5}, false},
		{symbol.Box{X0: 6, Y0: 8, X1: 9, Y1: 9.9}, false},
		{symbol.Box{X0: 14.5, Y0: 4, X1: 15.5, Y1: 5}, true},
		{symbol.Box{X0: 14.5, Y0: 1, X1: 15.5, Y1: 2.9}, false},
	} {
		if got := f.crossed(c.b); got != c.want {
			t.Errorf("%+v: %v, want %v", c.b, got, c.want)
		}
	}
}
