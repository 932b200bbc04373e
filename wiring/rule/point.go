package rule

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Charge is how full the batteries are while a state is looked at.
type Charge uint8

// The charges at which every electrical rule looks at every state.
const (
	Floor  Charge = iota + 1 // as empty as the pack lets them be
	Middle                   // half full
	Full                     // full, rested
)

// Charges lists all of them.
var charges = [...]Charge{Floor, Middle, Full}

// String is the charge as findings say it: "at the floor", "half full", "full".
func (c Charge) String() string {
	switch c {
	case Floor:
		return "at the floor"
	case Full:
		return "full"
	}
	return "half full"
}

// soc is the state of charge. The floor is not quite 0, which settle takes for "as the
// state says".
func (c Charge) soc() quantity.Ratio {
	switch c {
	case Floor:
		return 1e-9
	case Full:
		return 1
	}
	return middleCharge
}

type pointKey struct {
	state  *wiring.State
	charge Charge
}

// Point settles a state, which need not be one of the harness's own, from cold. It returns
// nil where there is no operating point to judge, after saying in the name of the rule
// that the state could not be checked; or when the context has ended.
func (p *Pass) Point(s *wiring.State, c Charge) *settle.Point {
	point := p.desk.point(s, c)
	if point == nil || point.Outcome == settle.Settled {
		return point
	}
	p.NotChecked("the state "+s.Name+", "+c.String(), fmt.Sprintf("it does not settle: %s", point.Why), s.At)
	return nil
}

func (d *desk) point(s *wiring.State, c Charge) *settle.Point {
	key := pointKey{s, c}
	if point, ok := d.points[key]; ok {
		return point
	}
	point, err := d.compiled().Settle(d.ctx, s, settle.Options{SOC: c.soc()})
	if err != nil {
		return nil
	}
	d.points[key] = point
	return point
}

// compiled is the network of the harness.
func (d *desk) compiled() *settle.Network {
	if d.network == nil {
		d.network = settle.Compile(d.harness)
	}
	return d.network
}

// Settled settles a state like [Pass.Point], and returns the point however that ended; nil
// only when the context has. It says nothing of its own.
func (p *Pass) Settled(s *wiring.State, c Charge) *settle.Point { return p.desk.point(s, c) }

// After settles a state that comes after another: contacts that hold themselves stay as
// they were. It returns nil where either has no operating point.
func (p *Pass) After(before, s *wiring.State, c Charge) *settle.Point {
	from := p.desk.point(before, c)
	if from == nil || from.Outcome != settle.Settled {
		return nil
	}
	point, err := p.desk.compiled().Settle(p.desk.ctx, s, settle.Options{SOC: c.soc(), After: from})
	if err != nil || point.Outcome != settle.Settled {
		return nil
	}
	return point
}

// Charges lists the charges at which every electrical rule looks at every state.
func Charges() []Charge { return charges[:] }

// Sweep calls f with every state of the harness at the floor, half full and full, where it
// settles.
func (p *Pass) Sweep(f func(s *wiring.State, c Charge, at *settle.Point)) {
	for _, s := range p.Harness.States {
		for _, c := range charges {
			if point := p.Point(s, c); point != nil {
				f(s, c, point)
			}
		}
	}
}

// SweepSteady calls f like [Pass.Sweep], with every button released: what a finger holds
// down flows for a second or two and warms nothing.
func (p *Pass) SweepSteady(f func(s *wiring.State, c Charge, at *settle.Point)) {
	d := p.desk
	if d.steady == nil {
		for _, s := range d.harness.States {
			d.steady = append(d.steady, released(s))
		}
	}
	for _, s := range d.steady {
		for _, c := range charges {
			if point := p.Point(s, c); point != nil {
				f(s, c, point)
			}
		}
	}
}

// released is a state with every button let go; the state itself if none is held.
func released(s *wiring.State) *wiring.State {
	let := *s
	let.Set = map[*wiring.Control]string{}
	for c, position := range s.Set {
		if c.Name != "button" {
			let.Set[c] = position
		}
	}
	if len(let.Set) == len(s.Set) {
		return s
	}
	return &let
}
