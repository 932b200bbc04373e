// Package list makes the lists that a cart is bought, built and kept by: its wires, what is
// cut for them, its parts, its fuses, and the lugs on its posts.
//
// Each list is a function from a harness to a slice of structs in a fixed order. A list says
// what the harness says and what follows from it by counting; it judges nothing.
package list

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Status says what the work has to do with a part or a wire.
type Status uint8

// The statuses.
const (
	AsFound Status = iota + 1 // on the cart before, and left alone
	Changed                   // on the cart before, and changed
	Moved                     // on the cart before, and landed elsewhere
	New                       // fitted by the work
	Removed                   // taken off the cart
)

// String is the status in a word or two: "as found".
func (s Status) String() string {
	return [...]string{"", "as found", "changed", "moved", "new", "removed"}[s]
}

// ofPlatform reports whether a layer describes the cart as it was before the work.
func ofPlatform(l *wiring.Layer) bool { return l != nil && l.Kind == wiring.PlatformLayer }

// PartStatus says what the work does with a part.
func PartStatus(p *wiring.Part) Status {
	switch {
	case !ofPlatform(p.Origin):
		return New
	case slices.ContainsFunc(p.Changed, func(l *wiring.Layer) bool { return !ofPlatform(l) }):
		return Changed
	}
	return AsFound
}

// WireStatus says what the work does with a wire.
func WireStatus(w *wiring.Wire) Status {
	switch {
	case !ofPlatform(w.Origin):
		return New
	case slices.ContainsFunc(w.Moved, func(m wiring.Move) bool { return !ofPlatform(m.By) }):
		return Moved
	case slices.ContainsFunc(w.Changed, func(l *wiring.Layer) bool { return !ofPlatform(l) }):
		return Changed
	}
	return AsFound
}

// area is the copper of a size, 0 for one that is not known.
func area(t *handbook.Tables, s quantity.Size) quantity.SquareMillimetre {
	if !s.Known() {
		return 0
	}
	a, err := t.Area(s)
	if err != nil {
		return 0
	}
	return a
}
