package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
)

// A sense whose file says nothing else: its resistance, and where it becomes false again,
// relative to its threshold.
const (
	senseOhms     = 1e6
	backFromAbove = 0.9
	backFromBelow = 1.1
)

// sense is true once it sees `above` volts, until it sees less than `back`; or the other
// way round.
type sense struct {
	unit
	ohms               float64
	above, below, back float64
	eitherWay          bool
}

func newSense(e *wiring.Sense, c *compiler) model {
	if e.AC {
		return &presence{unit: c.unit(e), at: c.bus(e.At), to: c.bus(e.To)}
	}
	n := &sense{
		unit:      c.unit(e, c.branch(e.At, e.To)),
		ohms:      orElse(float64(e.Ohms), senseOhms),
		above:     float64(e.Above),
		below:     float64(e.Below),
		back:      float64(e.Back),
		eitherWay: e.EitherWay,
	}
	if n.back == 0 {
		n.back = n.above*backFromAbove + n.below*backFromBelow
	}
	return n
}

func (n *sense) behave(s *solving)     { s.set(n.first, ohmic(n.ohms)) }
func (n *sense) holds(s *solving) bool { return s.memory[n.id] }

func (n *sense) sees(s *solving) float64 {
	v := s.volts[n.first]
	if n.eitherWay {
		return math.Abs(v)
	}
	return v
}

func (n *sense) next(s *solving) bool {
	v, was := n.sees(s), s.memory[n.id]
	switch {
	case n.above != 0 && was:
		return v >= n.back
	case n.above != 0:
		return v >= n.above
	case n.below != 0 && was:
		return v <= n.back
	case n.below != 0:
		return v <= n.below
	}
	return false
}

func (n *sense) margin(s *solving) float64 {
	threshold := n.above + n.below
	if s.memory[n.id] {
		threshold = n.back
	}
	return distance(n.sees(s), threshold)
}

// presence is a sense that watches for alternating current between two nodes. It is no
// branch.
type presence struct {
	unit
	at, to int32 // buses
}

func (n *presence) behave(*solving)         {}
func (n *presence) holds(s *solving) bool   { return s.memory[n.id] }
func (n *presence) next(s *solving) bool    { return s.ac.present(n.at, n.to) }
func (n *presence) margin(*solving) float64 { return 0 }

// distance is how far a value is from a threshold, relative to the threshold.
func distance(v, threshold float64) float64 {
	if threshold == 0 {
		return math.Abs(v)
	}
	return math.Abs(v-threshold) / math.Abs(threshold)
}
