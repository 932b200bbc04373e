package position

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// SettlesEverywhere says that every position has an operating point: no relay chatters, no
// supply hiccups.
func SettlesEverywhere() *Property {
	return &Property{
		ID:        "settles-everywhere",
		Title:     "every position settles",
		Means:     "In no position do elements alternate without end, and none is without an operating point.",
		Unsettled: true,
		Judge:     judgeSettles,
	}
}

func judgeSettles(c *Cart, p *settle.Point) []Violation {
	if p.Outcome == settle.Settled {
		return nil
	}
	v := Violation{Subject: p.Outcome.String(), Says: sentence(p.Why)}
	if len(p.Cycle) > 0 {
		var refs []string
		for _, e := range p.Cycle {
			refs = append(refs, e.Base().Ref())
		}
		v.Subject, v.Element = strings.Join(refs, ", "), p.Cycle[0]
		v.Ways = func() []Way { return c.waysOf(p, p.Cycle) }
	}
	return []Violation{v}
}

// waysOf tells how current comes to each of some elements that watch a voltage, in the
// last network that was solved.
func (c *Cart) waysOf(p *settle.Point, elements []wiring.Element) []Way {
	var ways []Way
	for _, e := range elements {
		high, low, ok := highAndLow(p, e)
		if !ok {
			continue
		}
		if way, ok := c.circuit(low, high, flows(p, e)); ok {
			way.What = e.Base().Ref()
			ways = append(ways, way)
		}
	}
	return ways
}

// sentence makes a sentence of a reason.
func sentence(why string) string {
	if why == "" {
		return "It has no operating point."
	}
	return strings.ToUpper(why[:1]) + why[1:] + "."
}
