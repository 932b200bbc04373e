package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// between lists the edges that lie on a path from a to b which visits no node twice, in
// components: sets of edges that hang together by nodes other than a and b. Directions of
// diodes do not count here. may says which edges there are.
//
// With an edge from a to b added, these edges are the block (the 2-connected component)
// that holds the added edge: two edges lie on a common cycle if and only if they are in
// one block (H. Whitney, Non-separable and planar graphs, Trans. AMS 34, 1932). Blocks are
// found by depth-first search (J. Hopcroft, R. Tarjan, Efficient algorithms for graph
// manipulation, CACM 16, 1973).
func between(g *path.Graph, may func(*path.Edge) bool, a, b wiring.NodeID) [][]*path.Edge {
	if a == b {
		return nil
	}
	s := &blockSearch{graph: g, may: may, number: map[wiring.NodeID]int{}, a: a, b: b}
	s.number[a] = 1
	s.visit(b, a, nil)
	return s.components()
}

// blockSearch is a depth-first search that begins with the added edge from a to b. What it
// has pushed when it comes back over that edge is the block of that edge.
type blockSearch struct {
	graph  *path.Graph
	may    func(*path.Edge) bool
	a, b   wiring.NodeID
	number map[wiring.NodeID]int // in the order of visits
	edges  []*path.Edge          // of blocks that are still open
}

// visit goes on from n, to which the search came by an edge from before (nil: the added
// edge), and returns the lowest number that it came across.
func (s *blockSearch) visit(n, before wiring.NodeID, by *path.Edge) int {
	own := len(s.number) + 1
	s.number[n] = own
	low := own
	if by == nil {
		low = s.number[before]
	}
	for _, e := range s.graph.At(n) {
		if e == by || !s.may(e) {
			continue
		}
		to := e.Other(n)
		if number, seen := s.number[to]; seen {
			if number < own {
				s.edges = append(s.edges, e)
				low = min(low, number)
			}
			continue
		}
		mark := len(s.edges)
		s.edges = append(s.edges, e)
		below := s.visit(to, n, e)
		if below >= own { // n cuts off what lies behind e
			s.edges = s.edges[:mark]
		}
		low = min(low, below)
	}
	return low
}

// components divides the edges of the block. Straight edges from a to b are one each.
func (s *blockSearch) components() [][]*path.Edge {
	joined := s.joinInner()
	var all [][]*path.Edge
	place := map[wiring.NodeID]int{}
	for _, e := range s.edges {
		n := e.A
		if !s.inner(n) {
			n = e.B
		}
		if !s.inner(n) {
			all = append(all, []*path.Edge{e})
			continue
		}
		root := joined.root(n)
		i, ok := place[root]
		if !ok {
			i = len(all)
			place[root] = i
			all = append(all, nil)
		}
		all[i] = append(all[i], e)
	}
	return all
}

func (s *blockSearch) inner(n wiring.NodeID) bool { return n != s.a && n != s.b }

// joinInner joins the ends of the edges that touch neither a nor b.
func (s *blockSearch) joinInner() forest {
	joined := forest{}
	for _, e := range s.edges {
		if s.inner(e.A) && s.inner(e.B) {
			joined[joined.root(e.A)] = joined.root(e.B)
		}
	}
	return joined
}

// forest is a disjoint-set forest of nodes; a node that it does not hold is a root.
type forest map[wiring.NodeID]wiring.NodeID

func (f forest) root(n wiring.NodeID) wiring.NodeID {
	for {
		up, ok := f[n]
		if !ok || up == n {
			return n
		}
		if above, ok := f[up]; ok {
			f[n] = above
		}
		n = up
	}
}
