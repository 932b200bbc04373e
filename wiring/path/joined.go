package path

import "github.com/lugwright/lugwright/wiring"

// maxJoinedSteps bounds the search of Joined: far above what a cart with a few changeover
// switches needs, low enough that a hostile file cannot hold the program.
const maxJoinedSteps = 1 << 18

// Joined finds a path between two nodes, passing t, that exists in one position of every
// hand switch and one state of every coil, with at most one driver of each part: a
// changeover switch does not join its two throws, nor does the bridge of a controller join
// its poles. It returns the shortest one, and false if there is none. t.Setting should be
// nil.
//
// Beyond a quarter of a million steps the positions are no longer followed, and any path
// counts; so a doubtful answer is "joined", never "apart".
func (g *Graph) Joined(t Through, a, b wiring.NodeID) (Path, bool) {
	loose, ok := g.From(t, a).To(b)
	if !ok {
		return Path{}, false
	}
	if loose.Agrees() {
		return loose, true
	}
	c := g.conflicts(t)
	s := &joinSearch{graph: g, through: t, conflicts: c, seen: map[string]bool{}}
	if p, ok := s.run(a, b); ok {
		return p, true
	}
	if s.exhausted {
		return loose, true
	}
	return Path{}, false
}

// Agrees reports whether all edges of a path can be closed at once: in one position of
// every hand switch and one state of every coil, with at most one driver of each part.
func (p Path) Agrees() bool {
	open := map[any]uint64{}
	for _, s := range p.Steps {
		key, mask := needs(s.Edge)
		if key == nil {
			continue
		}
		before, ok := open[key]
		if !ok {
			before = ^uint64(0)
		}
		if open[key] = before & mask; open[key] == 0 {
			return false
		}
	}
	return true
}

// conflicts numbers the choices that two edges could need differently: a control's
// position, a coil's state, the one closed driver of a part.
type conflicts struct {
	count int
	of    map[*Edge]choice
}

// choice says which values of a choice keep an edge closed.
type choice struct {
	number int
	mask   uint64
}

func (g *Graph) conflicts(t Through) conflicts {
	masks := map[any][]choiceEdge{}
	var keys []any
	for _, e := range g.edges {
		if e.Sort&t.Sorts == 0 {
			continue
		}
		if key, mask := needs(e); key != nil {
			if masks[key] == nil {
				keys = append(keys, key)
			}
			masks[key] = append(masks[key], choiceEdge{e, mask})
		}
	}
	c := conflicts{of: map[*Edge]choice{}}
	for _, key := range keys {
		if !disjoint(masks[key]) {
			continue
		}
		for _, m := range masks[key] {
			c.of[m.edge] = choice{c.count, m.mask}
		}
		c.count++
	}
	return c
}

type choiceEdge struct {
	edge *Edge
	mask uint64
}

// needs returns what must be chosen for an edge to be closed, as a set of values.
func needs(e *Edge) (key any, mask uint64) {
	switch el := e.Element.(type) {
	case *wiring.Switch:
		for i, position := range el.Control.Positions {
			if e.ClosedIn(position) {
				mask |= 1 << (i % 64)
			}
		}
		return el.Control, mask
	case *wiring.Contact:
		if el.RestClosed {
			return el.Coil, 1
		}
		return el.Coil, 2
	case *wiring.Driver:
		return el.Part, 1 << (driverNumber(el) % 64)
	}
	return nil, 0
}

func driverNumber(d *wiring.Driver) int {
	number := 0
	for _, el := range d.Part.Elements {
		if el == wiring.Element(d) {
			return number
		}
		if _, ok := el.(*wiring.Driver); ok {
			number++
		}
	}
	return number
}

// disjoint reports whether any two of the edges cannot be closed at once.
func disjoint(edges []choiceEdge) bool {
	all := ^uint64(0)
	for _, e := range edges {
		all &= e.mask
	}
	return all == 0 && len(edges) > 1
}

// joinSearch walks states (node, what is still open to choose) breadth first.
type joinSearch struct {
	graph     *Graph
	through   Through
	conflicts conflicts
	seen      map[string]bool
	exhausted bool
}

type joinState struct {
	node   wiring.NodeID
	edge   *Edge
	before int // index of the state it came from
	masks  []uint64
}

func (s *joinSearch) run(a, b wiring.NodeID) (Path, bool) {
	open := make([]uint64, s.conflicts.count)
	for i := range open {
		open[i] = ^uint64(0)
	}
	states := []joinState{{node: a, before: -1, masks: open}}
	for i := 0; i < len(states); i++ {
		if states[i].node == b {
			return s.path(states, i), true
		}
		if len(states) > maxJoinedSteps {
			s.exhausted = true
			return Path{}, false
		}
		if s.through.stops(states[i].node) && i > 0 {
			continue
		}
		states = s.expand(states, i)
	}
	return Path{}, false
}

func (s *joinSearch) expand(states []joinState, i int) []joinState {
	from := states[i]
	for _, e := range s.graph.at[from.node] {
		if !s.through.passes(e, from.node) {
			continue
		}
		masks, ok := s.choose(from.masks, e)
		if !ok {
			continue
		}
		next := joinState{node: e.Other(from.node), edge: e, before: i, masks: masks}
		if key := next.key(); !s.seen[key] {
			s.seen[key] = true
			states = append(states, next)
		}
	}
	return states
}

// choose narrows what is open to choose so that e is closed.
func (s *joinSearch) choose(masks []uint64, e *Edge) ([]uint64, bool) {
	c, ok := s.conflicts.of[e]
	if !ok || masks[c.number]&c.mask == masks[c.number] {
		return masks, true
	}
	narrowed := masks[c.number] & c.mask
	if narrowed == 0 {
		return nil, false
	}
	masks = append([]uint64(nil), masks...)
	masks[c.number] = narrowed
	return masks, true
}

func (s *joinState) key() string {
	b := make([]byte, 0, 4+8*len(s.masks))
	for shift := 0; shift < 32; shift += 8 {
		b = append(b, byte(s.node>>shift))
	}
	for _, m := range s.masks {
		for shift := 0; shift < 64; shift += 8 {
			b = append(b, byte(m>>shift))
		}
	}
	return string(b)
}

func (s *joinSearch) path(states []joinState, i int) Path {
	p := Path{graph: s.graph, End: states[i].node}
	for ; states[i].before >= 0; i = states[i].before {
		p.Steps = append(p.Steps, Step{Edge: states[i].edge, From: states[states[i].before].node, To: states[i].node})
	}
	p.Begin = states[i].node
	for i, j := 0, len(p.Steps)-1; i < j; i, j = i+1, j-1 {
		p.Steps[i], p.Steps[j] = p.Steps[j], p.Steps[i]
	}
	return p
}
