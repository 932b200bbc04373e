package settle

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// sourceOhms is inside a source whose file states no resistance: 10 mohm, as the fault
// current of a pack of unknown resistance is reckoned in the trade; no published source.
const sourceOhms = 0.01

type source struct {
	unit
	e    *wiring.Source
	when *condition
	ohms float64
}

func newSource(e *wiring.Source, c *compiler) model {
	g := &source{unit: c.unit(e, c.branch(e.A, e.B)), e: e, ohms: orElse(float64(e.Ohms), sourceOhms)}
	c.later(func() { g.when = c.condition(e.When) })
	return g
}

func (g *source) behave(s *solving) {
	if g.holds(s) {
		s.set(g.first, behind(s.openCircuit(g.e), g.ohms))
	} else {
		s.set(g.first, law{})
	}
}

// holds: the source is in circuit, not switched off and not tripped.
func (g *source) holds(s *solving) bool { return g.when.true(s) && !s.opened[g.id] }

func (g *source) strain(s *solving) float64 { return strain(s.amps[g.first], float64(g.e.Trips)) }

func (g *source) supplying(s *solving) bool { return g.holds(s) }
func (g *source) output() int32             { return g.first }

// OpenCircuit is the voltage of a source that carries nothing, at a state of charge: what
// it states, or the handbook's curve for its chemistry times its cells. A chemistry that
// the handbook does not know has 0 V.
func OpenCircuit(e *wiring.Source, charge quantity.Ratio) quantity.Volt {
	if e.Volts != 0 {
		return e.Volts
	}
	pack, err := handbook.Default().Pack(e.Chemistry, e.Cells)
	if err != nil {
		return 0
	}
	return pack.RestVolts(charge)
}
