package meter

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Waits begin to matter to a person with a meter at this time, and end when the capacitor
// is so near to its final voltage. Our own choice.
const (
	waitFrom   = quantity.Second(2)
	waitWithin = quantity.Volt(1)
)

// Wait is how long a capacitor needs until the readings around it are true.
type Wait struct {
	Capacitor *wiring.Capacitor
	From, To  quantity.Volt   // from the highest it can have been charged to, or from empty; to its final voltage
	Time      quantity.Second // until it is within 1 V of that
	Spots     []Spot          // the places that read what it holds
}

// Waits lists the capacitors that need 2 s or longer in this state, in the order of parts.
// Each begins at `highest` of it, or empty, whichever takes longer.
func (s *Sheet) Waits(highest func(*wiring.Capacitor) quantity.Volt) []Wait {
	var all []Wait
	for _, p := range s.bench.Harness.Parts {
		for _, e := range p.Elements {
			if c, ok := e.(*wiring.Capacitor); ok {
				if w, matters := s.wait(c, highest(c)); matters {
					all = append(all, w)
				}
			}
		}
	}
	return all
}

func (s *Sheet) wait(c *wiring.Capacitor, highest quantity.Volt) (Wait, bool) {
	charging, ok := s.Point.Charging(c)
	if !ok {
		return Wait{}, false
	}
	w := Wait{Capacitor: c, To: charging.Final}
	for _, from := range []quantity.Volt{0, highest} {
		near := charging.Final + waitWithin
		if from < charging.Final {
			near = charging.Final - waitWithin
		}
		if after, ok := charging.Until(from, near); ok && after > w.Time {
			w.From, w.Time = from, after
		}
	}
	if w.Time < waitFrom {
		return Wait{}, false
	}
	w.Spots = s.around(c)
	return w, true
}

// around lists the places that follow a capacitor: what closed ways join to its positive,
// up to what a supply holds.
func (s *Sheet) around(c *wiring.Capacitor) []Spot {
	t := path.Through{Sorts: path.Conducting | path.Coil | path.Load, Setting: s.closed}
	reach := s.bench.graph.From(t.Until(func(n wiring.NodeID) bool { return s.bench.isReturn(n) || s.stiff.Has(n) }), c.A)
	return slices.DeleteFunc(s.bench.Terminals(), func(spot Spot) bool {
		return !reach.Has(spot.Node) || s.bench.isReturn(spot.Node) || s.stiff.Has(spot.Node) || s.back.Has(spot.Node)
	})
}
