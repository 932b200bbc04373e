package settle

import (
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Point is the operating point of a harness in a state. It does not change once it has
// been returned, and may be read by many goroutines. When a state chatters, its figures
// are those of the last network that was solved; with NoSolution all of them are 0.
type Point struct {
	Outcome Outcome
	State   *wiring.State
	Why     string           // what is wrong, in a sentence; empty when settled and nothing is to say
	Rounds  int              // how often the network was solved with one memory
	Cycle   []wiring.Element // Chatters: the elements that alternate
	Swings  []Swing          // Chatters: what those of them see that watch a voltage
	// OrderMatters says that elements race each other and the outcome depends on which of
	// them acts first. The point is the one in which the nearest to its threshold does.
	OrderMatters bool
	Residual     Residual

	net       *Network
	charge    quantity.Ratio
	override  func(*wiring.Source) quantity.Volt
	positions []string // by control
	memory    []bool   // by model
	holds     []bool   // by model
	opened    []int32
	overload  []int32
	piece     []piece // by bend
	inUse     []bool
	delivered []float64
	hi, lo    []float64 // by bus
	amps      []float64 // by branch
	root      []int32   // by bus: names the group that it hangs together with
	against   []int32   // by bus: the bus that its readings are taken against; -1: none
}

// Swing is what an element that watches a voltage sees in the course of a cycle.
type Swing struct {
	Element   wiring.Element
	Low, High quantity.Volt
}

// Residual says how exactly the point solves its network. Both are relative.
type Residual struct {
	KCL   float64 // largest sum of currents at a node, against the largest current there
	Power float64 // power of all branches together, against the power that is delivered
}

// record takes the figures of a solved network over into a point.
func (s *solving) record(p *Point) {
	n := s.network
	p.net, p.Rounds = n, s.rounds
	p.charge, p.override = s.charge, s.override
	p.positions = slices.Clone(s.positions)
	p.memory = slices.Clone(s.memory)
	p.opened = slices.Clone(s.broken)
	p.overload = s.overloaded()
	p.piece = slices.Clone(s.piece)
	p.inUse = slices.Clone(s.inUse)
	p.delivered = slices.Clone(s.delivered)
	p.hi = slices.Clone(s.hi)
	p.lo = slices.Clone(s.lo)
	p.amps = slices.Clone(s.amps)
	p.holds = make([]bool, len(n.models))
	for i, m := range n.models {
		p.holds[i] = m.holds(s)
		if n.forced != nil {
			p.holds[i] = n.forced[i].holding(p.holds[i])
		}
	}
	s.recordGroups(p)
	p.Residual = Residual{KCL: s.residual, Power: s.powerResidual()}
}

// recordGroups notes what hangs together, and what readings are taken against.
func (s *solving) recordGroups(p *Point) {
	n := s.network
	fed := make([]bool, n.nets) // by root: the reference, or a supply, is there
	if n.reference >= 0 {
		fed[s.root(n.reference)] = true
	}
	for _, g := range n.supplies {
		if g.supplying(s) {
			fed[s.root(n.branches[g.output()].b)] = true
		}
	}
	p.root = make([]int32, n.buses)
	p.against = make([]int32, n.buses)
	for bus := range n.buses {
		root := s.root(bus)
		p.root[bus], p.against[bus] = root, -1
		if fed[root] {
			p.against[bus] = s.ground[root]
		}
	}
}

// powerResidual adds up v i over all branches, which by Tellegen's theorem gives nothing,
// against what branches deliver.
func (s *solving) powerResidual() float64 {
	sum, delivered := 0.0, 0.0
	for i, amps := range s.amps {
		watts := s.volts[i] * amps
		sum += watts
		delivered += max(-watts, 0)
	}
	return math.Abs(sum) / max(delivered, leastCurrent)
}

// bus is the bus of a node; -1 for what is no node.
func (p *Point) bus(n wiring.NodeID) int32 {
	if n < 0 || int(n) >= len(p.net.busOf) {
		return -1
	}
	return p.net.busOf[n]
}

// difference is the voltage of bus a against bus b.
func (p *Point) difference(a, b int32) float64 {
	return (p.hi[a] - p.hi[b]) + (p.lo[a] - p.lo[b])
}

// ReferenceNode is the node that voltages are counted from: the point pack-, else the
// negative of the source with the highest voltage; NoNode without either.
func (p *Point) ReferenceNode() wiring.NodeID { return p.net.referenceNode }

// Volts is the voltage of a node against the reference node; 0 for a floating node.
func (p *Point) Volts(n wiring.NodeID) quantity.Volt {
	return p.Across(n, p.net.referenceNode)
}

// Floating reports whether nothing joins the node to the reference node.
func (p *Point) Floating(n wiring.NodeID) bool { return !p.Joined(n, p.net.referenceNode) }

// Across is the voltage of a against b. Between two nodes that nothing joins it is 0.
func (p *Point) Across(a, b wiring.NodeID) quantity.Volt {
	if !p.Joined(a, b) {
		return 0
	}
	return quantity.Volt(quiet(p.difference(p.bus(a), p.bus(b))))
}

// Joined reports whether branches that are not open join two nodes, so that there is a
// definite voltage between them.
func (p *Point) Joined(a, b wiring.NodeID) bool {
	i, j := p.bus(a), p.bus(b)
	return i >= 0 && j >= 0 && p.root[i] == p.root[j]
}

// Against is the node that a reading at n is taken against: the reference node, for a node
// of an isolated side the negative of the supply that feeds it, and NoNode for a node that
// floats without any supply.
func (p *Point) Against(n wiring.NodeID) wiring.NodeID {
	i := p.bus(n)
	if i < 0 || p.against[i] < 0 {
		return wiring.NoNode
	}
	if p.against[i] == p.net.reference {
		return p.net.referenceNode
	}
	return p.net.nodeOf(p.against[i])
}

// nodeOf is the first node of a bus that is a terminal, else the first.
func (n *Network) nodeOf(bus int32) wiring.NodeID {
	first := wiring.NoNode
	for i, b := range n.busOf {
		if b != bus {
			continue
		}
		if n.harness.Nodes[i].Terminal != nil {
			return wiring.NodeID(i)
		}
		if first == wiring.NoNode {
			first = wiring.NodeID(i)
		}
	}
	return first
}
