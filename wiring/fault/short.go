package fault

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// chafed is the resistance of bare copper on bare copper under the weight of a loom: a
// value of our own.
const chafed quantity.Ohm = 0.005

func shortToNegative() *Mode {
	return &Mode{
		ID: "short-to-negative", Title: "chafed through to negative", Class: Occasional,
		Why: "two wires rubbed through in one loom, or a lug turned on to its neighbour",
		Find: func(c *Cart) []Fault {
			if c.ground == wiring.NoNode {
				return nil
			}
			return c.shorts(c.ground, "chafed through to negative")
		},
	}
}

func shortToFrame() *Mode {
	return &Mode{
		ID: "short-to-frame", Title: "chafed through to the frame", Class: Occasional,
		Why: "a wire over an edge without a grommet",
		Find: func(c *Cart) []Fault {
			return c.shorts(wiring.FrameNode, "chafed through to the frame")
		},
	}
}

// shorts makes a fault of every net that is not joined to a node anyway. Its wires are one
// piece of copper: which of them is chafed makes no difference to a meter.
func (c *Cart) shorts(to wiring.NodeID, how string) []Fault {
	var all []Fault
	nets, _ := c.Harness.Nets()
	for _, net := range nets {
		if len(net.Wires) == 0 || net.Wires[0].Cord() || c.Graph.SameCopper(net.Nodes[0], to) {
			continue
		}
		all = append(all, Fault{
			Name: names(net.Wires) + " " + how, Wires: net.Wires,
			Defects: []settle.Defect{settle.Bridge(net.Nodes[0], to, chafed)},
		})
	}
	return all
}

func names(wires []*wiring.Wire) string {
	var all []string
	for _, w := range wires {
		all = append(all, w.Name())
	}
	return strings.Join(all, ", ")
}
