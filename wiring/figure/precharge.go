package figure

import (
	"context"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Precharge is how an empty capacitor, as of a controller's input, is charged in a state.
//
// The figures without a qualifier are those of the way through the pre-charge resistor
// alone, as if no contact closed in its course; Closes says what does. By the R C charging
// law: Tau = Ohms × farads, time to 95 % = ln 20 × Tau (3 Tau in the trade) from empty.
type Precharge struct {
	Transient                 // as it really goes
	Alone     Transient       // by the way through the resistor alone; the same if nothing closes
	Ohms      quantity.Ohm    // through which it is charged, at the end of the way
	Tau       quantity.Second // time constant there
	First     quantity.Ampere // into the empty capacitor
	Reaches   quantity.Volt   // final voltage by this way alone; where it hiccups, the highest
	Share     quantity.Ratio  // Reaches against the pack's own voltage
	To95      quantity.Second // from empty to 95 % of Reaches
	Through   []wiring.Element
	Heats     []Heat   // of the resistors on the way, in the order of parts
	Closes    *Closing // nil: no contact closes
	None      bool     // nothing limits the first current: there is no pre-charge in this state
}

// Closing is the moment at which a contact takes the rest of the charge upon itself.
type Closing struct {
	Contact wiring.Element
	At      quantity.Volt
	Share   quantity.Ratio // At against the final voltage with the contact closed
	After   quantity.Second
	Step    quantity.Ampere // first current through the contact: what is missing over the loop
}

// Precharge computes how a capacitor of the cart charges from empty when a state is set
// from cold, at a state of charge (0: the state's own). The errors are those of ctx, and
// [Unknown] for a capacitor that states no capacitance or a state that is none.
func (c *Cart) Precharge(ctx context.Context, e *wiring.Capacitor, s *wiring.State, charge quantity.Ratio) (Precharge, error) {
	k := course{capacitor: e, state: s, charge: charge}
	t, err := c.follow(ctx, k)
	if err != nil {
		return Precharge{}, err
	}
	p := Precharge{Transient: t, Alone: t}
	slow := t.slow()
	if len(slow) == 0 {
		p.None = len(t.Stages) > 0
		return p, nil
	}
	p.Closes = t.closing(len(slow))
	if p.Closes != nil && p.Closes.Contact != nil {
		k.without = []wiring.Element{p.Closes.Contact}
		alone, err := c.follow(ctx, k)
		if err != nil {
			return Precharge{}, err
		}
		if way := alone.slow(); len(way) > 0 {
			p.Alone, slow = alone, way
		}
	}
	p.fill(slow)
	if pack := c.packVolts(slow[0].begin); pack > 0 {
		p.Share = quantity.Ratio(p.Reaches / pack)
	}
	p.Through = c.way(slow)
	p.Heats, err = c.heats(ctx, p, slow)
	return p, err
}

// slow is the stages before the capacitor is joined hard.
func (t Transient) slow() []Stage {
	for i, s := range t.Stages {
		if s.Quick {
			return t.Stages[:i]
		}
	}
	return t.Stages
}

// fill takes the figures of the way through the resistor.
func (p *Precharge) fill(slow []Stage) {
	p.First = slow[0].First
	for _, s := range slow {
		if math.Abs(float64(s.To)) >= math.Abs(float64(p.Reaches)) { // still charging
			p.Reaches, p.Ohms, p.Tau = s.To, s.Ohms(), s.Tau()
		}
	}
	p.To95, _ = p.Alone.Until(0.95 * p.Reaches)
}

// closing is the moment at which the stages after the first n begin; nil if there are none.
func (t Transient) closing(n int) *Closing {
	if n >= len(t.Stages) {
		return nil
	}
	hard := t.Stages[n]
	k := &Closing{At: hard.From, Share: quantity.Ratio(hard.From / hard.To), Step: hard.First}
	for _, s := range t.Stages[:n] {
		k.After += s.Lasts
	}
	for _, e := range t.Stages[n-1].Acts {
		switch e.(type) {
		case *wiring.Contact:
			k.Contact = e
			return k
		case *wiring.Driver:
			if k.Contact == nil {
				k.Contact = e
			}
		}
	}
	return k
}

// packVolts is the voltage at the pack's posts in a sample; 0 if there is none.
func (c *Cart) packVolts(s sample) quantity.Volt {
	if plus, ok := c.harness.Point("pack+"); ok && plus.Terminal != nil {
		return s.point.Volts(plus.Terminal.Node)
	}
	if pack := c.pack(); pack != nil {
		return s.point.ElementVolts(s.in.own[pack])
	}
	return 0
}
