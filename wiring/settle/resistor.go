package settle

import "github.com/lugwright/lugwright/wiring"

type resistor struct {
	unit
	ohms float64
}

func newResistor(e *wiring.Resistor, c *compiler) model {
	return &resistor{c.unit(e, c.branch(e.A, e.B)), orElse(float64(e.Ohms), unknownOhms)}
}

func (r *resistor) behave(s *solving)     { s.set(r.first, ohmic(r.ohms)) }
func (r *resistor) holds(s *solving) bool { return true }
