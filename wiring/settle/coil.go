package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
)

// coilRelease is the drop-out of a coil whose file states none, relative to its pull-in;
// from memory.
const coilRelease = 0.25

// coil is a resistance that is energised from pull-in until its voltage is below drop-out.
// With an economiser it is a consumer of constant power while energised.
type coil struct {
	unit
	ohms            float64
	pullIn, dropOut float64
	polarised       bool
	held            *band // economiser; nil: none
	bend            int32
}

func newCoil(e *wiring.Coil, c *compiler) model {
	k := &coil{
		unit:      c.unit(e, c.branch(e.A, e.B)),
		ohms:      float64(e.Ohms),
		pullIn:    float64(e.PullIn),
		dropOut:   float64(e.DropOut),
		polarised: e.Polarised,
		bend:      -1,
	}
	k.dropOut = orElse(k.dropOut, k.pullIn*coilRelease)
	if e.Hold > 0 {
		held := newBand(k.dropOut, float64(e.Hold), 0, false)
		k.held = &held
		k.bend = c.bend(k, k.first, held)
	}
	return k
}

func (k *coil) behave(s *solving) {
	holding := k.held != nil && s.memory[k.id]
	if k.held != nil {
		s.bends(k.bend, holding)
	}
	switch {
	case holding:
		s.set(k.first, k.held.law(s.piece[k.bend]))
	case k.ohms > 0:
		s.set(k.first, ohmic(k.ohms))
	}
}

// holds: the coil is energised.
func (k *coil) holds(s *solving) bool { return s.memory[k.id] }

func (k *coil) sees(s *solving) float64 {
	if v := s.volts[k.first]; k.polarised {
		return v
	} else {
		return math.Abs(v)
	}
}

func (k *coil) next(s *solving) bool {
	if s.memory[k.id] {
		return k.sees(s) >= k.dropOut
	}
	return k.pullIn > 0 && k.sees(s) >= k.pullIn
}

func (k *coil) margin(s *solving) float64 {
	if s.memory[k.id] {
		return distance(k.sees(s), k.dropOut)
	}
	return distance(k.sees(s), k.pullIn)
}
