package sparse

// elimination holds the graph that is left while nodes are eliminated one after another.
// Lists of neighbours may name nodes that are gone; degree counts those that are not.
type elimination struct {
	next   [][]int32 // neighbours of each node
	degree []int32
	gone   []bool
	ready  [][]int32 // by degree: nodes that had it when they were put there
	least  int       // no node in ready has a smaller degree
}

// eliminate returns the nodes in an order of least degree, and for each step the
// neighbours that the node had then: the pattern of its column of L.
//
// Among nodes of equal degree the one that reached it last goes first, so that the order
// follows a chain of wires to its end; it depends on nothing but the graph.
func eliminate(n int, pairs [][2]int32) (order []int32, columns [][]int32) {
	g := newElimination(n, pairs)
	order = make([]int32, 0, n)
	columns = make([][]int32, 0, n)
	for range n {
		v := g.pick()
		column := g.remove(v)
		order = append(order, v)
		columns = append(columns, column)
	}
	return order, columns
}

func newElimination(n int, pairs [][2]int32) *elimination {
	g := &elimination{
		next:   make([][]int32, n),
		degree: make([]int32, n),
		gone:   make([]bool, n),
	}
	for _, p := range pairs {
		g.next[p[0]] = append(g.next[p[0]], p[1])
		g.next[p[1]] = append(g.next[p[1]], p[0])
	}
	for v := n - 1; v >= 0; v-- {
		g.degree[v] = int32(len(g.next[v]))
		g.file(int32(v))
	}
	return g
}

// file puts a node where its degree says. What was filed before under another degree is
// passed over later.
func (g *elimination) file(v int32) {
	d := int(g.degree[v])
	for len(g.ready) <= d {
		g.ready = append(g.ready, nil)
	}
	g.ready[d] = append(g.ready[d], v)
	g.least = min(g.least, d)
}

// pick takes out a node of least degree.
func (g *elimination) pick() int32 {
	for {
		list := g.ready[g.least]
		if len(list) == 0 {
			g.least++
			continue
		}
		v := list[len(list)-1]
		g.ready[g.least] = list[:len(list)-1]
		if !g.gone[v] && int(g.degree[v]) == g.least {
			return v
		}
	}
}

// remove eliminates a node: its neighbours become neighbours of each other.
func (g *elimination) remove(v int32) []int32 {
	near := g.living(v)
	g.gone[v] = true
	for k, a := range near {
		g.degree[a]--
		for _, b := range near[k+1:] {
			if !g.adjacent(a, b) {
				g.next[a] = append(g.next[a], b)
				g.next[b] = append(g.next[b], a)
				g.degree[a]++
				g.degree[b]++
			}
		}
	}
	for _, a := range near {
		g.file(a)
	}
	g.next[v] = nil
	return near
}

// living returns the neighbours of a node that are not gone, and forgets the others.
func (g *elimination) living(v int32) []int32 {
	kept := g.next[v][:0]
	for _, a := range g.next[v] {
		if !g.gone[a] {
			kept = append(kept, a)
		}
	}
	g.next[v] = kept
	return kept
}

// adjacent looks through the shorter list, so that a node with very many neighbours, such
// as a common negative, is not searched for each of them.
func (g *elimination) adjacent(a, b int32) bool {
	if len(g.next[a]) > len(g.next[b]) {
		a, b = b, a
	}
	for _, c := range g.living(a) {
		if c == b {
			return true
		}
	}
	return false
}
