package list

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
	"github.com/lugwright/lugwright/wiring/stack"
)

// LargestAmps tells the largest current that a wire carries at any of some operating points,
// whichever way it flows.
func LargestAmps(points []*settle.Point) stack.Amps {
	return func(w *wiring.Wire) quantity.Ampere {
		most := 0.0
		for _, p := range points {
			for pole := range w.Joins() {
				most = max(most, math.Abs(float64(p.WireAmps(w, pole))))
			}
		}
		return quantity.Ampere(most)
	}
}
