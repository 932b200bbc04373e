package figure

import (
	"context"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Heat is what the charging of a capacitor does to one resistor on its way.
type Heat struct {
	Resistor *wiring.Resistor
	First    quantity.Watt // with the capacitor empty
	Standing quantity.Watt // for ever after, by what the capacitor's side draws
	Energy   Joule         // from empty to 95 %: ½ C V² less 0.25 % of it, and what is drawn meanwhile
	Fault    quantity.Watt // for ever, if the capacitor is shorted, at end-of-charge voltage; 0: no answer
	Rated    quantity.Watt // what it may dissipate; 0: not stated
}

// An element is on the way of the charging current if it carries this much of the first
// current, and its current changes this much with that of the capacitor; a coil beside the
// way does the one and not the other, a bleed the other and not the one. Our own choice.
const (
	carrying = 0.5
	changing = 0.05
)

// way lists the elements that the charging current passes, in the order of parts.
func (c *Cart) way(slow []Stage) []wiring.Element {
	a, b := slow[0].begin, slow[0].end
	var all []wiring.Element
	c.elements(func(e wiring.Element) {
		first, share := a.through(e)/a.amps, (b.through(e)-a.through(e))/(b.amps-a.amps)
		if math.Abs(first) >= carrying && math.Abs(share) >= changing {
			all = append(all, e)
		}
	})
	return all
}

// heats says what the charging does to the resistors on its way.
func (c *Cart) heats(ctx context.Context, p Precharge, slow []Stage) ([]Heat, error) {
	w, err := c.walk(ctx, course{capacitor: p.Capacitor, state: p.State, full: true})
	if err != nil {
		return nil, err
	}
	shorted, err := w.hold(ctx, 0, nil)
	if err != nil {
		return nil, err
	}
	var all []Heat
	for _, e := range p.Through {
		r, ok := e.(*wiring.Resistor)
		if !ok {
			continue
		}
		last := slow[len(slow)-1]
		h := Heat{
			Resistor: r,
			First:    watts(r, slow[0].resistorAmps(r, slow[0].From)),
			Standing: watts(r, last.resistorAmps(r, last.To)),
			Energy:   energy(r, slow, 0.95*p.Reaches),
			Rated:    r.Heat,
		}
		if shorted.settled() {
			h.Fault = watts(r, shorted.through(r))
		}
		all = append(all, h)
	}
	return all, nil
}

// watts is what a current makes of a resistor: R I².
func watts(r *wiring.Resistor, amps float64) quantity.Watt {
	return quantity.Watt(float64(r.Ohms) * amps * amps)
}

// resistorAmps is the current of a resistor at a voltage of the capacitor, of which it is a
// straight line within a stage.
func (s Stage) resistorAmps(r *wiring.Resistor, v quantity.Volt) float64 {
	a, b := s.begin.through(r), s.end.through(r)
	if s.begin.volts == s.end.volts {
		return a
	}
	return a + (b-a)*(float64(v)-s.begin.volts)/(s.end.volts-s.begin.volts)
}

// energy is the heat of a resistor along stages, up to the first time at a voltage.
func energy(r *wiring.Resistor, stages []Stage, upTo quantity.Volt) Joule {
	sum := 0.0
	for _, s := range stages {
		if s.reaches(upTo) {
			return Joule(sum + s.energy(r, upTo))
		}
		sum += s.energy(r, s.To)
	}
	return Joule(sum)
}

// energy is the heat of a resistor from the beginning of a stage to a voltage, ∫ R i² dt
// with i(t) = end + (begin - end) exp(-t / Tau), in joules:
//
//	R (end² t + 2 end d Tau (1 - e) + d² Tau (1 - e²) / 2),  d = begin - end, e = exp(-t / Tau)
func (s Stage) energy(r *wiring.Resistor, v quantity.Volt) float64 {
	t, tau := float64(s.until(v)), float64(s.Tau())
	begin := s.resistorAmps(r, s.From)
	if !(math.Abs(t/tau) > 1e-6) { // the current is so nearly straight in time that Simpson's rule is exact
		middle, to := s.resistorAmps(r, (s.From+v)/2), s.resistorAmps(r, v)
		return float64(r.Ohms) * (begin*begin + 4*middle*middle + to*to) / 6 * t
	}
	end := s.resistorAmps(r, s.Final())
	d, e := begin-end, -math.Expm1(-t/tau)
	return float64(r.Ohms) * (end*end*t + 2*end*d*tau*e + d*d*tau/2*e*(2-e))
}
