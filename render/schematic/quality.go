package schematic

import (
	"github.com/lugwright/lugwright/render/label"
)

// What a finished sheet costs, in units of wire.
const (
	costUnrouted   = 1000
	costUnlabelled = 200
	costUnmarked   = 120 // the name of a terminal or bar without a place
	costCrossing   = 60
	costBend       = 12
	heavyBends     = 3  // times, on a traction cable
	costCrooked    = 30 // for each bend of a wire after the fourth
	fewBends       = 4
	costClash      = 500 // two items that touch
)

// quality judges a finished sheet: the lower, the easier to read.
func (k *desk) quality(c *composed) float64 {
	d := k.d
	q := costUnrouted*float64(len(c.routes.Failed)) + costCrossing*float64(c.routes.Crossing)
	for w, path := range c.routes.Paths {
		if path == nil {
			continue
		}
		bend := float64(costBend)
		if d.Wires[w].Weight >= heavyWeight {
			bend *= heavyBends
		}
		q += bend*float64(len(path)-2) + costCrooked*float64(max(0, len(path)-2-fewBends))
		for i := 1; i < len(path); i++ {
			q += abs(float64(path[i].X-path[i-1].X)) + abs(float64(path[i].Y-path[i-1].Y))
		}
	}
	for _, m := range c.labels.Missing {
		if m.Kind == label.OfWire {
			q += costUnlabelled
		} else {
			q += costUnmarked
		}
	}
	for _, l := range c.labels.Labels {
		q += l.Cost
	}
	return q + costClash*float64(c.clashes)
}
