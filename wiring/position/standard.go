package position

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// named lists the controls of a name that have one of some positions, with the first of
// these that each of them has.
func named(h *wiring.Harness, name string, positions ...string) []setting {
	var all []setting
	for _, a := range axes(h) {
		at := slices.IndexFunc(positions, func(p string) bool { return slices.Contains(a.Positions, p) })
		if a.Control.Name == name && at >= 0 {
			all = append(all, setting{a.Control, positions[at]})
		}
	}
	return all
}

// setting is a control in a position.
type setting struct {
	control  *wiring.Control
	position string
}

// each has a space for every control of a name, with that control in the first of some
// positions that it has and those before it in others, so that no position of the cart is
// in two of the spaces.
func (s *Space) each(name string, positions ...string) ([]*Space, error) {
	var spaces []*Space
	for _, c := range named(s.harness, name, positions...) {
		fixed, err := s.Fix(c.control, c.position)
		if err != nil {
			return nil, err
		}
		spaces = append(spaces, fixed)
		s = s.without(c.control, c.position)
	}
	if len(spaces) == 0 {
		return nil, lacks(name, positions)
	}
	return spaces, nil
}

// all has every control of a name in a position.
func (s *Space) all(name, position string) (*Space, error) {
	controls := named(s.harness, name, position)
	if len(controls) == 0 {
		return nil, lacks(name, []string{position})
	}
	for _, c := range controls {
		var err error
		if s, err = s.Fix(c.control, c.position); err != nil {
			return nil, err
		}
	}
	return s, nil
}

func lacks(name string, positions []string) error {
	return fmt.Errorf("it has no %s that can be %s", name, strings.Join(positions, " or "))
}
