package path

import (
	"container/heap"
	"sort"

	"github.com/lugwright/lugwright/wiring"
)

// Reach is what a search found: the nodes, and the way to each.
type Reach struct {
	graph *Graph
	came  []*Edge // by node: the edge that the search came by; nil at its beginnings
	from  []wiring.NodeID
	found []bool
	cost  []float64 // Least only
	order []wiring.NodeID
}

// From searches outwards from the given nodes, and finds for each node a path of the
// fewest edges.
func (g *Graph) From(t Through, begin ...wiring.NodeID) *Reach {
	r := g.newReach()
	for _, n := range begin {
		if g.has(n) && !r.found[n] {
			r.enter(n, nil, wiring.NoNode)
		}
	}
	for i := 0; i < len(r.order); i++ {
		n := r.order[i]
		if t.stops(n) && r.came[n] != nil {
			continue
		}
		for _, e := range g.at[n] {
			if m := e.Other(n); !r.found[m] && t.passes(e, n) {
				r.enter(m, e, n)
			}
		}
	}
	return r
}

// Least searches like From, and finds for each node the path of least cost. cost must not
// be negative.
func (g *Graph) Least(t Through, cost func(*Edge) float64, begin ...wiring.NodeID) *Reach {
	r := g.newReach()
	r.cost = make([]float64, len(g.at))
	queue := &frontier{}
	for i, n := range begin {
		if g.has(n) {
			heap.Push(queue, candidate{node: n, from: wiring.NoNode, seq: i})
		}
	}
	for seq := len(begin); queue.Len() > 0; {
		c := heap.Pop(queue).(candidate)
		if r.found[c.node] {
			continue
		}
		r.enter(c.node, c.edge, c.from)
		r.cost[c.node] = c.cost
		if t.stops(c.node) && c.edge != nil {
			continue
		}
		for _, e := range g.at[c.node] {
			if m := e.Other(c.node); !r.found[m] && t.passes(e, c.node) {
				seq++
				heap.Push(queue, candidate{node: m, edge: e, from: c.node, cost: c.cost + cost(e), seq: seq})
			}
		}
	}
	return r
}

func (g *Graph) newReach() *Reach {
	n := len(g.at)
	return &Reach{graph: g, came: make([]*Edge, n), from: make([]wiring.NodeID, n), found: make([]bool, n)}
}

func (r *Reach) enter(n wiring.NodeID, e *Edge, from wiring.NodeID) {
	r.found[n] = true
	r.came[n] = e
	r.from[n] = from
	r.order = append(r.order, n)
}

// Has reports whether the search reached n.
func (r *Reach) Has(n wiring.NodeID) bool { return n >= 0 && int(n) < len(r.found) && r.found[n] }

// Cost is the cost of the path to n that Least found; 0 after From, or if n was not reached.
func (r *Reach) Cost(n wiring.NodeID) float64 {
	if r.cost == nil || !r.Has(n) {
		return 0
	}
	return r.cost[n]
}

// Nodes lists what was reached, in ascending order.
func (r *Reach) Nodes() []wiring.NodeID {
	nodes := append([]wiring.NodeID(nil), r.order...)
	sort.Slice(nodes, func(i, j int) bool { return nodes[i] < nodes[j] })
	return nodes
}

// First returns the nearest reached node for which f holds, in the order of the search.
func (r *Reach) First(f func(wiring.NodeID) bool) (wiring.NodeID, bool) {
	for _, n := range r.order {
		if f(n) {
			return n, true
		}
	}
	return wiring.NoNode, false
}

// To is the path by which the search reached n; the second result is false if it did not.
func (r *Reach) To(n wiring.NodeID) (Path, bool) {
	if !r.Has(n) {
		return Path{}, false
	}
	p := Path{graph: r.graph, Begin: n, End: n}
	for r.came[n] != nil {
		p.Steps = append(p.Steps, Step{Edge: r.came[n], From: r.from[n], To: n})
		n = r.from[n]
	}
	p.Begin = n
	for i, j := 0, len(p.Steps)-1; i < j; i, j = i+1, j-1 {
		p.Steps[i], p.Steps[j] = p.Steps[j], p.Steps[i]
	}
	return p, true
}

// candidate is a node that a search by cost may enter next; seq makes ties definite.
type candidate struct {
	node wiring.NodeID
	edge *Edge
	from wiring.NodeID
	cost float64
	seq  int
}

type frontier []candidate

func (f frontier) Len() int { return len(f) }
func (f frontier) Less(i, j int) bool {
	if f[i].cost != f[j].cost {
		return f[i].cost < f[j].cost
	}
	return f[i].seq < f[j].seq
}
func (f frontier) Swap(i, j int) { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)   { *f = append(*f, x.(candidate)) }
func (f *frontier) Pop() any {
	old := *f
	last := old[len(old)-1]
	*f = old[:len(old)-1]
	return last
}
