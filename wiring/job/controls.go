package job

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// controls lists the cart's controls by their names.
func (r *reading) controls() {
	r.controlOf = map[string][]*wiring.Control{}
	for _, p := range r.h.Parts {
		for _, c := range p.Controls {
			key := wiring.Fold(c.Name)
			r.controlOf[key] = append(r.controlOf[key], c)
		}
	}
}

// apply sets controls: by name first, then by part, then one control of one part, so that
// what is said of one device holds against what is said of all.
func (r *reading) apply(d *draftState, s *wiring.State) {
	var byRank [3][]func()
	for _, e := range d.set.list {
		rank, controls := r.aimed(d, e)
		if len(controls) > 0 {
			byRank[rank] = append(byRank[rank], func() { r.setControls(d, s, e, controls) })
		}
	}
	for _, rank := range byRank {
		for _, set := range rank {
			set()
		}
	}
}

// aimed finds the controls that a key of a state names, and how narrowly it does: 0 every
// one of that name, 1 the one of a part, 2 one of several of a part.
func (r *reading) aimed(d *draftState, e setting) (rank int, controls []*wiring.Control) {
	if list := r.controlOf[wiring.Fold(e.key)]; len(list) > 0 {
		return 0, list
	}
	name, control, dotted := strings.Cut(e.key, ".")
	p := r.h.Part(name)
	switch {
	case p == nil:
		r.noControl(d, e, name)
	case dotted:
		for _, c := range p.Controls {
			if wiring.Fold(c.Name) == wiring.Fold(control) {
				return 2, []*wiring.Control{c}
			}
		}
		r.fault(e.at, fmt.Sprintf("state %s: %s has no control %s%s", d.name, p.Designation, control, r.meant(control, func() []string { return controlNames(p) })))
	case len(p.Controls) == 1:
		return 1, p.Controls
	case len(p.Controls) == 0:
		r.fault(e.at, fmt.Sprintf("state %s: %s has no control", d.name, p.Designation))
	default:
		names := controlNames(p)
		r.fault(e.at, fmt.Sprintf("state %s: %s has several controls: write %s.%s or %s.%s", d.name, p.Designation,
			p.Designation, names[0], p.Designation, names[1]))
	}
	return 0, nil
}

func controlNames(p *wiring.Part) []string {
	names := make([]string, len(p.Controls))
	for i, c := range p.Controls {
		names[i] = c.Name
	}
	return names
}

// noControl reports a key that names nothing. A built-in state may speak of controls that
// this cart does not have, and a lower layer of a part that is gone by now.
func (r *reading) noControl(d *draftState, e setting, part string) {
	if e.layer.Kind == wiring.CatalogLayer || len(r.parts[wiring.Fold(part)]) > 0 {
		return
	}
	r.lost(e.at, fmt.Sprintf("state %s: nothing has a control or name %s%s", d.name, e.key, r.meant(e.key, r.settable)))
}

// settable lists what a state may set.
func (r *reading) settable() []string {
	names := make([]string, 0, len(r.controlOf)+len(r.h.Parts))
	for _, list := range r.controlOf {
		names = append(names, list[0].Name)
	}
	for _, p := range r.h.Parts {
		if len(p.Controls) > 0 {
			names = append(names, p.Designation)
		}
	}
	sort.Strings(names)
	return names
}

// setControls puts controls into a position. Of several controls of one name those that do
// not know it stay where they are.
func (r *reading) setControls(d *draftState, s *wiring.State, e setting, controls []*wiring.Control) {
	want := r.text(e.value, e.key)
	if want == "" {
		return
	}
	found := false
	for _, c := range controls {
		for i, p := range c.Positions {
			if wiring.Fold(p) != wiring.Fold(want) {
				continue
			}
			found = true
			if i == 0 {
				delete(s.Set, c)
			} else {
				s.Set[c] = p
			}
		}
	}
	if !found && e.layer.Kind != wiring.CatalogLayer {
		r.fault(e.value.Span, fmt.Sprintf("state %s: %s has the positions %s, not %s", d.name, e.key, strings.Join(controls[0].Positions, ", "), want))
	}
}

// concerns reports whether the cart has any of a state's own controls.
func (r *reading) concerns(d *draftState) bool {
	for _, e := range d.set.list {
		if len(r.controlOf[wiring.Fold(e.key)]) > 0 || e.layer.Kind != wiring.CatalogLayer {
			return true
		}
	}
	return len(d.set.list) == 0
}
