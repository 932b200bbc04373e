package figure

import "github.com/lugwright/lugwright/wiring"

// variant is a copy of a harness in which some elements are other than drawn. Nodes,
// wires, controls and states are those of the harness itself, so that what is asked of
// the copy can be asked in the words of the original.
type variant struct {
	harness *wiring.Harness
	own     map[wiring.Element]wiring.Element // the copy of an element; missing: left out
	drawn   map[wiring.Element]wiring.Element // the element that a copy is of
}

// change is told of every element as drawn and may change its copy, which nobody else
// holds; with false the element is left out.
type change func(drawn, own wiring.Element) bool

// vary copies a harness. A condition on what was left out never holds. The extra elements
// come into a part of their own.
func vary(h *wiring.Harness, f change, extra ...wiring.Element) *variant {
	v := &variant{own: map[wiring.Element]wiring.Element{}, drawn: map[wiring.Element]wiring.Element{}}
	copied := *h
	copied.Parts = make([]*wiring.Part, 0, len(h.Parts)+1)
	for _, p := range h.Parts {
		copied.Parts = append(copied.Parts, v.part(p, f))
	}
	if len(extra) > 0 {
		bench := &wiring.Part{Designation: "figure", Kind: &wiring.Kind{}, Elements: extra}
		for _, e := range extra {
			e.Base().Part = bench
		}
		copied.Parts = append(copied.Parts, bench)
	}
	for _, e := range v.own {
		v.rewire(e)
	}
	v.harness = &copied
	return v
}

func (v *variant) part(p *wiring.Part, f change) *wiring.Part {
	copied := *p
	copied.Elements = make([]wiring.Element, 0, len(p.Elements))
	for _, e := range p.Elements {
		c := duplicate(e)
		if !f(e, c) {
			continue
		}
		v.own[e], v.drawn[c] = c, e
		copied.Elements = append(copied.Elements, c)
	}
	return &copied
}

// duplicate copies an element; one of a type that is not known is returned as it is.
func duplicate(e wiring.Element) wiring.Element {
	switch e := e.(type) {
	case *wiring.Resistor:
		return clone(e)
	case *wiring.Link:
		return clone(e)
	case *wiring.Fuse:
		return clone(e)
	case *wiring.Switch:
		return clone(e)
	case *wiring.Coil:
		return clone(e)
	case *wiring.Contact:
		return clone(e)
	case *wiring.Diode:
		return clone(e)
	case *wiring.Capacitor:
		return clone(e)
	case *wiring.Source:
		return clone(e)
	case *wiring.Mains:
		return clone(e)
	case *wiring.Charger:
		return clone(e)
	case *wiring.Converter:
		return clone(e)
	case *wiring.Load:
		return clone(e)
	case *wiring.Sense:
		return clone(e)
	case *wiring.Driver:
		return clone(e)
	}
	return e
}

func clone[T any](e *T) *T {
	c := *e
	return &c
}

// rewire makes a copy wait for, and be moved by, copies.
func (v *variant) rewire(e wiring.Element) {
	switch e := e.(type) {
	case *wiring.Source:
		e.When = v.condition(e.When)
	case *wiring.Mains:
		e.When = v.condition(e.When)
	case *wiring.Charger:
		e.When = v.condition(e.When)
	case *wiring.Converter:
		e.When = v.condition(e.When)
	case *wiring.Load:
		e.When = v.condition(e.When)
	case *wiring.Driver:
		e.When = v.condition(e.When)
	case *wiring.Contact:
		if e.Coil == nil {
			return
		}
		if c, ok := v.own[e.Coil].(*wiring.Coil); ok {
			e.Coil = c
		}
	}
}

func (v *variant) condition(w *wiring.Condition) *wiring.Condition {
	if w == nil {
		return nil
	}
	c := *w
	if own, ok := v.own[w.Element]; ok {
		c.Element = own
	}
	c.Of = make([]*wiring.Condition, len(w.Of))
	for i, of := range w.Of {
		c.Of[i] = v.condition(of)
	}
	return &c
}
