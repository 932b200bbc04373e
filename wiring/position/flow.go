package position

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// flows follows the current of a point wherever it goes: through conductors, and at a
// price through consumers. It does not go through one element itself.
func flows(p *settle.Point, without wiring.Element) crosses {
	return func(e *path.Edge, from wiring.NodeID) crossing {
		if e.Element == without && without != nil {
			return barred
		}
		if e.Sort == path.Link {
			return passed
		}
		amps := along(p, e)
		if from == e.B {
			amps = -amps
		}
		switch {
		case amps <= 0:
			return barred
		case isSupply(e) && from == e.B:
			return driven
		case e.Sort&(path.Conducting) != 0:
			return passed
		}
		return through
	}
}

// along is the current through an edge from its A to its B. Links and capacitors have none
// that could be told.
func along(p *settle.Point, e *path.Edge) quantity.Ampere {
	switch e.Sort {
	case path.Wire:
		for pole, pair := range e.Wire.Joins() {
			if pair == [2]wiring.NodeID{e.A, e.B} {
				return p.WireAmps(e.Wire, pole)
			}
		}
		return 0
	case path.Switch:
		return p.SwitchAmps(e.Element.(*wiring.Switch), e.A, e.B)
	case path.Input:
		return p.InputAmps(e.Element)
	case path.Output, path.Charger:
		return -p.ElementAmps(e.Element)
	}
	return p.ElementAmps(e.Element)
}

// resistance is what something is at a point, volts over amperes; infinite if it takes no
// current.
func resistance(p *settle.Point, e wiring.Element) quantity.Ohm {
	amps := math.Abs(float64(p.ElementAmps(e)))
	if converter, ok := e.(*wiring.Converter); ok {
		amps = math.Abs(float64(p.InputAmps(converter)))
	}
	if amps == 0 {
		return quantity.Ohm(math.Inf(1))
	}
	return quantity.Ohm(math.Abs(float64(p.ElementVolts(e))) / amps)
}
