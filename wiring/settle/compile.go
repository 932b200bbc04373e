package settle

import (
	"sync"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle/internal/sparse"
)

// branch is one path between two buses.
type branch struct {
	a, b   int32
	paired bool         // a and b differ and neither is the reference: entry is its place
	entry  sparse.Entry // in the matrix
}

// coupling is the four entries of the matrix by which the output of a converter acts on
// its input: the rows of the input's ends, the columns of the output's.
type coupling struct {
	input, output int32 // branches
	cells         [4]cell
}

// cell is one entry off the diagonal, on it, or none at all where an end is the reference.
type cell struct {
	row, column int32
	sign        float64
	paired      bool
	entry       sparse.Entry
}

// compiler gathers a network.
type compiler struct {
	*Network
	joined disjoint // buses by node, while links are being merged
	last   []func() // what needs all models to be there
}

// Compile makes a harness ready for settling. It finds which nodes links merge, what
// every wire's resistance is, which branches there are, and in what order their equations
// are best solved.
func Compile(h *wiring.Harness) *Network { return compile(h, nil) }

func compile(h *wiring.Harness, defects []Defect) *Network {
	c := &compiler{Network: &Network{
		harness:   h,
		modelOf:   map[wiring.Element]int32{},
		controlOf: map[*wiring.Control]int32{},
		wireOf:    map[*wiring.Wire]int32{},
	}}
	c.mergeLinks()
	c.addWires()
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			m := c.newModel(e)
			c.modelOf[e] = m.itself().id
			c.models = append(c.models, m)
		}
	}
	for _, f := range c.last {
		f()
	}
	c.apply(defects)
	c.findReference()
	c.findNets()
	c.findAC()
	c.makePattern()
	n := c.Network
	n.room = sync.Pool{New: func() any { return newSolving(n) }}
	return n
}

// mergeLinks numbers the buses: sets of nodes that links join.
func (c *compiler) mergeLinks() {
	nodes := len(c.harness.Nodes)
	c.joined = newDisjoint(nodes)
	for _, p := range c.harness.Parts {
		for _, e := range p.Elements {
			link, ok := e.(*wiring.Link)
			if !ok {
				continue
			}
			for _, pair := range star(link.Join) {
				if c.isNode(pair[0]) && c.isNode(pair[1]) {
					c.joined.join(int32(pair[0]), int32(pair[1]))
				}
			}
		}
	}
	c.busOf = make([]int32, nodes)
	number := make(map[int32]int32, nodes)
	for i := range c.busOf {
		root := c.joined.find(int32(i))
		bus, ok := number[root]
		if !ok {
			bus = int32(len(number))
			number[root] = bus
		}
		c.busOf[i] = bus
	}
	c.buses = int32(len(number))
}

func (c *compiler) isNode(n wiring.NodeID) bool { return n >= 0 && int(n) < len(c.harness.Nodes) }

// bus is the bus of a node. What is no node gets a bus of its own, joined to nothing.
func (c *compiler) bus(n wiring.NodeID) int32 {
	if c.isNode(n) {
		return c.busOf[n]
	}
	c.buses++
	return c.buses - 1
}

// branch adds a branch from a to b and returns its number.
func (c *compiler) branch(a, b wiring.NodeID) int32 {
	c.branches = append(c.branches, branch{a: c.bus(a), b: c.bus(b)})
	return int32(len(c.branches) - 1)
}

// unit numbers a model. Its branches were just added, one after another.
func (c *compiler) unit(e wiring.Element, branches ...int32) unit {
	u := unit{element: e, id: int32(len(c.models)), first: -1, count: int32(len(branches))}
	if len(branches) > 0 {
		u.first = branches[0]
	}
	return u
}

// bend adds a bend to the characteristic of a branch and returns its number.
func (c *compiler) bend(m model, branch int32, b bend) int32 {
	c.bendings = append(c.bendings, bending{bend: b, model: m, branch: branch, feeds: -1})
	return int32(len(c.bendings) - 1)
}

// feeds says that the input branch of a bend pays for what the output branch delivers.
func (c *compiler) feeds(bend, input, output int32) {
	c.bendings[bend].feeds = output
	c.couplings = append(c.couplings, coupling{input: input, output: output})
}

// later calls f when all models are there.
func (c *compiler) later(f func()) { c.last = append(c.last, f) }

// control numbers a control; nil is the control that has no position.
func (c *compiler) control(w *wiring.Control) int32 {
	if id, ok := c.controlOf[w]; ok {
		return id
	}
	id := int32(len(c.controls))
	c.controlOf[w] = id
	c.controls = append(c.controls, w)
	return id
}

// addWires makes the wires the first branches of the network.
func (c *compiler) addWires() {
	assume := c.harness.Assume
	c.wireFirst = make([]int32, len(c.harness.Wires)+1)
	for i, w := range c.harness.Wires {
		c.wireOf[w] = int32(i)
		ohms, known := wireOhms(w, assume)
		for _, pair := range w.Joins() {
			if c.isNode(pair[0]) && c.isNode(pair[1]) {
				c.branch(pair[0], pair[1])
				c.wireLaws = append(c.wireLaws, ohmic(ohms))
			}
		}
		c.wireFirst[i+1] = int32(len(c.branches))
		c.wireOhms = append(c.wireOhms, ohms)
		c.wireKnown = append(c.wireKnown, known)
	}
}

// makePattern finds the pattern of the equations: a pair of entries for each branch, and
// for each converter those by which its output acts on its input.
func (c *compiler) makePattern() {
	var pairs [][2]int32
	place := func(a, b int32) bool {
		if a == b || a == c.reference || b == c.reference {
			return false
		}
		pairs = append(pairs, [2]int32{a, b})
		return true
	}
	for i := range c.branches {
		b := &c.branches[i]
		b.paired = place(b.a, b.b)
	}
	for i := range c.couplings {
		k := &c.couplings[i]
		in, out := c.branches[k.input], c.branches[k.output]
		k.cells = [4]cell{
			{row: in.a, column: out.a, sign: 1}, {row: in.a, column: out.b, sign: -1},
			{row: in.b, column: out.a, sign: -1}, {row: in.b, column: out.b, sign: 1},
		}
		for j := range k.cells {
			k.cells[j].paired = place(k.cells[j].row, k.cells[j].column)
		}
	}
	c.pattern = sparse.NewPattern(int(c.buses), pairs)
	c.placeEntries()
}

// placeEntries goes through the pairs in the order in which makePattern lists them.
func (c *compiler) placeEntries() {
	at := 0
	next := func() sparse.Entry {
		at++
		return c.pattern.Entry(at - 1)
	}
	for i := range c.branches {
		if b := &c.branches[i]; b.paired {
			b.entry = next()
		}
	}
	for i := range c.couplings {
		for j := range c.couplings[i].cells {
			if k := &c.couplings[i].cells[j]; k.paired {
				k.entry = next()
			}
		}
	}
}
