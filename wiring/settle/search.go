package settle

// absent is the piece of a consumer that is left out: open.
const absent piece = 255

// crowd is how many bends may be outside of their pieces before they are moved by the
// dozen. No cart has as many.
const crowd = 64

// solve solves the network with the memory as it is: it finds on which piece each bend
// stands. It reports false if there is no answer.
//
// The search begins where the last solve ended, then from the start; if it comes back to
// where it was, the supply that went to and fro is overloaded, and the loads that it feeds
// are resistors for this solve; at last all loads are.
func (s *solving) solve() bool {
	s.overload = s.overload[:0]
	clear(s.held)
	s.behaveAll()
	s.ac.find(s)
	if ok, _ := s.search(); ok {
		return true
	}
	clear(s.piece)
	ok, moved := s.search()
	if ok {
		return true
	}
	s.blame(moved)
	for _, id := range s.overload {
		s.hold(s.fed(s.network.models[id].(delivering)))
	}
	if len(s.overload) > 0 {
		clear(s.piece)
		if ok, _ := s.search(); ok {
			return true
		}
	}
	s.holdAll()
	clear(s.piece)
	ok, _ = s.search()
	return ok
}

// search moves bends from piece to piece until each lies inside of its own. If it comes
// back to where it was, it returns the bends that it moved since.
func (s *solving) search() (ok bool, moved []int32) {
	s.begin()
	seen := map[string]int{}
	for step := 0; step < 32+8*len(s.piece); step++ {
		s.unstrand()
		key := string(bytesOf(s.piece))
		if first, ok := seen[key]; ok {
			return false, moved[first:]
		}
		seen[key] = len(moved)
		if !s.newton() {
			weak := s.weak()
			if len(weak) == 0 {
				return false, moved
			}
			for _, bend := range weak {
				s.move(bend, lower)
			}
			moved = append(moved, weak...)
			continue
		}
		out := s.outside()
		if len(out) == 0 {
			return true, nil
		}
		for _, o := range out {
			s.move(o.bend, o.to)
			moved = append(moved, o.bend)
		}
	}
	return false, moved
}

func bytesOf(p []piece) []byte {
	b := make([]byte, len(p))
	for i, v := range p {
		b[i] = byte(v)
	}
	return b
}

// begin solves the network without consumers, and puts each consumer on the piece that
// its voltage then asks for: the upper one, but for what is dead or reversed.
func (s *solving) begin() {
	n := s.network
	for i, b := range n.bendings {
		if isConsumer(b.bend) {
			s.piece[i] = absent
		} else {
			s.piece[i] = b.start(0, s.piece[i])
		}
	}
	s.behaveAll()
	s.group()
	if !s.newton() {
		clear(s.volts)
	}
	for i, b := range n.bendings {
		if s.piece[i] != absent {
			continue
		}
		switch {
		case s.held[i] || !s.closed(n.branches[b.branch]):
			s.piece[i] = b.stranded(upper)
		default:
			s.piece[i] = b.start(s.volts[b.branch], upper)
		}
		s.delivered[i] = 0
	}
	s.behaveAll()
}

// weak returns the consumer that a network without an answer has pulled down farthest; in
// a crowd, all that have collapsed.
func (s *solving) weak() []int32 {
	bend, _ := s.weakest()
	if bend < 0 {
		return nil
	}
	var all []int32
	s.consumers(func(bend int32, share float64) {
		if share < collapsed {
			all = append(all, bend)
		}
	})
	if len(all) <= crowd {
		return []int32{bend}
	}
	return all
}

// outsider is a bend outside of its piece.
type outsider struct {
	bend   int32
	to     piece
	excess float64
}

// outside returns the bend that lies farthest outside of its piece, relatively, if any
// does. Of very many it returns those that lie at least half as far outside.
func (s *solving) outside() []outsider {
	var all []outsider
	worst := 0
	for i, b := range s.network.bendings {
		if !s.inUse[i] {
			continue
		}
		excess, to := b.outside(s.volts[b.branch], s.amps[b.branch], s.piece[i])
		if excess <= outsideTolerance || s.held[i] && to != reversed && to != lower {
			continue
		}
		all = append(all, outsider{int32(i), to, excess})
		if excess > all[worst].excess*(1+outsideTolerance) {
			worst = len(all) - 1
		}
	}
	if len(all) == 0 {
		return nil
	}
	if len(all) <= crowd {
		return all[worst : worst+1]
	}
	half := all[worst].excess / 2
	far := all[:0]
	for _, o := range all {
		if o.excess >= half {
			far = append(far, o)
		}
	}
	return far
}
