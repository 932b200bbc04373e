package settle

import "github.com/lugwright/lugwright/wiring"

// load is a consumer. While its condition does not hold it is open.
type load struct {
	unit
	band
	bend int32
	when *condition
}

func newLoad(e *wiring.Load, c *compiler) model {
	d := &load{unit: c.unit(e, c.branch(e.A, e.B))}
	switch e.Law {
	case wiring.ConstantPower:
		d.band = newBand(float64(e.Works.Low), float64(e.Watts), 0, e.Polarised)
	case wiring.ConstantCurrent:
		d.band = newBand(float64(e.Works.Low), 0, float64(e.Amps), e.Polarised)
	default:
		d.band = newBand(float64(e.Works.Low), 0, 0, e.Polarised)
		d.band.ohms = orElse(float64(e.Ohms), 0)
	}
	d.bend = c.bend(d, d.first, d.band)
	c.later(func() { d.when = c.condition(e.When) })
	return d
}

func (d *load) behave(s *solving) {
	in := d.when.true(s)
	s.bends(d.bend, in)
	if in {
		s.set(d.first, d.band.law(s.piece[d.bend]))
	} else {
		s.set(d.first, law{})
	}
}

// holds: the load is on: its condition holds, and it has the voltage to work.
func (d *load) holds(s *solving) bool { return d.when.true(s) && d.band.on(s.volts[d.first]) }
