package figure

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// pack is the source with the highest voltage of the cart, the first of several; nil if
// it has none.
func (c *Cart) pack() *wiring.Source {
	var pack *wiring.Source
	best := quantity.Volt(0)
	for _, s := range each[*wiring.Source](c) {
		if v := settle.OpenCircuit(s, 1); pack == nil || v > best {
			pack, best = s, v
		}
	}
	return pack
}
