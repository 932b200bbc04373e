package settle

import "github.com/lugwright/lugwright/wiring"

// driverOhms is a closed driver whose file says nothing else.
const driverOhms = 0.02

type driver struct {
	unit
	when *condition
	ohms float64
}

func newDriver(e *wiring.Driver, c *compiler) model {
	d := &driver{unit: c.unit(e, c.branch(e.A, e.B)), ohms: orElse(float64(e.Ohms), driverOhms)}
	c.later(func() { d.when = c.condition(e.When) })
	return d
}

func (d *driver) behave(s *solving) {
	if s.memory[d.id] {
		s.set(d.first, ohmic(d.ohms))
	} else {
		s.set(d.first, law{})
	}
}

func (d *driver) holds(s *solving) bool     { return s.memory[d.id] }
func (d *driver) next(s *solving) bool      { return d.when.true(s) }
func (d *driver) margin(s *solving) float64 { return 0 }
