package wiring

import "sort"

// Net is a set of nodes joined by wires alone.
type Net struct {
	ID    int
	Nodes []NodeID // ascending
	Wires []*Wire
}

// Nets groups the nodes of the harness that wires join, the poles of a cord by their
// names. Every node belongs to one net; of lists the net of each node by NodeID.
func (h *Harness) Nets() (nets []*Net, of []int) {
	joined := newUnion(len(h.Nodes))
	for _, w := range h.Wires {
		for _, pair := range w.Joins() {
			joined.join(int(pair[0]), int(pair[1]))
		}
	}
	of = make([]int, len(h.Nodes))
	byRoot := make(map[int]*Net)
	for n := range h.Nodes {
		root := joined.find(n)
		net := byRoot[root]
		if net == nil {
			net = &Net{ID: len(nets)}
			byRoot[root] = net
			nets = append(nets, net)
		}
		net.Nodes = append(net.Nodes, NodeID(n))
		of[n] = net.ID
	}
	for _, w := range h.Wires {
		seen := map[int]bool{}
		for _, end := range w.Ends() {
			for _, n := range end.nodes() {
				if id := of[n]; !seen[id] {
					seen[id] = true
					nets[id].Wires = append(nets[id].Wires, w)
				}
			}
		}
	}
	return nets, of
}

// Joins returns the pairs of nodes that the wire joins, from-side first: one for a single
// wire, one a pole for a cord, none for a wire with an end that does not land.
func (w *Wire) Joins() [][2]NodeID {
	a, b := w.From.Terminal, w.To.Terminal
	if a == nil || b == nil {
		return nil
	}
	if !w.Cord() {
		return [][2]NodeID{{a.Node, b.Node}}
	}
	var pairs [][2]NodeID
	for _, p := range a.Poles {
		for _, q := range b.Poles {
			if Fold(p.Name) == Fold(q.Name) {
				pairs = append(pairs, [2]NodeID{p.Node, q.Node})
			}
		}
	}
	return pairs
}

func (e *End) nodes() []NodeID {
	if e.Terminal == nil {
		return nil
	}
	if e.Terminal.Form.Type != Port {
		return []NodeID{e.Terminal.Node}
	}
	nodes := make([]NodeID, 0, len(e.Terminal.Poles))
	for _, p := range e.Terminal.Poles {
		nodes = append(nodes, p.Node)
	}
	sort.Slice(nodes, func(i, j int) bool { return nodes[i] < nodes[j] })
	return nodes
}

// union is a disjoint-set forest with path halving.
type union []int

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = i
	}
	return u
}

func (u union) find(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

// join keeps the smaller root, so that results do not depend on the order of joining.
func (u union) join(i, j int) {
	i, j = u.find(i), u.find(j)
	if i > j {
		i, j = j, i
	}
	u[j] = i
}
