package diagnosis

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
)

// Measurement is one reading to take. Red on a spot and black on its negative tells what is
// live. Under load, red on the post of a supply and black on a spot behind it tells how much
// is lost on the way, and red and black on the two ends of a wire, how much in that wire: a
// bad joint shows nowhere else.
type Measurement struct {
	State *wiring.State
	Spot  *fault.Spot  // red, or black with Post; nil: along Wire
	Post  *fault.Spot  // red on the post of a supply; nil: black on the spot's negative
	Wire  *wiring.Wire // nil: at Spot

	state, place, post int // places in the table
}

// Name is the measurement as a flag writes it: "K1.out@driving", "G1.+>K1.out@driving",
// "W7@driving".
func (m Measurement) Name() string { return m.Where() + "@" + m.State.Name }

// Where is the place alone: "K1.out", "G1.+>K1.out", "W7".
func (m Measurement) Where() string {
	switch {
	case m.Wire != nil:
		return m.Wire.Name()
	case m.Post != nil:
		return m.Post.Name + ">" + m.Spot.Name
	}
	return m.Spot.Name
}

// Drop reports whether the reading is a loss, which is small on a healthy cart.
func (m Measurement) Drop() bool { return m.Spot == nil || m.Post != nil }

// Trouble of a measurement. The numbers are our own: a stated test point is at hand, other
// terminals want a cover off, the drop along a wire wants both its ends found; to bring a
// cart into another state takes a walk around it, and to drive with the wheels raised more. A lead
// long enough to reach from a post is in every van.
const (
	atHand   = 1.0
	covered  = 2.0
	bothEnds = 2.5
	longLead = 0.5
	newState = 0.5
	onJacks  = 1.5
	setting  = 0.1 // for each control that must be held
)

// cost is the trouble of a measurement after one in another state; nil: the first.
func (m Measurement) cost(after *wiring.State, moves bool) float64 {
	c := bothEnds
	if m.Spot != nil {
		c = covered
		if m.Spot.Stated {
			c = atHand
		}
		if m.Post != nil {
			c += longLead
		}
	}
	if m.State != after {
		c += newState + setting*float64(len(m.State.Set))
		if moves {
			c += onJacks
		}
	}
	return c
}

// measurable lists the wires along which a drop is worth reading: single conductors with
// two ends on terminals.
func measurable(w *wiring.Wire) bool {
	return !w.Cord() && len(w.Joins()) == 1
}
