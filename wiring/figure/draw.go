package figure

import (
	"math"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Draw is a part's share of the current out of a pack: the power that the part uses or
// loses, over the pack's voltage.
type Draw struct {
	Part *wiring.Part
	Amps quantity.Ampere
}

// leastDraw is the smallest share that is listed, 50 µA: a two-hundredth of an
// ampere-hour in four days.
const leastDraw = 50e-6

// draws lists what the parts draw from a pack, the most first. The shares add up to the
// pack's current, but for the heat of wires and fuses.
func (c *Cart) draws(p *settle.Point, pack *wiring.Source) []Draw {
	volts := float64(p.ElementVolts(pack))
	if !(volts > 0) {
		return nil
	}
	var all []Draw
	for _, part := range c.harness.Parts {
		watts := 0.0
		for _, e := range part.Elements {
			if _, ok := e.(*wiring.Source); !ok {
				watts += math.Max(0, float64(p.Watts(e)))
			}
		}
		if amps := watts / volts; amps >= leastDraw {
			all = append(all, Draw{part, quantity.Ampere(amps)})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Amps > all[j].Amps })
	return all
}
