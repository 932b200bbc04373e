package settle

import "math"

// How exactly the equations are solved. The sum of currents at a node is compared with
// the largest current there, and with nothing less than a nanoampere.
const (
	exact        = 1e-12 // refine until here
	enough       = 1e-9  // accept, where refining gains nothing more
	leastCurrent = 1e-9  // ampere
	newtonMost   = 60    // steps
	refactor     = 1e-6  // above it, slopes are still moving: factor anew
	collapsed    = 0.1   // of its low end: a constant power here has no upper answer
)

// newton solves the network with each branch on its piece, beginning without any constant
// power and coming down from there, so that of two answers it finds the one with the
// higher voltage. It reports false if there is none.
//
// With J the slopes, it solves J dv = -r for the sums r of currents that leave the nodes.
// Each step is one of iterative refinement also: r is taken from differences of voltages
// that carry twice the digits of dv.
func (s *solving) newton() bool {
	clear(s.hi)
	clear(s.lo)
	curved := s.curved()
	loaded, last := !curved, math.Inf(1)
	for step := range newtonMost {
		s.flow(loaded)
		worst := s.balance()
		if loaded && (worst <= exact || worst <= enough && worst > last/4) {
			s.residual = worst
			return true
		}
		if step == 0 || curved && worst > refactor {
			s.assemble()
			if _, ok := s.factors.Factor(s.matrix); !ok {
				return false
			}
		}
		s.correct()
		if loaded && curved && s.collapsing() {
			s.flow(loaded)
			return false
		}
		loaded, last = true, worst
	}
	return false
}

// curved reports whether any branch has a constant power.
func (s *solving) curved() bool {
	for i, b := range s.network.bendings {
		if s.inUse[i] && s.laws[b.branch].curved() {
			return true
		}
	}
	return false
}

// flow sets the voltage, current and slope of every branch; constant powers only if
// loaded.
func (s *solving) flow(loaded bool) {
	for i, b := range s.network.branches {
		l := &s.laws[i]
		v := (s.hi[b.a] - s.hi[b.b]) + (s.lo[b.a] - s.lo[b.b])
		s.volts[i] = v
		s.slope[i] = l.siemens
		if l.emf != 0 {
			v = s.beyond(b, l.emf)
		}
		s.amps[i] = l.siemens*v + l.amps
	}
	if !loaded {
		return
	}
	for i, b := range s.network.bendings {
		if l := &s.laws[b.branch]; s.inUse[i] && l.curved() {
			v := s.volts[b.branch]
			watts := l.watts
			if l.feed != 0 {
				watts += l.feed * s.power(l.feeds)
			}
			s.amps[b.branch] += watts / v
			s.slope[b.branch] -= watts / (v * v)
		}
	}
}

// beyond is the voltage of a branch less an emf. Where the two are nearly equal, as in a
// supply that delivers next to nothing, it keeps its digits.
func (s *solving) beyond(b branch, emf float64) float64 {
	v, rest := addTwice(s.hi[b.a], -s.hi[b.b])
	return (v - emf) + (rest + (s.lo[b.a] - s.lo[b.b]))
}

// power is what an output branch delivers, in watts.
func (s *solving) power(output int32) float64 {
	return max(-s.volts[output]*s.amps[output], 0)
}

// balance sums the currents that leave each bus and returns the worst sum, relative to
// the largest current there.
func (s *solving) balance() float64 {
	clear(s.unbalanced)
	clear(s.largest)
	for i, b := range s.network.branches {
		amps := s.amps[i]
		if amps == 0 {
			continue
		}
		s.unbalanced[b.a] += amps
		s.unbalanced[b.b] -= amps
		size := math.Abs(amps)
		s.largest[b.a] = max(s.largest[b.a], size)
		s.largest[b.b] = max(s.largest[b.b], size)
	}
	worst := 0.0
	for bus, amps := range s.unbalanced {
		if s.fixed[bus] {
			continue
		}
		if share := math.Abs(amps) / max(s.largest[bus], leastCurrent); !(share <= worst) {
			worst = share
		}
	}
	return worst
}

// assemble fills the matrix with the slopes. A bus whose voltage is fixed has the
// equation dv = 0.
func (s *solving) assemble() {
	s.matrix.Zero()
	for bus, fixed := range s.fixed {
		if fixed {
			s.matrix.AddDiagonal(int32(bus), 1)
		}
	}
	for i := range s.network.branches {
		slope := s.slope[i]
		b := &s.network.branches[i]
		if slope == 0 || b.a == b.b {
			continue
		}
		if !s.fixed[b.a] {
			s.matrix.AddDiagonal(b.a, slope)
		}
		if !s.fixed[b.b] {
			s.matrix.AddDiagonal(b.b, slope)
		}
		if b.paired && !s.fixed[b.a] && !s.fixed[b.b] {
			s.matrix.AddPair(b.entry, -slope)
		}
	}
	for i := range s.network.couplings {
		s.couple(&s.network.couplings[i])
	}
}

// couple adds how the current into a converter changes with the voltages of its output:
// d(feed p / v)/du, where p = -u i(u).
func (s *solving) couple(k *coupling) {
	l := &s.laws[k.input]
	if l.feed == 0 || s.power(k.output) == 0 {
		return
	}
	slope := -(s.amps[k.output] + s.volts[k.output]*s.slope[k.output]) * l.feed / s.volts[k.input]
	for _, c := range k.cells {
		switch {
		case s.fixed[c.row] || s.fixed[c.column]:
		case c.row == c.column:
			s.matrix.AddDiagonal(c.row, c.sign*slope)
		case c.paired:
			s.matrix.Add(c.entry, c.row, c.column, c.sign*slope)
		}
	}
}

// correct makes one step.
func (s *solving) correct() {
	for bus := range s.unbalanced {
		if s.fixed[bus] {
			s.unbalanced[bus] = 0
		}
	}
	s.factors.Solve(s.unbalanced)
	for bus, dv := range s.unbalanced {
		s.hi[bus], s.lo[bus] = addTwice(s.hi[bus], s.lo[bus]-dv)
	}
}

// addTwice is a + b as a sum of two numbers, of which the second is what rounding took off
// the first (D. E. Knuth, The Art of Computer Programming, vol. 2, 4.2.2, theorem B).
func addTwice(a, b float64) (hi, lo float64) {
	hi = a + b
	part := hi - a
	return hi, (a - (hi - part)) + (b - part)
}

// collapsing reports whether a consumer of constant power has been pulled so far below
// its band that it has no answer inside it.
func (s *solving) collapsing() bool {
	_, share := s.weakest()
	return share < collapsed
}

// weakest is the consumer of constant power with the least share of its low end; -1 if
// there is none.
func (s *solving) weakest() (bend int32, share float64) {
	bend, share = -1, math.Inf(1)
	s.consumers(func(i int32, v float64) {
		if !(v >= share) {
			bend, share = i, v
		}
	})
	return bend, share
}

// consumers calls f with each consumer of constant power and its voltage as a share of the
// low end of its band. It looks at the voltages of buses, which are ahead of branches.
func (s *solving) consumers(f func(bend int32, share float64)) {
	for i, b := range s.network.bendings {
		consumer, ok := b.bend.(band)
		if !ok || !s.inUse[i] || !s.laws[b.branch].curved() {
			continue
		}
		ends := s.network.branches[b.branch]
		share := (s.hi[ends.a] - s.hi[ends.b]) / consumer.low
		if s.piece[i] == mirrored {
			share = -share
		}
		f(int32(i), share)
	}
}
