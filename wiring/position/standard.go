package position

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// named lists the controls of a name that have a position.
func named(h *wiring.Harness, name, position string) []*wiring.Control {
	var all []*wiring.Control
	for _, a := range axes(h) {
		if a.Control.Name == name && slices.Contains(a.Positions, position) {
			all = append(all, a.Control)
		}
	}
	return all
}

// each has a space for every control of a name, with that control in a position.
func (s *Space) each(name, position string) ([]*Space, error) {
	var spaces []*Space
	for _, c := range named(s.harness, name, position) {
		fixed, err := s.Fix(c, position)
		if err != nil {
			return nil, err
		}
		spaces = append(spaces, fixed)
	}
	if len(spaces) == 0 {
		return nil, fmt.Errorf("it has no %s that can be %s", name, position)
	}
	return spaces, nil
}

// all has every control of a name in a position.
func (s *Space) all(name, position string) (*Space, error) {
	controls := named(s.harness, name, position)
	if len(controls) == 0 {
		return nil, fmt.Errorf("it has no %s that can be %s", name, position)
	}
	for _, c := range controls {
		var err error
		if s, err = s.Fix(c, position); err != nil {
			return nil, err
		}
	}
	return s, nil
}
