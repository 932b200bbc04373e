package wiring

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// State is one operating state: a position for every control, and what is expected of
// the cart in it.
type State struct {
	Name   string
	Set    map[*Control]string // controls that are not at rest
	SOC    quantity.Ratio      // 0: Assume.SOC
	After  string              // starts with the memory of this state; empty: from cold
	Expect []Expectation
	Stock  bool // one of the built-in states
	At     diag.Span
}

// Position returns where a control stands in the state.
func (s *State) Position(c *Control) string {
	if p, ok := s.Set[c]; ok {
		return p
	}
	return c.Positions[0]
}

// Moves reports whether the cart is expected to move (+1), not to move (-1), or nothing is
// said (0).
func (s *State) Moves() int {
	for _, e := range s.Expect {
		if e.Traction {
			if e.On {
				return 1
			}
			return -1
		}
	}
	return 0
}

// Expectation is one part, or traction, that must be on or off.
type Expectation struct {
	Traction bool  // any part whose kind moves the cart
	Part     *Part // nil for traction
	On       bool
	At       diag.Span
}
