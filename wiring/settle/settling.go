package settle

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Settle finds the operating point in a state, which need not be one of the harness's own:
// any setting of its controls will do. It returns an error only when ctx ends.
func (n *Network) Settle(ctx context.Context, st *wiring.State, o Options) (*Point, error) {
	return n.settle(ctx, st, o, map[string]bool{})
}

// settle settles the state that st begins with first; visited holds the names of those
// that led here, so that states which begin with each other end.
func (n *Network) settle(ctx context.Context, st *wiring.State, o Options, visited map[string]bool) (*Point, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	visited[st.Name] = true
	if before := n.harness.State(st.After); o.After == nil && before != nil && !visited[before.Name] {
		point, err := n.settle(ctx, before, o, visited)
		if err != nil {
			return nil, err
		}
		o.After = point
	}
	s := n.room.Get().(*solving)
	defer n.room.Put(s)
	s.prepare(st, o)
	return s.run(ctx, st, n.memoryAfter(o.After))
}

// memoryAfter is the memory of a point, which may be of another network of the same
// harness; nil for none.
func (n *Network) memoryAfter(p *Point) []bool {
	if p == nil {
		return nil
	}
	if p.net == n {
		return p.memory
	}
	memory := make([]bool, len(n.models))
	for i, m := range n.models {
		if id, ok := p.net.modelOf[m.itself().element]; ok {
			memory[i] = p.memory[id]
		}
	}
	return memory
}

// run settles the prepared state, beginning with a memory, and again from that memory
// whenever something has opened.
func (s *solving) run(ctx context.Context, st *wiring.State, start []bool) (*Point, error) {
	for {
		s.begins(start)
		end, path, err := s.walk(ctx, together)
		if err != nil {
			return nil, err
		}
		p := &Point{State: st}
		if end == cyclic {
			if end, path, err = s.resolve(ctx, path, p); err != nil {
				return nil, err
			}
		}
		if end == opened {
			continue
		}
		s.conclude(p, end, path)
		return p, nil
	}
}

// begins sets the memory with which a walk begins.
func (s *solving) begins(start []bool) {
	clear(s.memory)
	copy(s.memory, start)
	if s.network.forced == nil {
		return
	}
	for id, f := range s.network.forced {
		s.memory[id] = f.memory(s.memory[id])
	}
}

// resolve looks into a cycle of all acting at once: a race with an outcome ends when they
// act one at a time, nearest to its threshold first. If acting in the other order ends
// elsewhere, the outcome depends on the order.
func (s *solving) resolve(ctx context.Context, cycle []moment, p *Point) (ending, []moment, error) {
	start := cycle[0].memory
	s.begins(start)
	end, path, err := s.walk(ctx, nearest)
	if err != nil || end != steady {
		return end, path, err
	}
	memory, opened, broken, rounds := slices.Clone(s.memory), slices.Clone(s.opened), s.broken, s.rounds
	s.begins(start)
	end, _, err = s.walk(ctx, farthest)
	if err != nil {
		return 0, nil, err
	}
	p.OrderMatters = end != steady || !slices.Equal(s.memory, memory)
	if p.OrderMatters {
		p.Why = s.race(cycle)
	}
	copy(s.opened, opened)
	s.broken, s.rounds = broken, rounds
	s.begins(memory)
	return s.walk(ctx, together)
}

// conclude fills in a point.
func (s *solving) conclude(p *Point, end ending, path []moment) {
	switch end {
	case steady:
		p.Outcome = Settled
	case unsolved:
		p.Outcome, p.Why = NoSolution, s.whyUnsolved()
		s.silence()
	default:
		p.Outcome = Chatters
		p.Cycle, p.Swings = s.alternating(path)
		p.Why = whyChatters(p.Cycle, p.Swings)
		if end == endless {
			p.Why = fmt.Sprintf("does not settle in %d rounds: %s", mostRounds, p.Why)
		}
	}
	s.record(p)
}

// alternating lists the elements whose memory is not the same throughout a cycle, and
// what those of them see that watch a voltage.
func (s *solving) alternating(cycle []moment) (elements []wiring.Element, swings []Swing) {
	for id, m := range s.network.models {
		changes := false
		low, high := 0.0, 0.0
		for i, at := range cycle {
			changes = changes || at.memory[id] != cycle[0].memory[id]
			if i == 0 {
				low, high = at.sees[id], at.sees[id]
			}
			low, high = min(low, at.sees[id]), max(high, at.sees[id])
		}
		if !changes {
			continue
		}
		e := m.itself().element
		elements = append(elements, e)
		if _, ok := m.(watching); ok {
			swings = append(swings, Swing{e, quantity.Volt(low), quantity.Volt(high)})
		}
	}
	return elements, swings
}

// whyChatters names the elements and what they see.
func whyChatters(cycle []wiring.Element, swings []Swing) string {
	if len(cycle) == 0 {
		return "nothing comes to rest"
	}
	text := names(cycle) + " alternate"
	if len(cycle) == 1 {
		text += "s"
	}
	for i, w := range swings {
		text += []string{": ", ", "}[min(i, 1)]
		text += fmt.Sprintf("%s sees %v to %v", refOf(w.Element), w.Low, w.High)
	}
	return text
}

// race says which elements race.
func (s *solving) race(cycle []moment) string {
	racers, _ := s.alternating(cycle)
	return "the outcome depends on which acts first: " + names(racers)
}

// silence sets all figures to 0.
func (s *solving) silence() {
	for _, figures := range [][]float64{s.hi, s.lo, s.volts, s.amps} {
		clear(figures)
	}
	s.residual = 0
}

// whyUnsolved names the supplies that are in the way.
func (s *solving) whyUnsolved() string {
	var supplies []wiring.Element
	for _, id := range s.overload {
		supplies = append(supplies, s.network.models[id].itself().element)
	}
	if len(supplies) == 0 {
		return "the network has no operating point"
	}
	return "no operating point with what " + names(supplies) + " must feed"
}

func names(elements []wiring.Element) string {
	refs := make([]string, len(elements))
	for i, e := range elements {
		refs[i] = refOf(e)
	}
	if len(refs) > 1 {
		last := len(refs) - 1
		refs = append(refs[:last-1], refs[last-1]+" and "+refs[last])
	}
	return strings.Join(refs, ", ")
}

// refOf is the element as findings name it.
func refOf(e wiring.Element) string {
	if base := e.Base(); base.Part == nil {
		return base.Name
	}
	return e.Base().Ref()
}
