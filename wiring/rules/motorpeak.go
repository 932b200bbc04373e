package rules

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// motorPeak is the largest current that a motor takes for a time, and who says so.
type motorPeak struct {
	motor      *wiring.Part
	controller *wiring.Part // nil: none limits it
	amps       quantity.Ampere
	lasts      quantity.Second
	phases     int // current comes in by so many leads; 1: direct current
}

// motorPeaks lists the motors that move the cart and state a peak. Where a controller that
// feeds the motor states less, in amperes or in time, that counts.
func motorPeaks(p *rule.Pass) []motorPeak {
	var all []motorPeak
	for _, part := range p.Harness.Parts {
		if !part.Kind.Traction {
			continue
		}
		m := ownPeak(part)
		for _, by := range p.Harness.Parts {
			if p.Controller(by) && feedsMotor(p, by, part) {
				m.limit(by)
			}
		}
		if m.amps > 0 {
			all = append(all, m)
		}
	}
	return all
}

// ownPeak adds up the loads of a motor that state a peak: those of a three-phase motor all
// flow in by one lead at the instant that is solved.
func ownPeak(part *wiring.Part) motorPeak {
	m := motorPeak{motor: part}
	for _, el := range part.Elements {
		if l, ok := el.(*wiring.Load); ok && l.Peak.Amps > 0 {
			m.amps += l.Peak.Amps
			m.lasts = max(m.lasts, l.Peak.For)
			m.phases++
		}
	}
	return m
}

func (m *motorPeak) limit(by *wiring.Part) {
	for _, el := range by.Elements {
		d, ok := el.(*wiring.Driver)
		if !ok || d.Peak.Amps <= 0 {
			continue
		}
		m.controller = by
		if m.amps <= 0 || d.Peak.Amps < m.amps {
			m.amps = d.Peak.Amps
		}
		if m.lasts <= 0 || d.Peak.For > 0 && d.Peak.For < m.lasts {
			m.lasts = d.Peak.For
		}
	}
}

// feedsMotor reports whether wires lead from a controller to a motor.
func feedsMotor(p *rule.Pass, controller, motor *wiring.Part) bool {
	var ends []wiring.NodeID
	for _, el := range controller.Elements {
		if d, ok := el.(*wiring.Driver); ok {
			ends = append(ends, d.A, d.B)
		}
	}
	_, found := p.Graph.From(path.Through{Sorts: path.Conductors | path.Switch}, ends...).First(func(n wiring.NodeID) bool {
		return p.Harness.Nodes[n].Part == motor
	})
	return found
}

// taken is the current that a motor takes at a point, of all its loads that state a peak.
func (m *motorPeak) taken(at *settle.Point) quantity.Ampere {
	sum := 0.0
	for _, el := range m.motor.Elements {
		if l, ok := el.(*wiring.Load); ok && l.Peak.Amps > 0 {
			sum += math.Abs(float64(at.ElementAmps(l)))
		}
	}
	return quantity.Ampere(sum)
}

// through is what a cable of the motor carries at the motor's peak, if it carries some
// amperes while the motor takes others. The rms current of each lead of a three-phase motor
// is that of the one lead by which all of it flows in at the instant that is solved, over
// the root of 2.
func (m *motorPeak) through(amps, taken quantity.Ampere, lead bool) quantity.Ampere {
	share := m.amps
	if m.phases > 1 && lead {
		share = quantity.Ampere(float64(m.amps) / math.Sqrt2)
	}
	return share + max(0, quantity.Ampere(math.Abs(float64(amps)))-taken)
}

// motorCircuit is a motor that runs at a point, and the wires by which its current comes
// from the battery and goes back.
type motorCircuit struct {
	motorPeak
	wires map[*wiring.Wire]bool
}

// motorCircuits finds the cables of each motor that runs at a point.
func motorCircuits(p *rule.Pass, motors []motorPeak, s *wiring.State, at *settle.Point) []motorCircuit {
	var all []motorCircuit
	for _, m := range motors {
		if m.taken(at) <= 0 {
			continue
		}
		c := motorCircuit{m, map[*wiring.Wire]bool{}}
		feeds := feedsAt(p, s, at)
		for _, el := range m.motor.Elements {
			if l, ok := el.(*wiring.Load); ok && l.Peak.Amps > 0 {
				feeds.cables(l, c.wires)
			}
		}
		all = append(all, c)
	}
	return all
}

// cables adds the wires between a load and the supply that feeds it.
func (f *closedFeeds) cables(l *wiring.Load, wires map[*wiring.Wire]bool) {
	for i := range f.supplies {
		feed, ok := f.plus[i].To(l.A)
		back, returns := f.minus[i].To(l.B)
		if !ok || !returns {
			continue
		}
		for _, w := range append(feed.Wires(), back.Wires()...) {
			wires[w] = true
		}
		return
	}
}
