// Package stack orders the lugs on a terminal.
package stack

import (
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Lug is one lug on a terminal.
type Lug struct {
	Wire   *wiring.Wire
	End    *wiring.End
	Size   quantity.Size             // of the piece that the lug is crimped to
	Area   quantity.SquareMillimetre // of its copper; 0: not known
	Amps   quantity.Ampere           // current that it carries, where the caller knows it
	Stated bool                      // the job states where it sits
}

// Amps tells the current that a wire carries, for lugs of one size. It may be nil.
type Amps func(*wiring.Wire) quantity.Ampere

// Of lists the lugs on a terminal from its face outwards: the order that a job states as
// built, else the one in which they belong.
func Of(h *wiring.Harness, t *wiring.Terminal, tables *handbook.Tables, amps Amps) []Lug {
	for _, s := range h.Stacks {
		if s.Terminal == t {
			return stated(t, s.Wires, tables, amps)
		}
	}
	return Order(t, tables, amps)
}

// Order is the order in which the lugs of a terminal belong, from its face outwards: the
// most copper first, so that the largest current crosses the fewest faces; of equal sizes
// the larger current; then by the numbers of the wires. Lugs of unknown size come last.
//
// Source: AC 43.13-1B para 11-174 as taught ("largest diameter at the bottom"); ABYC E-11
// as surveyors state it.
func Order(t *wiring.Terminal, tables *handbook.Tables, amps Amps) []Lug {
	lugs := stated(t, t.Wires, tables, amps)
	for i := range lugs {
		lugs[i].Stated = false
	}
	sort.SliceStable(lugs, func(i, j int) bool {
		a, b := lugs[i], lugs[j]
		switch {
		case a.Area != b.Area:
			return a.Area > b.Area
		case a.Amps != b.Amps:
			return a.Amps > b.Amps
		}
		return wiring.Less(a.Wire.Name(), b.Wire.Name())
	})
	return lugs
}

func stated(t *wiring.Terminal, wires []*wiring.Wire, tables *handbook.Tables, amps Amps) []Lug {
	lugs := make([]Lug, 0, len(wires))
	for _, w := range wires {
		l := Lug{Wire: w, End: endOn(w, t), Stated: true}
		if l.End != nil {
			l.Size = sizeAt(w, l.End)
		}
		if area, err := tables.Area(l.Size); err == nil && l.Size.Known() {
			l.Area = area
		}
		if amps != nil {
			l.Amps = amps(w)
		}
		lugs = append(lugs, l)
	}
	return lugs
}

func endOn(w *wiring.Wire, t *wiring.Terminal) *wiring.End {
	for _, e := range w.Ends() {
		if e.Terminal == t {
			return e
		}
	}
	return nil
}

// sizeAt is the size of the piece at an end.
func sizeAt(w *wiring.Wire, e *wiring.End) quantity.Size {
	switch {
	case len(w.Pieces) == 0:
		return quantity.Size{}
	case e == &w.From:
		return w.Pieces[0].Size
	}
	return w.Pieces[len(w.Pieces)-1].Size
}

// Misplaced finds the first lug, from the face outwards, on which a thicker one sits
// further out, and that thicker one. Lugs of unknown size are passed over.
func Misplaced(lugs []Lug) (inner, outer Lug, found bool) {
	for i, a := range lugs {
		for _, b := range lugs[i+1:] {
			if a.Area > 0 && b.Area > a.Area {
				return a, b, true
			}
		}
	}
	return Lug{}, Lug{}, false
}
