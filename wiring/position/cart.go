package position

import (
	"sync"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Cart is a harness made ready for proofs. It does not change and may be used by many
// goroutines at once.
type Cart struct {
	Harness *wiring.Harness
	Network *settle.Network
	Graph   *path.Graph
	// Supplies lists what drives current on the cart, batteries first.
	Supplies []*path.Supply

	negative []bool // by node: copper and fuses join it to the bottom of a supply
	buses    []bus
	lasting  func() *lasting
}

// NewCart prepares a harness that net was compiled from; nil compiles it.
func NewCart(h *wiring.Harness, net *settle.Network) *Cart {
	if net == nil {
		net = settle.Compile(h)
	}
	c := &Cart{Harness: h, Network: net, Graph: path.New(h)}
	c.Supplies = c.Graph.Supplies(cell)
	c.negative = c.negatives()
	c.buses = c.findBuses()
	c.lasting = sync.OnceValue(func() *lasting { return newLasting(h) })
	return c
}

// cell looks the voltages of one cell up. A half-full battery counts as the middle.
func cell(chemistry string) (path.Volts, bool) {
	pack, err := handbook.Default().Pack(chemistry, 1)
	if err != nil {
		return path.Volts{}, false
	}
	return path.Volts{Floor: pack.Floor(), Middle: pack.RestVolts(0.5), Rested: pack.RestedFull(), Full: pack.Full()}, true
}

// negatives finds what copper and fuses join to the bottom of a supply.
func (c *Cart) negatives() []bool {
	var bottoms []wiring.NodeID
	for _, s := range c.Supplies {
		bottoms = append(bottoms, s.Bottom)
	}
	negative := make([]bool, len(c.Harness.Nodes))
	for _, n := range c.Graph.From(path.Through{Sorts: path.Conductors | path.Fuse}, bottoms...).Nodes() {
		negative[n] = true
	}
	return negative
}

// Negative reports whether copper and fuses join a node to the bottom of a supply.
func (c *Cart) Negative(n wiring.NodeID) bool {
	return n >= 0 && int(n) < len(c.negative) && c.negative[n]
}
