package settle

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Holds reports the state of an element: a sense is true, a coil energised, a driver or
// contact closed, a converter or charger running, a load on, a fuse whole, a diode
// conducting, a source in circuit, a mains live, a switch closed in at least one way.
// Resistors, links and capacitors always hold.
func (p *Point) Holds(e wiring.Element) bool {
	u := p.unit(e)
	return u != nil && p.holds[u.id]
}

// holding is what a defect makes of what a model holds.
func (f forcing) holding(is bool) bool {
	switch f.kind {
	case elementOpen, elementFalse:
		return false
	case elementClosed, elementTrue:
		return true
	}
	return is
}

// On reports whether a part is on: the load listed first in its kind is on; without loads
// its first converter or charger runs, else its first coil is energised. A part without
// any of these is never on.
func (p *Point) On(part *wiring.Part) bool {
	e := WhatTurnsOn(part)
	return e != nil && p.Holds(e)
}

// WhatTurnsOn is the element that decides whether a part is on; nil if it has none.
func WhatTurnsOn(part *wiring.Part) wiring.Element {
	var supply, coil wiring.Element
	for _, e := range part.Elements {
		switch e.(type) {
		case *wiring.Load:
			return e
		case *wiring.Converter, *wiring.Charger:
			if supply == nil {
				supply = e
			}
		case *wiring.Coil:
			if coil == nil {
				coil = e
			}
		}
	}
	if supply != nil {
		return supply
	}
	return coil
}

// Traction reports whether any part whose kind moves the cart is on.
func (p *Point) Traction() bool {
	for _, part := range p.net.harness.Parts {
		if part.Kind != nil && part.Kind.Traction && p.On(part) {
			return true
		}
	}
	return false
}

// Position is where a control stands at this point.
func (p *Point) Position(c *wiring.Control) string {
	if id, ok := p.net.controlOf[c]; ok {
		return p.positions[id]
	}
	return position(p.State, c) // a control that works nothing
}

// Opened lists the fuses that opened and the sources that tripped, in that order of time.
func (p *Point) Opened() []wiring.Element { return p.elements(p.opened) }

// Overloaded lists the converters and chargers in their current limit whose loads found no
// answer inside their working bands.
func (p *Point) Overloaded() []wiring.Element { return p.elements(p.overload) }

func (p *Point) elements(ids []int32) []wiring.Element {
	var es []wiring.Element
	for _, id := range ids {
		es = append(es, p.net.models[id].itself().element)
	}
	return es
}

// Limiting lists the converters and chargers that hold their current rather than their
// voltage.
func (p *Point) Limiting() []wiring.Element {
	var es []wiring.Element
	for i, b := range p.net.bendings {
		if isOutput(b.bend) && p.inUse[i] && p.piece[i] == limiting {
			es = append(es, b.model.itself().element)
		}
	}
	return es
}

// Holding evaluates a condition. A nil condition always holds.
func (p *Point) Holding(c *wiring.Condition) bool {
	if c == nil {
		return true
	}
	switch c.Op {
	case wiring.Holds:
		return p.Holds(c.Element)
	case wiring.Set:
		return c.Control != nil && p.Position(c.Control) == c.Position
	case wiring.All:
		for _, of := range c.Of {
			if !p.Holding(of) {
				return false
			}
		}
		return true
	case wiring.Any:
		for _, of := range c.Of {
			if p.Holding(of) {
				return true
			}
		}
		return false
	case wiring.Not:
		return len(c.Of) == 1 && !p.Holding(c.Of[0])
	}
	return false
}

// Unmet is one leaf of a condition that is not as the condition needs it.
type Unmet struct {
	Name    string          // "U1.interlock", "S1.key"
	Want    bool            // the element ought to hold, the control to stand at Needs; or ought not to
	Element wiring.Element  // nil for a control
	Control *wiring.Control // nil for an element
	Needs   string          // Control: the position that is needed, or to be left
	Volts   quantity.Volt   // what a sense, coil or converter sees
}

// Unmet lists what keeps a condition from holding, each leaf once, in the order of the
// condition; nothing if it holds. Of alternatives none of which holds it lists all.
func (p *Point) Unmet(c *wiring.Condition) []Unmet {
	var list []Unmet
	seen := map[Unmet]bool{}
	p.unmet(c, true, func(u Unmet) {
		if !seen[u] {
			seen[u] = true
			list = append(list, u)
		}
	})
	return list
}

// unmet calls add for each leaf that keeps the condition from being as wanted.
func (p *Point) unmet(c *wiring.Condition, want bool, add func(Unmet)) {
	if c == nil || p.Holding(c) == want {
		return
	}
	switch c.Op {
	case wiring.Holds:
		if c.Element != nil {
			add(Unmet{Name: refOf(c.Element), Want: want, Element: c.Element, Volts: p.ElementVolts(c.Element)})
		}
	case wiring.Set:
		if c.Control != nil {
			name := c.Control.Name
			if c.Control.Part != nil {
				name = c.Control.Part.Designation + "." + name
			}
			add(Unmet{Name: name, Want: want, Control: c.Control, Needs: c.Position})
		}
	case wiring.Not:
		for _, of := range c.Of {
			p.unmet(of, !want, add)
		}
	default:
		for _, of := range c.Of {
			p.unmet(of, want, add)
		}
	}
}

// Waits lists what keeps the condition of an element from holding; nothing for an element
// without one.
func (p *Point) Waits(e wiring.Element) []Unmet {
	return p.Unmet(WaitsFor(e))
}

// WaitsFor is the condition of an element; nil if it has none.
func WaitsFor(e wiring.Element) *wiring.Condition {
	switch e := e.(type) {
	case *wiring.Driver:
		return e.When
	case *wiring.Converter:
		return e.When
	case *wiring.Charger:
		return e.When
	case *wiring.Load:
		return e.When
	case *wiring.Source:
		return e.When
	case *wiring.Mains:
		return e.When
	}
	return nil
}
