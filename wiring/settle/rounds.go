package settle

import (
	"context"
	"slices"
)

// mostRounds bounds how often the network is solved for one state.
const mostRounds = 400

// ending says how a walk through memories ended.
type ending uint8

const (
	steady   ending = iota + 1 // the memory follows from itself
	opened                     // something opened for good: begin anew
	cyclic                     // a memory came back
	unsolved                   // a network without an answer
	endless                    // out of rounds
)

// moment is one memory of a walk, and what was seen while it lasted.
type moment struct {
	memory []bool
	worst  int32 // the most strained breakable model; -1: none
	strain float64
	sees   []float64 // by model: what watching models see
}

// acting chooses which of the models that would change do so now.
type acting func(s *solving, pending []int32) []int32

// together lets all act at once.
func together(_ *solving, pending []int32) []int32 { return pending }

// nearest lets one act: the one nearest to its threshold, of equals the first.
func nearest(s *solving, pending []int32) []int32 { return s.one(pending, 1) }

// farthest lets one act: the one farthest from its threshold, of equals the last.
func farthest(s *solving, pending []int32) []int32 {
	pending = slices.Clone(pending)
	slices.Reverse(pending)
	return s.one(pending, -1)
}

func (s *solving) one(pending []int32, sign float64) []int32 {
	margin := func(id int32) float64 { return sign * s.network.models[id].(remembering).margin(s) }
	best := pending[0]
	for _, id := range pending[1:] {
		if margin(id) < margin(best) {
			best = id
		}
	}
	return []int32{best}
}

// walk solves, lets models act, and so on until nothing changes or a memory comes back; it
// then returns the cycle. If something must open for good, it opens it.
func (s *solving) walk(ctx context.Context, who acting) (ending, []moment, error) {
	var path []moment
	seen := map[string]int{}
	for {
		if err := ctx.Err(); err != nil {
			return 0, nil, err
		}
		key := keyOf(s.memory)
		if first, ok := seen[key]; ok {
			return s.afterCycle(path[first:])
		}
		if s.rounds >= mostRounds {
			return endless, path, nil
		}
		s.rounds++
		if !s.solve() {
			return unsolved, path, nil
		}
		seen[key] = len(path)
		path = append(path, s.moment())
		pending := s.pending()
		if len(pending) == 0 {
			return s.afterSteady(path[len(path)-1])
		}
		for _, id := range who(s, pending) {
			s.memory[id] = !s.memory[id]
		}
	}
}

func (s *solving) afterSteady(m moment) (ending, []moment, error) {
	if m.strain > 1 {
		s.open(m.worst)
		return opened, nil, nil
	}
	return steady, nil, nil
}

// afterCycle opens what is overloaded in the course of a cycle, if anything is.
func (s *solving) afterCycle(cycle []moment) (ending, []moment, error) {
	worst := slices.MaxFunc(cycle, func(a, b moment) int {
		return boolToInt(a.strain > b.strain) - boolToInt(a.strain < b.strain)
	})
	if worst.strain > 1 {
		s.open(worst.worst)
		return opened, nil, nil
	}
	return cyclic, cycle, nil
}

func boolToInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (s *solving) open(id int32) {
	s.opened[id] = true
	s.broken = append(s.broken, id)
}

// pending lists the models whose memory would change.
func (s *solving) pending() []int32 {
	var ids []int32
	for id, m := range s.network.models {
		r, ok := m.(remembering)
		if !ok {
			continue
		}
		next := r.next(s)
		if s.network.forced != nil {
			next = s.network.forced[id].memory(next)
		}
		if next != s.memory[id] {
			ids = append(ids, int32(id))
		}
	}
	return ids
}

// moment notes the memory and what is seen with it.
func (s *solving) moment() moment {
	m := moment{memory: slices.Clone(s.memory), worst: -1, sees: make([]float64, len(s.network.models))}
	for id, x := range s.network.models {
		if w, ok := x.(watching); ok {
			m.sees[id] = w.sees(s)
		}
		if b, ok := x.(breakable); ok && !s.bridged(id) {
			if share := b.strain(s); share > m.strain*(1+outsideTolerance) {
				m.strain, m.worst = share, int32(id)
			}
		}
	}
	return m
}

// bridged reports whether a defect holds something closed, so that it cannot open.
func (s *solving) bridged(id int) bool {
	return s.network.forced != nil && s.network.forced[id].kind == elementClosed
}

func keyOf(memory []bool) string {
	b := make([]byte, (len(memory)+7)/8)
	for i, set := range memory {
		if set {
			b[i/8] |= 1 << (i % 8)
		}
	}
	return string(b)
}
