package position

import (
	"fmt"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// Space is the positions that some controls of a harness can take together, all others
// standing still. It does not change once made; the methods that narrow it return another.
type Space struct {
	harness *wiring.Harness
	axes    []Axis
	still   map[*wiring.Control]string // where a control stands that is no axis; unsaid: at rest
	fixed   []*wiring.Control          // of these the ones that a premise fixed, in order
	order   order
}

// All is the space of all positions of all controls of a harness: the full product.
func All(h *wiring.Harness) *Space {
	return (&Space{harness: h}).with(axes(h))
}

// with is the space over other axes.
func (s *Space) with(axes []Axis) *Space {
	n := *s
	n.axes = axes
	n.order = newOrder(axes)
	return &n
}

// Axes lists the controls that are varied, in the order of parts. It must not be changed.
func (s *Space) Axes() []Axis { return s.axes }

// Count is the number of positions; [math.MaxInt64] if there are as many or more.
func (s *Space) Count() int64 { return s.order.count() }

// Distinct leaves out what makes no difference: of positions of a control that everything
// which reads it treats alike only the first one stays, and a control that nothing reads
// stays at rest. It is exact for every property.
func (s *Space) Distinct() *Space {
	read := readersOf(s.harness)
	var kept []Axis
	for _, a := range s.axes {
		if d := a.distinct(read[a.Control]); len(d.Positions) > 1 {
			kept = append(kept, d)
		}
	}
	return s.with(kept)
}

// Fix holds a control in a position. It is an error if the control has no such position.
func (s *Space) Fix(c *wiring.Control, position string) (*Space, error) {
	if !slices.Contains(c.Positions, position) {
		return nil, fmt.Errorf("%s has no position %q", controlName(c), position)
	}
	n := s.with(slices.DeleteFunc(slices.Clone(s.axes), func(a Axis) bool { return a.Control == c }))
	n.still = make(map[*wiring.Control]string, len(s.still)+1)
	for k, v := range s.still {
		n.still[k] = v
	}
	n.still[c] = position
	n.fixed = append(slices.Clone(s.fixed), c)
	return n, nil
}

// without takes one position of a control away.
func (s *Space) without(c *wiring.Control, position string) *Space {
	kept := slices.Clone(s.axes)
	for i, a := range kept {
		if a.Control == c {
			kept[i].Positions = slices.DeleteFunc(slices.Clone(a.Positions), func(p string) bool { return p == position })
		}
	}
	return s.with(kept)
}

// Only varies just the given controls of the space and leaves the others at rest.
func (s *Space) Only(controls []*wiring.Control) *Space {
	return s.with(slices.DeleteFunc(slices.Clone(s.axes), func(a Axis) bool {
		return !slices.Contains(controls, a.Control)
	}))
}

// At is the position of a number from 0 to Count - 1. Positions with fewer controls away
// from rest come first, of those with as many the ones that move a control listed earlier.
func (s *Space) At(i int64) *wiring.State {
	set := make(map[*wiring.Control]string, len(s.axes)+len(s.still))
	for c, position := range s.still {
		set[c] = position
	}
	s.order.at(i, func(axis, position int) {
		a := s.axes[axis]
		set[a.Control] = a.Positions[position]
	})
	state := &wiring.State{Set: set}
	state.Name = s.name(state)
	return state
}

// inside reports whether every position of s is one of o as well.
func (s *Space) inside(o *Space) bool {
	for _, c := range s.fixed {
		if s.still[c] != o.still[c] {
			return false
		}
	}
	for _, a := range s.axes {
		if !slices.ContainsFunc(o.axes, a.within) {
			return false
		}
	}
	return len(s.fixed) == len(o.fixed)
}

// meets reports whether a position of a space that covers s is one of s.
func (s *Space) meets(state *wiring.State) bool {
	for _, c := range s.fixed {
		if state.Position(c) != s.still[c] {
			return false
		}
	}
	return !slices.ContainsFunc(s.axes, func(a Axis) bool { return !slices.Contains(a.Positions, state.Position(a.Control)) })
}

// covers reports whether s has every position of o, a space of the same harness in which a
// premise fixes some of what s varies.
func (s *Space) covers(o *Space) bool {
	fixed := make(map[*wiring.Control]string, len(o.fixed))
	for _, c := range o.fixed {
		fixed[c] = o.still[c]
	}
	for _, a := range s.axes {
		position, ok := fixed[a.Control]
		if ok && !slices.Contains(a.Positions, position) {
			return false
		}
		delete(fixed, a.Control)
	}
	for c, position := range fixed {
		if position != c.Positions[0] {
			return false
		}
	}
	return !slices.ContainsFunc(o.axes, func(a Axis) bool { return !slices.ContainsFunc(s.axes, a.within) })
}

// many is what stands for a count that an int64 cannot hold.
const many = math.MaxInt64
