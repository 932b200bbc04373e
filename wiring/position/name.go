package position

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// name says what a position is: what its premise fixes, and what is away from rest.
func (s *Space) name(state *wiring.State) string {
	var said []string
	say := func(c *wiring.Control) { said = append(said, controlName(c)+" "+state.Position(c)) }
	for _, c := range s.fixed {
		say(c)
	}
	for _, a := range s.axes {
		if state.Position(a.Control) != a.Positions[0] {
			say(a.Control)
		}
	}
	if len(said) == 0 {
		return "everything at rest"
	}
	return strings.Join(said, ", ")
}

// controlName is the control as states are written: "S1.key".
func controlName(c *wiring.Control) string {
	if c.Part == nil {
		return c.Name
	}
	return c.Part.Designation + "." + c.Name
}

// Moved lists the controls that a state has away from rest, in the order of parts.
func Moved(h *wiring.Harness, state *wiring.State) []*wiring.Control {
	var moved []*wiring.Control
	for _, a := range axes(h) {
		if state.Position(a.Control) != a.Positions[0] {
			moved = append(moved, a.Control)
		}
	}
	return moved
}
