package path

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Through says what a search may pass. The zero Through passes nothing.
type Through struct {
	Sorts   Sort                     // sorts of edge that may be passed
	Ohms    quantity.Ohm             // resistors and senses up to this only; 0: any
	Setting Setting                  // how switches, contacts and drivers stand; nil: any position of each
	Against bool                     // search against the current: diodes from cathode to anode
	Pass    func(*Edge) bool         // further restriction; nil: none
	Stop    func(wiring.NodeID) bool // nodes that are reached but not left again; nil: none
}

// Setting reports whether a switch, contact or driver is closed. It is asked about edges
// of these sorts only.
type Setting func(*Edge) bool

// InState is the Setting of an operating state: hand switches as the state says. closed
// tells of contacts and drivers; nil leaves contacts at rest and drivers open.
func InState(s *wiring.State, closed func(wiring.Element) bool) Setting {
	return func(e *Edge) bool {
		if e.Sort == Switch {
			return e.ClosedIn(s.Position(e.control))
		}
		if closed != nil {
			return closed(e.Element)
		}
		contact, ok := e.Element.(*wiring.Contact)
		return ok && contact.RestClosed
	}
}

// Parked is the Setting in which everything is at rest: hand switches in their first
// position, coils without current, drivers open.
func Parked(e *Edge) bool {
	if e.Sort == Switch {
		return e.ClosedIn(e.control.Positions[0])
	}
	contact, ok := e.Element.(*wiring.Contact)
	return ok && contact.RestClosed
}

// Only passes the edges for which f holds, beside what t asks already.
func (t Through) Only(f func(*Edge) bool) Through {
	before := t.Pass
	t.Pass = func(e *Edge) bool { return (before == nil || before(e)) && f(e) }
	return t
}

// Without passes every edge but those of one element.
func (t Through) Without(el wiring.Element) Through {
	return t.Only(func(e *Edge) bool { return e.Element != el })
}

// Until stops at the nodes for which f holds, beside those at which t stops already.
func (t Through) Until(f func(wiring.NodeID) bool) Through {
	before := t.Stop
	t.Stop = func(n wiring.NodeID) bool { return (before != nil && before(n)) || f(n) }
	return t
}

// passes reports whether a search may leave from by e.
func (t *Through) passes(e *Edge, from wiring.NodeID) bool {
	if e.Sort&t.Sorts == 0 {
		return false
	}
	switch e.Sort {
	case Diode:
		if (e.A == from) == t.Against {
			return false
		}
	case Resistor, Sense:
		if t.Ohms > 0 && ohms(e.Element) > t.Ohms {
			return false
		}
	case Switch, Contact, Driver:
		if t.Setting != nil && !t.Setting(e) {
			return false
		}
	}
	return t.Pass == nil || t.Pass(e)
}

func (t *Through) stops(n wiring.NodeID) bool { return t.Stop != nil && t.Stop(n) }

func ohms(el wiring.Element) quantity.Ohm {
	switch el := el.(type) {
	case *wiring.Resistor:
		return el.Ohms
	case *wiring.Sense:
		return el.Ohms
	}
	return 0
}
