package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Mode is one way in which things fail.
type Mode struct {
	ID    string // plain words with hyphens: "wire-open"
	Title string // "wire open"
	Class Class
	Why   string // what brings it about
	// Assembly says that hands bring it about: rare on a cart that drove yesterday, and the
	// first thing to look for on one that was just wired.
	Assembly bool
	// Find lists the faults of this mode on a cart, in the order of its wires or parts.
	Find func(*Cart) []Fault
}

// Fault is one thing that is wrong.
type Fault struct {
	Mode *Mode
	Name string // "W37 open": what a person writes down, unique on a cart
	// What it is about: Part, or Wires, or both.
	Part  *wiring.Part
	Wires []*wiring.Wire
	// Defects are what it is to the network.
	Defects []settle.Defect
	// Stuck are the controls that stand where they stand, whatever the hand does.
	Stuck map[*wiring.Control]string
}

// Concerns reports whether a fault is about a part: the part itself, or a wire that lands
// on it.
func (f Fault) Concerns(p *wiring.Part) bool {
	if f.Part == p {
		return true
	}
	for _, w := range f.Wires {
		for _, e := range w.Ends() {
			if e.Terminal != nil && e.Terminal.Part == p {
				return true
			}
		}
	}
	return false
}
