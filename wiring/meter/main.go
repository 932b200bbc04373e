package meter

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Main is a coil that moves a main contact: one on the way from a battery to what moves the
// cart.
type Main struct {
	Coil     *wiring.Coil
	Contacts []*wiring.Contact // those of its contacts that are on that way
}

// Mains lists the coils that move main contacts, in the order of parts.
func (b *Bench) Mains() []Main { return b.mains }

// Hold is a main contact in one state, and what keeps it open.
type Hold struct {
	Main
	Closed bool
	Sees   quantity.Volt // the coil's
	Wants  []Want        // every condition that is unmet; none if it is closed
}

// Holds says of every main contact whether it is closed, and what keeps it open.
func (s *Sheet) Holds() []Hold {
	var all []Hold
	for _, m := range s.bench.mains {
		h := Hold{Main: m, Closed: s.Point.Holds(m.Coil), Sees: s.Point.ElementVolts(m.Coil)}
		if !h.Closed {
			h.Wants = s.wants(m.Coil, told{})
		}
		all = append(all, h)
	}
	return all
}

func (b *Bench) mainContacts() []Main {
	var all []Main
	for _, p := range b.Harness.Parts {
		for _, e := range p.Elements {
			c, ok := e.(*wiring.Contact)
			if !ok || c.Coil == nil || c.RestClosed || !b.main(c) {
				continue
			}
			if last := len(all) - 1; last >= 0 && all[last].Coil == c.Coil {
				all[last].Contacts = append(all[last].Contacts, c)
				continue
			}
			all = append(all, Main{Coil: c.Coil, Contacts: []*wiring.Contact{c}})
		}
	}
	return all
}

// main reports whether a contact joins the side of a battery to the side of a traction
// motor, each found without it.
func (b *Bench) main(c *wiring.Contact) bool {
	var batteries, motors []wiring.NodeID
	for _, s := range b.supplies {
		if s.Battery() {
			batteries = append(batteries, s.Plus)
		}
	}
	for _, p := range b.Harness.Parts {
		if p.Kind != nil && p.Kind.Traction {
			for _, t := range p.Terminals {
				motors = append(motors, t.Node)
			}
		}
	}
	t := path.Through{Sorts: path.Conducting}.Without(c).Until(b.isReturn)
	battery := b.graph.From(t, batteries...)
	t.Against = true
	motor := b.graph.From(t, motors...)
	return battery.Has(c.A) && motor.Has(c.B) || battery.Has(c.B) && motor.Has(c.A)
}
