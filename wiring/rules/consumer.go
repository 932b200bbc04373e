package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// taking is the sorts of edge that a feed ends at, consumers or not: whatever a fault in
// it or behind it would make draw current from its feed.
const taking = path.Consumers | path.Sense | path.Resistor | path.Driver | path.Charger | path.Output | path.Capacitor

// consumer is one thing inside a part that uses current.
type consumer struct {
	edge        *path.Edge
	part        *wiring.Part
	plus, minus wiring.NodeID
}

// consumers lists loads, coils and converter inputs, in the order of parts and elements.
func consumers(g *path.Graph) []consumer {
	var all []consumer
	for _, e := range g.Edges() {
		if e.Sort&path.Consumers != 0 {
			all = append(all, consumer{edge: e, part: e.Part(), plus: e.A, minus: e.B})
		}
	}
	return all
}

// name is the part where the consumer is its only one, else the element: "E1", "M1.armature".
func (c consumer) name() string {
	n := 0
	for _, el := range c.part.Elements {
		switch el.(type) {
		case *wiring.Load, *wiring.Coil, *wiring.Converter:
			n++
		}
	}
	if n == 1 {
		return c.part.Designation
	}
	return c.edge.Element.Base().Ref()
}

// amps is the current that the consumer takes at a voltage; 0 if its kind does not say.
func (c consumer) amps(at quantity.Volt) quantity.Ampere {
	switch el := c.edge.Element.(type) {
	case *wiring.Load:
		return loadAmps(el, at)
	case *wiring.Coil:
		return over(at, el.Ohms)
	case *wiring.Converter:
		return converterAmps(el, at)
	}
	return 0
}

func loadAmps(l *wiring.Load, at quantity.Volt) quantity.Ampere {
	switch l.Law {
	case wiring.ConstantCurrent:
		return l.Amps
	case wiring.Resistive:
		return over(at, l.Ohms)
	}
	if at <= 0 {
		return 0
	}
	return quantity.Ampere(float64(l.Watts) / float64(at))
}

// converterAmps is what a converter takes at full load.
func converterAmps(c *wiring.Converter, at quantity.Volt) quantity.Ampere {
	if at <= 0 || c.Efficiency <= 0 {
		return 0
	}
	return quantity.Ampere(float64(c.Volts)*float64(c.Amps)/float64(c.Efficiency)/float64(at)) + c.Idle
}

func over(v quantity.Volt, r quantity.Ohm) quantity.Ampere {
	if r <= 0 {
		return 0
	}
	return quantity.Ampere(float64(v) / float64(r))
}
