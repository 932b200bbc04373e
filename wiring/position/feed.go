package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// feeds is what current may properly come through to a consumer, and go back through: all
// that conducts and is closed, diodes that conduct, resistors up to a limit where there is no
// way around them; and supplies from their negative to their positive, while they deliver.
func feeds(p *settle.Point, most quantity.Ohm) crosses {
	return func(e *path.Edge, from wiring.NodeID) crossing {
		switch {
		case e.Sort&path.Conductors != 0:
			return passed
		case e.Sort == path.Switch:
			return passes(e.ClosedIn(p.Position(e.Control())))
		case e.Sort&(path.Fuse|path.Contact|path.Driver) != 0:
			return passes(p.Holds(e.Element))
		case e.Sort == path.Diode:
			return passes(from == e.A && p.Holds(e.Element))
		case e.Sort == path.Resistor && resistorOhms(e) <= float64(most):
			return through
		case isSupply(e) && from == e.B && delivers(p, e.Element):
			return driven
		}
		return barred
	}
}

// couldFeed is feeds with everything closed and every supply delivering: what could ever
// feed anything.
func couldFeed(most quantity.Ohm) crosses {
	return func(e *path.Edge, from wiring.NodeID) crossing {
		switch {
		case e.Sort&(path.Metal|path.Driver) != 0:
			return passed
		case e.Sort == path.Diode:
			return passes(from == e.A)
		case e.Sort == path.Resistor && resistorOhms(e) <= float64(most):
			return through
		case isSupply(e) && from == e.B:
			return driven
		}
		return barred
	}
}

func passes(ok bool) crossing {
	if ok {
		return passed
	}
	return barred
}

// delivers reports whether a supply holds up the voltage at its positive: a battery that is
// in circuit, be it charged or not, and anything else that drives current out.
func delivers(p *settle.Point, e wiring.Element) bool {
	if _, battery := e.(*wiring.Source); battery {
		return p.Holds(e)
	}
	return p.ElementAmps(e) > 0
}

// ends are the nodes that a consumer, a coil or a sense lies between; of a converter those
// of its input.
func ends(e wiring.Element) (a, b wiring.NodeID, ok bool) {
	switch e := e.(type) {
	case *wiring.Load:
		return e.A, e.B, true
	case *wiring.Coil:
		return e.A, e.B, true
	case *wiring.Sense:
		return e.At, e.To, !e.AC
	case *wiring.Converter:
		return e.InA, e.InB, true
	}
	return wiring.NoNode, wiring.NoNode, false
}

// highAndLow are the ends of something in the direction of its current.
func highAndLow(p *settle.Point, e wiring.Element) (high, low wiring.NodeID, ok bool) {
	a, b, ok := ends(e)
	if p.ElementVolts(e) < 0 {
		return b, a, ok
	}
	return a, b, ok
}

// feed is the proper way of the current through something at a point.
func (c *Cart) feed(p *settle.Point, e wiring.Element, most quantity.Ohm) (Way, bool) {
	high, low, ok := highAndLow(p, e)
	if !ok {
		return Way{}, false
	}
	return c.circuit(low, high, feeds(p, most))
}
