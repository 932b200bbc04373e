package settle

import (
	"sync"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle/internal/sparse"
)

// Network is a harness made ready for settling. It is built once and never changes, so
// many goroutines may settle states of it at the same time.
type Network struct {
	harness *wiring.Harness

	busOf         []int32 // by NodeID
	buses         int32
	reference     int32 // bus; -1: none
	referenceNode wiring.NodeID

	branches  []branch // the wires' first
	wireLaws  []law    // of those
	wireFirst []int32  // by wire: its first branch; one more at the end
	wireOhms  []float64
	wireKnown []bool
	wireOf    map[*wiring.Wire]int32

	models    []model
	modelOf   map[wiring.Element]int32
	bendings  []bending
	couplings []coupling
	mains     []*mains
	controls  []*wiring.Control
	controlOf map[*wiring.Control]int32
	forced    []forcing // by model: what a defect makes of it; nil without defects
	bridges   []law     // of the last branches, which defects add
	defects   []Defect

	net      []int32 // by bus: buses that wires join have the same
	nets     int32
	supplies []delivering
	acWays   []acWay

	pattern *sparse.Pattern
	room    sync.Pool // of *solving
}

// Harness is what the network was compiled from.
func (n *Network) Harness() *wiring.Harness { return n.harness }

// findReference sets the reference: the point pack-, else the negative of the source with
// the highest voltage, the first of several.
func (c *compiler) findReference() {
	c.reference, c.referenceNode = -1, wiring.NoNode
	if p, ok := c.harness.Point("pack-"); ok && p.Terminal != nil && c.isNode(p.Terminal.Node) {
		c.setReference(p.Terminal.Node)
		return
	}
	best := 0.0
	for _, m := range c.models {
		g, ok := m.(*source)
		if !ok || !c.isNode(g.e.B) {
			continue
		}
		if volts := float64(OpenCircuit(g.e, c.harness.Assume.SOC)); c.reference < 0 || volts > best {
			best = volts
			c.setReference(g.e.B)
		}
	}
}

func (c *compiler) setReference(n wiring.NodeID) {
	c.reference, c.referenceNode = c.busOf[n], n
}

// findNets numbers the sets of buses that wires join. Wires never open, so that what
// hangs together can be found among nets, which are fewer.
func (c *compiler) findNets() {
	joined := newDisjoint(int(c.buses))
	for i := range c.wireLaws {
		if c.wireLaws[i].conducts() {
			joined.join(c.branches[i].a, c.branches[i].b)
		}
	}
	c.net = make([]int32, c.buses)
	for bus := range c.net {
		if root := joined.find(int32(bus)); root == int32(bus) {
			c.net[bus] = c.nets
			c.nets++
		} else {
			c.net[bus] = c.net[root]
		}
	}
	for _, m := range c.models {
		if g, ok := m.(delivering); ok {
			c.supplies = append(c.supplies, g)
		}
	}
}
