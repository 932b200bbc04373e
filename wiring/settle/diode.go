package settle

import "github.com/lugwright/lugwright/wiring"

// A diode whose file says nothing else.
const (
	diodeDrop = 0.7  // V
	diodeOhms = 0.01 // ohm
)

// The pieces of a diode's characteristic.
const (
	blocking piece = iota
	conducting
)

// diode conducts from its first node to its second: v = drop + i ohms for i >= 0.
type diode struct {
	unit
	bend       int32
	drop, ohms float64
}

func newDiode(e *wiring.Diode, c *compiler) model {
	d := &diode{
		unit: c.unit(e, c.branch(e.A, e.B)),
		drop: orElse(float64(e.Drop), diodeDrop),
		ohms: orElse(float64(e.Ohms), diodeOhms),
	}
	d.bend = c.bend(d, d.first, valve{d.drop, d.ohms})
	return d
}

func (d *diode) behave(s *solving) {
	s.bends(d.bend, true)
	if s.piece[d.bend] == conducting {
		s.set(d.first, behind(d.drop, d.ohms))
	} else {
		s.set(d.first, law{})
	}
}

// holds: the diode conducts.
func (d *diode) holds(s *solving) bool { return s.piece[d.bend] == conducting }

// valve is the bend of a diode.
type valve struct{ drop, ohms float64 }

func (b valve) start(v float64, now piece) piece { return now }
func (b valve) stranded(now piece) piece         { return now }

func (b valve) outside(v, i float64, now piece) (excess float64, to piece) {
	if now == blocking {
		return (v - b.drop) / b.drop, conducting
	}
	return -i * b.ohms / b.drop, blocking
}
