package settle

import "github.com/lugwright/lugwright/wiring"

const (
	chargerOhms = 0.01 // behind its end voltage
	chargerLow  = 0.5  // low end of its standby draw, relative to its end voltage
)

// charger gives its amperes until its end voltage is reached, then holds that.
type charger struct {
	unit
	out         regulator
	standby     band
	outBend     int32
	standbyBend int32
	needsAC     bool
	l, n        int32 // buses
	when        *condition
}

func newCharger(e *wiring.Charger, c *compiler) model {
	end := float64(e.End)
	g := &charger{
		unit:    c.unit(e, c.branch(e.A, e.B)),
		out:     regulator{end, chargerOhms, float64(e.Amps)},
		standby: newBand(end*chargerLow, 0, float64(e.Standby), false),
		needsAC: e.L != wiring.NoNode && e.N != wiring.NoNode,
	}
	if g.needsAC {
		g.l, g.n = c.bus(e.L), c.bus(e.N)
	}
	g.outBend = c.bend(g, g.first, g.out)
	g.standbyBend = c.bend(g, g.first, g.standby)
	c.later(func() { g.when = c.condition(e.When) })
	return g
}

func (g *charger) behave(s *solving) {
	running := s.memory[g.id]
	s.bends(g.outBend, running)
	s.bends(g.standbyBend, !running)
	if running {
		s.set(g.first, g.out.law(s.piece[g.outBend]))
	} else {
		s.set(g.first, g.standby.law(s.piece[g.standbyBend]))
	}
}

// holds: the charger runs.
func (g *charger) holds(s *solving) bool     { return s.memory[g.id] }
func (g *charger) supplying(s *solving) bool { return s.memory[g.id] }
func (g *charger) output() int32             { return g.first }

func (g *charger) next(s *solving) bool {
	return g.out.volts > 0 && g.when.true(s) && (!g.needsAC || s.ac.present(g.l, g.n))
}

func (g *charger) margin(*solving) float64 { return 0 }
