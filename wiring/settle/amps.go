package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// noise is what is nothing but rounding: a picoampere, a picovolt.
const noise = 1e-12

// quiet takes the noise off a value.
func quiet(v float64) float64 {
	if math.Abs(v) > noise {
		return v
	}
	return 0
}

func (p *Point) current(branch int32) float64 { return quiet(p.amps[branch]) }

func (p *Point) voltage(branch int32) float64 {
	b := p.net.branches[branch]
	return p.difference(b.a, b.b)
}

// unit is what a model has in common with others; nil for an element of another harness.
func (p *Point) unit(e wiring.Element) *unit {
	if id, ok := p.net.modelOf[e]; ok {
		return p.net.models[id].itself()
	}
	return nil
}

// WireAmps is the current in a wire from From to To. For a cord, pole counts the pairs of
// [wiring.Wire.Joins]; for any other wire it is 0.
func (p *Point) WireAmps(w *wiring.Wire, pole int) quantity.Ampere {
	i, ok := p.net.wireOf[w]
	if !ok || pole < 0 || int(p.net.wireFirst[i])+pole >= int(p.net.wireFirst[i+1]) {
		return 0
	}
	return quantity.Ampere(p.current(p.net.wireFirst[i] + int32(pole)))
}

// WireDrop is the voltage of a wire's from-side against its to-side, along the same pole
// as WireAmps.
func (p *Point) WireDrop(w *wiring.Wire, pole int) quantity.Volt {
	i, ok := p.net.wireOf[w]
	if !ok || pole < 0 || int(p.net.wireFirst[i])+pole >= int(p.net.wireFirst[i+1]) {
		return 0
	}
	branch := p.net.wireFirst[i] + int32(pole)
	if !p.net.wireLaws[branch].conducts() {
		return 0
	}
	return quantity.Volt(p.voltage(branch))
}

// WireOhms is the resistance that a wire, or each pole of a cord, has on the drawing, and
// whether all its pieces are of known size and length, so that its drop means something.
func (p *Point) WireOhms(w *wiring.Wire) (ohms quantity.Ohm, known bool) { return p.net.WireOhms(w) }

// WireOhms is the resistance that a wire has on the drawing; see [Point.WireOhms].
func (n *Network) WireOhms(w *wiring.Wire) (ohms quantity.Ohm, known bool) {
	i, ok := n.wireOf[w]
	if !ok {
		return 0, false
	}
	return quantity.Ohm(n.wireOhms[i]), n.wireKnown[i]
}

// ElementAmps is the current through an element from its first node to its second, as the
// element lists them: positive into a load's A. A source that delivers therefore has
// negative amperes. For a converter and a charger it is the current delivered out of OutA
// or A, negative for the standby draw of a charger. For a switch it is the largest
// current, by magnitude, of any of its ways. Links, capacitors and mains have none.
func (p *Point) ElementAmps(e wiring.Element) quantity.Ampere {
	u := p.unit(e)
	if u == nil || u.count == 0 {
		return 0
	}
	switch m := p.net.models[u.id].(type) {
	case *converter:
		return quantity.Ampere(-p.current(m.output()))
	case *charger:
		return quantity.Ampere(-p.current(m.output()))
	}
	largest := 0.0
	for i := u.first; i < u.first+u.count; i++ {
		if amps := p.current(i); math.Abs(amps) > math.Abs(largest) {
			largest = amps
		}
	}
	return quantity.Ampere(largest)
}

// ElementVolts is the voltage of an element's first node against its second: for a
// converter of its input, for a switch 0.
func (p *Point) ElementVolts(e wiring.Element) quantity.Volt {
	u := p.unit(e)
	if u == nil || u.count == 0 {
		return 0
	}
	if _, ok := p.net.models[u.id].(*switched); ok {
		return 0
	}
	if b := p.net.branches[u.first]; p.root[b.a] != p.root[b.b] {
		return 0
	}
	return quantity.Volt(quiet(p.voltage(u.first)))
}

// InputAmps is the current that a converter takes at InA; 0 for other elements.
func (p *Point) InputAmps(e wiring.Element) quantity.Ampere {
	u := p.unit(e)
	if u == nil {
		return 0
	}
	if _, ok := p.net.models[u.id].(*converter); !ok {
		return 0
	}
	return quantity.Ampere(p.current(u.first))
}

// SwitchAmps is the current through a switch from a to b, two nodes that one of its ways
// joins.
func (p *Point) SwitchAmps(e *wiring.Switch, a, b wiring.NodeID) quantity.Ampere {
	u := p.unit(e)
	if u == nil {
		return 0
	}
	from, to, sum := p.bus(a), p.bus(b), 0.0
	for i := u.first; i < u.first+u.count; i++ {
		switch way := p.net.branches[i]; {
		case way.a == from && way.b == to:
			sum += p.current(i)
		case way.a == to && way.b == from:
			sum -= p.current(i)
		}
	}
	return quantity.Ampere(sum)
}

// TerminalAmps is the current that flows from the wires of a terminal into its part. A
// port has none; ask for the poles of its cord.
func (p *Point) TerminalAmps(t *wiring.Terminal) quantity.Ampere {
	sum := quantity.Ampere(0)
	for _, w := range t.Wires {
		if w.Cord() {
			continue
		}
		if w.To.Terminal == t {
			sum += p.WireAmps(w, 0)
		}
		if w.From.Terminal == t {
			sum -= p.WireAmps(w, 0)
		}
	}
	return sum
}

// Watts is the power that an element takes in; negative if it delivers. For a converter it
// is what it loses. A source's own resistance counts with it: a pack at rest has 0.
func (p *Point) Watts(e wiring.Element) quantity.Watt {
	u := p.unit(e)
	if u == nil {
		return 0
	}
	sum := 0.0
	for i := u.first; i < u.first+u.count; i++ {
		if amps := p.current(i); amps != 0 {
			sum += p.voltage(i) * amps
		}
	}
	return quantity.Watt(sum)
}

// WireWatts is what all poles of a wire turn into heat.
func (p *Point) WireWatts(w *wiring.Wire) quantity.Watt {
	sum := quantity.Watt(0)
	for pole := range w.Joins() {
		sum += quantity.Watt(p.WireDrop(w, pole)) * quantity.Watt(p.WireAmps(w, pole))
	}
	return sum
}
