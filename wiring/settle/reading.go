package settle

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// meterOhms is the resistance of the meter that readings are taken with, 10 Mohm, as of
// nearly every digital multimeter.
const meterOhms = 10e6

// Reading is what a 10 Mohm meter shows between the node and [Point.Against] of it, after
// capacitors ran down; 0 at a node that floats without a supply. Such a meter lowers what
// it reads wherever the node is held by little: a sense input, an open pin with a pull-up.
func (p *Point) Reading(n wiring.NodeID) quantity.Volt {
	black := p.Against(n)
	if black == wiring.NoNode {
		return 0
	}
	volts := p.Across(n, black)
	inside, ok := p.Thevenin(n, black)
	if !ok {
		return volts
	}
	return volts * quantity.Volt(meterOhms/(meterOhms+float64(inside)))
}

// Thevenin is the resistance of the network between two nodes, for a change so small that
// nothing switches. ok is false between nodes that nothing joins.
func (p *Point) Thevenin(a, b wiring.NodeID) (ohms quantity.Ohm, ok bool) {
	if !p.Joined(a, b) {
		return 0, false
	}
	s := p.net.room.Get().(*solving)
	defer p.net.room.Put(s)
	if !s.restore(p) {
		return 0, false
	}
	from, to := p.bus(a), p.bus(b)
	clear(s.unbalanced)
	s.unbalanced[from]++
	s.unbalanced[to]--
	for bus, fixed := range s.fixed {
		if fixed {
			s.unbalanced[bus] = 0
		}
	}
	s.factors.Solve(s.unbalanced)
	r := s.unbalanced[from] - s.unbalanced[to]
	return quantity.Ohm(r), r >= 0
}

// restore puts a point's network back into a room and factors its slopes. It reports false
// if the point has no network that was solved.
func (s *solving) restore(p *Point) bool {
	if p.Outcome == NoSolution {
		return false
	}
	s.prepare(p.State, Options{SOC: p.charge, OpenCircuit: p.override})
	copy(s.positions, p.positions) // the state may have been set anew since
	copy(s.memory, p.memory)
	copy(s.piece, p.piece)
	copy(s.delivered, p.delivered)
	for _, id := range p.opened {
		s.opened[id] = true
	}
	s.behaveAll()
	copy(s.hi, p.hi)
	copy(s.lo, p.lo)
	s.group()
	s.flow(true)
	s.assemble()
	_, ok := s.factors.Factor(s.matrix)
	return ok
}
