package path

import "github.com/lugwright/lugwright/wiring"

// Edge is one thing that joins two nodes. Diodes point from A to B; batteries, chargers
// and converter outputs have their positive at A; for all else the order means nothing.
type Edge struct {
	Sort    Sort
	A, B    wiring.NodeID
	Wire    *wiring.Wire   // Sort Wire
	Element wiring.Element // every other sort

	control   *wiring.Control // Sort Switch
	positions []string        // Sort Switch: positions in which the pair is joined
	index     int
}

// Other returns the end of the edge that is not n.
func (e *Edge) Other(n wiring.NodeID) wiring.NodeID {
	if e.A == n {
		return e.B
	}
	return e.A
}

// Part is the part that an element belongs to; nil for a wire.
func (e *Edge) Part() *wiring.Part {
	if e.Element == nil {
		return nil
	}
	return e.Element.Base().Part
}

// Control is what works a switch; nil for all else.
func (e *Edge) Control() *wiring.Control { return e.control }

// ClosedIn reports whether a switch joins the pair while its control stands at position.
func (e *Edge) ClosedIn(position string) bool {
	for _, p := range e.positions {
		if p == position {
			return true
		}
	}
	return false
}

// Graph is the conduction graph of a harness. It is not changed once made and may be read
// by many goroutines at once.
type Graph struct {
	Harness *wiring.Harness
	edges   []*Edge
	at      [][]*Edge // by node
	copper  []int32   // by node: the group of nodes that wires and links join
}

// New builds the graph of a harness. Edges stand in the order of wires, then of parts and
// their elements, so that searches over equal harnesses give equal answers.
func New(h *wiring.Harness) *Graph {
	g := &Graph{Harness: h, at: make([][]*Edge, len(h.Nodes))}
	for _, w := range h.Wires {
		for _, pair := range w.Joins() {
			g.add(&Edge{Sort: Wire, A: pair[0], B: pair[1], Wire: w})
		}
	}
	for _, p := range h.Parts {
		for _, el := range p.Elements {
			for _, e := range edgesOf(el) {
				g.add(e)
			}
		}
	}
	g.copper = g.groups(Through{Sorts: Conductors})
	return g
}

// add drops edges that lead nowhere: an end at no node, or both ends at one.
func (g *Graph) add(e *Edge) {
	if e.A == e.B || !g.has(e.A) || !g.has(e.B) {
		return
	}
	e.index = len(g.edges)
	g.edges = append(g.edges, e)
	g.at[e.A] = append(g.at[e.A], e)
	g.at[e.B] = append(g.at[e.B], e)
}

func (g *Graph) has(n wiring.NodeID) bool { return n >= 0 && int(n) < len(g.at) }

// Edges lists all edges. It must not be changed.
func (g *Graph) Edges() []*Edge { return g.edges }

// At lists the edges that end at a node. It must not be changed.
func (g *Graph) At(n wiring.NodeID) []*Edge {
	if !g.has(n) {
		return nil
	}
	return g.at[n]
}

// Name is the node as a person would write it.
func (g *Graph) Name(n wiring.NodeID) string {
	if !g.has(n) {
		return "nothing"
	}
	node := g.Harness.Nodes[n]
	if node.Terminal != nil && node.Terminal.Node == n {
		return node.Terminal.Ref()
	}
	return node.String()
}

// SameCopper reports whether wires and links alone join two nodes.
func (g *Graph) SameCopper(a, b wiring.NodeID) bool {
	return g.has(a) && g.has(b) && g.copper[a] == g.copper[b]
}

// Copper numbers the group of nodes that wires and links join n to; -1 for no node.
func (g *Graph) Copper(n wiring.NodeID) int {
	if !g.has(n) {
		return -1
	}
	return int(g.copper[n])
}

// groups numbers the connected groups of nodes under t, by their smallest node. t must not
// pass diodes, which join in one direction only.
func (g *Graph) groups(t Through) []int32 {
	group := make([]int32, len(g.at))
	for i := range group {
		group[i] = -1
	}
	var queue []wiring.NodeID
	for first := range g.at {
		if group[first] >= 0 {
			continue
		}
		group[first] = int32(first)
		queue = append(queue[:0], wiring.NodeID(first))
		for i := 0; i < len(queue); i++ {
			n := queue[i]
			for _, e := range g.at[n] {
				if m := e.Other(n); group[m] < 0 && t.passes(e, n) {
					group[m] = int32(first)
					queue = append(queue, m)
				}
			}
		}
	}
	return group
}
