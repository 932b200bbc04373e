package fault

import (
	"context"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Seen is what an owner, or somebody with a meter, can see of a cart in a state. It keeps no
// network and is small, so that one of every fault in every state can be held.
type Seen struct {
	State    *wiring.State
	Outcome  settle.Outcome
	Why      string           // what is wrong, where it does not settle
	Residual settle.Residual  // how exactly Kirchhoff's laws hold
	Traction bool             // the cart moves
	On       []bool           // by index of the harness's parts
	Mains    []bool           // by index of [Cart.Mains]: the coil is energised
	Volts    []quantity.Volt  // by index of [Cart.Spots], against the black probe; 0 where floating
	Opened   []wiring.Element // fuses that opened and sources that tripped
	Cycle    []wiring.Element // what alternates, where it chatters
	Charging quantity.Ampere  // what the chargers deliver
	Pack     quantity.Ampere  // what the battery gives; negative while it is charged
	Watts    quantity.Watt    // what the part that moves the cart takes
	Wires    []WireSeen       // by index of the harness's wires
	Harmed   []*wiring.Part   // parts with more across a consumer or an input than it survives
}

// WireSeen is a wire in a state: the first pole of a cord.
type WireSeen struct {
	Amps quantity.Ampere // without its sign
	Drop quantity.Volt   // from end to end, as drawn, whatever joins them
	Heat quantity.Watt   // what it and its joints turn into heat
}

// Mains lists the coils of the main contacts, in the order of parts.
func (c *Cart) Mains() []*wiring.Coil { return c.mains }

// Look settles states with faults and keeps what can be seen, in the order of the states. The
// error is that of a context that ends.
func (c *Cart) Look(ctx context.Context, states []*wiring.State, faults ...Fault) ([]Seen, error) {
	net := c.with(faults)
	all := make([]Seen, 0, len(states))
	for _, s := range states {
		p, err := net.Settle(ctx, held(s, faults), settle.Options{})
		if err != nil {
			return nil, err
		}
		all = append(all, c.see(s, p))
	}
	return all, nil
}

func (c *Cart) see(s *wiring.State, p *settle.Point) Seen {
	seen := Seen{
		State: s, Outcome: p.Outcome, Why: p.Why, Residual: p.Residual,
		Opened: p.Opened(), Cycle: p.Cycle,
		Traction: p.Traction() && p.Outcome == settle.Settled,
	}
	for _, part := range c.Harness.Parts {
		on := p.On(part)
		seen.On = append(seen.On, on)
		if on && part.Kind != nil && part.Kind.Traction {
			seen.Watts += p.Watts(settle.WhatTurnsOn(part))
		}
		for _, e := range part.Elements {
			switch e := e.(type) {
			case *wiring.Charger:
				seen.Charging += max(0, p.ElementAmps(e))
			case *wiring.Source:
				seen.Pack -= p.ElementAmps(e)
			}
		}
	}
	for _, w := range c.Harness.Wires {
		seen.Wires = append(seen.Wires, wireSeen(p, w))
	}
	seen.Harmed = harmed(c.Harness, p)
	for _, k := range c.mains {
		seen.Mains = append(seen.Mains, p.Holds(k))
	}
	for _, spot := range c.spots {
		seen.Volts = append(seen.Volts, p.Across(spot.Node, spot.Black))
	}
	return seen
}

func wireSeen(p *settle.Point, w *wiring.Wire) WireSeen {
	joins := w.Joins()
	if len(joins) == 0 {
		return WireSeen{}
	}
	return WireSeen{
		Amps: quantity.Ampere(math.Abs(float64(p.WireAmps(w, 0)))),
		Drop: p.Across(joins[0][0], joins[0][1]),
		Heat: p.WireWatts(w),
	}
}

// harmed lists the parts with more voltage across a consumer or an input than they survive.
func harmed(h *wiring.Harness, p *settle.Point) []*wiring.Part {
	var all []*wiring.Part
	for _, part := range h.Parts {
		for _, e := range part.Elements {
			if most := survives(e); most > 0 && quantity.Volt(math.Abs(float64(p.ElementVolts(e)))) > most {
				all = append(all, part)
				break
			}
		}
	}
	return all
}

// survives is the voltage that an element stands; 0: not stated.
func survives(e wiring.Element) quantity.Volt {
	switch e := e.(type) {
	case *wiring.Load:
		return e.Most
	case *wiring.Sense:
		return e.Most
	case *wiring.Converter:
		return e.Works.High
	}
	return 0
}
