package figure

import (
	"context"
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// ShortCircuit is the prospective short-circuit current between two nodes: what a joint
// without resistance would carry if nothing opened, by Ohm's law and Thevenin's theorem.
//
// The network is that of one state, reduced to what drives and guides such a current:
// sources as their rested voltage behind their ohms, wires, links, whole fuses, resistors,
// diodes, and the switches, contacts and drivers that are closed. Coils, loads, senses and
// capacitors are left out, and so are converters and chargers, whose electronics limit
// what they give: those that would feed the fault are listed.
type ShortCircuit struct {
	At, To wiring.NodeID
	State  *wiring.State
	Charge quantity.Ratio  // state of charge of every source
	Amps   quantity.Ampere // from At to To; negative the other way round
	Volts  quantity.Volt   // of At against To before the fault
	Ohms   quantity.Ohm    // Volts over Amps; 0 where nothing drives a current
	From   []Delivery      // the sources that give it, in the order of parts
	Fuses  []*wiring.Fuse  // the fuses that carry all of it, in the order of parts

	LeftOut []wiring.Element // converters and chargers that run and would feed it too
	Limit   quantity.Ampere  // most that those add together
	Assumes []Assumption
}

// Delivery is what one source gives.
type Delivery struct {
	Source *wiring.Source
	Amps   quantity.Ampere
}

// ShortCircuit computes the prospective short-circuit current between two nodes in a
// state, at a state of charge (0: full, which gives the most). The node to may be
// [wiring.NoNode] for pack negative. The error is [Unknown] for a node or state that is none,
// [Unsettled] for a state that does not settle, or that of ctx.
func (c *Cart) ShortCircuit(ctx context.Context, s *wiring.State, at, to wiring.NodeID, charge quantity.Ratio) (ShortCircuit, error) {
	f, err := c.fault(ctx, s, charge)
	if err != nil {
		return ShortCircuit{}, err
	}
	if to == wiring.NoNode {
		to = f.point.ReferenceNode()
	}
	sc, _, err := f.between(ctx, at, to)
	return sc, err
}

// fault is a state of a cart in which short circuits are looked for.
type fault struct {
	cart   *Cart
	state  *wiring.State
	charge quantity.Ratio
	point  *settle.Point // the state as drawn
}

func (c *Cart) fault(ctx context.Context, s *wiring.State, charge quantity.Ratio) (*fault, error) {
	if charge == 0 {
		charge = 1
	}
	p, err := c.point(ctx, s, charge)
	if err != nil {
		return nil, err
	}
	return &fault{cart: c, state: s, charge: charge, point: p}, nil
}

// between computes one short circuit, and returns what tells the current of any element
// in it.
func (f *fault) between(ctx context.Context, at, to wiring.NodeID) (ShortCircuit, *carried, error) {
	c := f.cart
	for _, n := range []wiring.NodeID{at, to} {
		if !c.isNode(n) {
			return ShortCircuit{}, nil, &Unknown{What: "short circuit", Why: fmt.Sprintf("node %d is not on the cart", n)}
		}
	}
	sc := ShortCircuit{At: at, To: to, State: f.state, Charge: f.charge}
	if at == to {
		sc.Assumes = f.assumptions(nil, 0)
		return sc, &carried{}, nil
	}
	k, err := f.carry(ctx, at, to)
	if err != nil {
		return ShortCircuit{}, nil, err
	}
	sc.Amps, sc.Volts = quantity.Ampere(k.amps), quantity.Volt(k.open)
	if k.amps != 0 {
		sc.Ohms = quantity.Ohm(k.open / k.amps)
	}
	sc.From, sc.Fuses = k.sources(c), k.fuses(c)
	sc.LeftOut, sc.Limit = f.limited(at, to)
	sc.Assumes = f.assumptions(k, k.amps)
	return sc, k, nil
}

// carried is a solved short circuit.
type carried struct {
	at   sample
	amps float64 // of the fault
	open float64 // volts before it
}

// negligible is the current below which nothing is said to flow: a microampere.
const negligible = 1e-6

// carry solves the fault network without and with the fault.
func (f *fault) carry(ctx context.Context, at, to wiring.NodeID) (*carried, error) {
	open, err := settled(ctx, settle.Compile(vary(f.cart.harness, f.reduce).harness), f.state, settle.Options{SOC: f.charge})
	if err != nil {
		return nil, err
	}
	p := newProbe(f.cart.harness, at, to, f.reduce)
	p.state, p.options.SOC = f.state, f.charge
	near, err := p.hold(ctx, 0, nil)
	if err != nil {
		return nil, err
	}
	short, err := p.exactly(ctx, 0, nil)
	if err != nil {
		return nil, err
	}
	k := &carried{at: short, amps: atNoVolts(near, short), open: float64(open.Across(at, to))}
	if math.Abs(k.amps) < negligible {
		k.amps = 0
	}
	return k, nil
}

// atNoVolts is the current at no voltage at all, along the line through two samples.
func atNoVolts(a, b sample) float64 {
	if a.volts == b.volts {
		return b.amps
	}
	return b.amps - b.volts*(b.amps-a.amps)/(b.volts-a.volts)
}

// reduce leaves of a harness what drives and guides a fault current, each contact as it
// stands at the point.
func (f *fault) reduce(drawn, own wiring.Element) bool {
	switch e := own.(type) {
	case *wiring.Source:
		in := f.point.Holding(e.When)
		e.Trips, e.When = 0, nil
		return in
	case *wiring.Fuse:
		e.Opens = never
		return e.Fitted
	case *wiring.Contact:
		e.Coil, e.RestClosed = nil, true
		return f.point.Holds(drawn)
	case *wiring.Driver:
		e.When = nil
		return f.point.Holds(drawn)
	case *wiring.Resistor, *wiring.Link, *wiring.Switch, *wiring.Diode:
		return true
	}
	return false
}

// never is the multiple of its rating at which a fuse opens that is to stay whole.
const never = 1e12

// sources lists what gives the current.
func (k *carried) sources(c *Cart) []Delivery {
	var all []Delivery
	for _, s := range each[*wiring.Source](c) {
		if amps := -k.at.through(s); amps > negligible {
			all = append(all, Delivery{s, quantity.Ampere(amps)})
		}
	}
	return all
}

// fuses lists those that carry all of the current, but for what rounding takes.
func (k *carried) fuses(c *Cart) []*wiring.Fuse {
	var all []*wiring.Fuse
	for _, e := range each[*wiring.Fuse](c) {
		if k.amps != 0 && math.Abs(k.at.through(e)) >= math.Abs(k.amps)*(1-1e-6) {
			all = append(all, e)
		}
	}
	return all
}

// limited lists the running converters and chargers whose positive reaches the one node
// through what is closed, and whose negative reaches the other.
func (f *fault) limited(at, to wiring.NodeID) (all []wiring.Element, most quantity.Ampere) {
	out := path.Through{Sorts: path.Conducting, Setting: path.InState(f.state, f.point.Holds)}
	back := out
	back.Against = true
	add := func(e wiring.Element, plus, minus wiring.NodeID, amps quantity.Ampere) {
		if f.point.Holds(e) && f.reaches(out, plus, at, to) && f.reaches(back, minus, to, at) {
			all = append(all, e)
			most += amps
		}
	}
	f.cart.elements(func(e wiring.Element) {
		switch e := e.(type) {
		case *wiring.Converter:
			add(e, e.OutA, e.OutB, e.Amps)
		case *wiring.Charger:
			add(e, e.A, e.B, e.Amps)
		}
	})
	return all, most
}

// reaches reports whether one node reaches another without passing a third.
func (f *fault) reaches(t path.Through, from, node, past wiring.NodeID) bool {
	g := f.cart.graph
	if g.SameCopper(from, past) {
		return false
	}
	t.Stop = func(n wiring.NodeID) bool { return g.SameCopper(n, past) }
	return g.From(t, from).Has(node)
}
