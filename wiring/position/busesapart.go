package position

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// apart is how much higher than the other the voltage of one of two buses is.
const apart = 1.25

// joiningOhms is the resistance below which two positives count as joined.
const joiningOhms = quantity.Ohm(1000)

// BusesApart says that the positives of two supplies of different voltage, such as 48 V
// and 12 V, are never joined. It is a property of joining, and pruned by independence.
func BusesApart() *Property {
	return &Property{
		ID:    "buses-apart",
		Title: "positives of different voltage are never joined",
		Means: "No way of wires, fuses (whole or not), closed switches, contacts and drivers, diodes in their direction, and resistors of " +
			"together less than 1 kohm leads from the positive of a battery or a converter to that of one whose voltage is lower by a fifth " +
			"or more. Contacts and drivers stand as they do before any fuse opens.",
		Premise: func(c *Cart, s *Space) ([]*Space, string) {
			if len(c.buses) == 0 {
				return nil, "there are no two supplies of different voltage"
			}
			return []*Space{s}, ""
		},
		Prune:     pruneBuses,
		May:       func(c *Cart, s *wiring.State) bool { return c.near(mightBe(s)) },
		Network:   func(c *Cart) *settle.Network { return c.lasting().network },
		Unsettled: true,
		Judge:     judgeBuses,
	}
}

// bus is a pair of supplies whose positives stay apart.
type bus struct{ high, low *path.Supply }

func (b bus) pair() Pair { return Pair{b.high.Plus, b.low.Plus} }

// findBuses lists the pairs of batteries and converters of clearly different voltage. The
// batteries of one string, which stand on each other, are not two buses.
func (c *Cart) findBuses() []bus {
	var all []bus
	for _, high := range c.Supplies {
		for _, low := range c.Supplies {
			if !slices.Contains(high.Under, low) && isBus(high) && isBus(low) && high.Top().Middle > apart*low.Top().Middle {
				all = append(all, bus{high, low})
			}
		}
	}
	return all
}

// isBus leaves out what only charges, and batteries of unknown voltage.
func isBus(s *path.Supply) bool {
	_, charger := s.Element.(*wiring.Charger)
	return !charger && s.Top().Middle > 0
}

// joinsBuses does not go through a negative: what meets there is no positive any more.
func (c *Cart) joinsBuses() Joining {
	return Joining{Sorts: path.Conducting | path.Resistor, Most: joiningOhms, Ends: c.Negative}
}

// near reports whether two positives hang together by whatever might join them. Negatives
// that are no such positive themselves hold nothing together.
func (c *Cart) near(closed path.Setting) bool {
	plus := map[wiring.NodeID]bool{}
	for _, b := range c.buses {
		plus[b.high.Plus], plus[b.low.Plus] = true, true
	}
	j := c.joinsBuses()
	j.Ends = func(n wiring.NodeID) bool { return c.Negative(n) && !plus[n] }
	ways := islands(c.Graph, j.ever(Pair{wiring.NoNode, wiring.NoNode}), closed)
	return slices.ContainsFunc(c.buses, func(b bus) bool { return ways.together(b.high.Plus, b.low.Plus) })
}

func judgeBuses(c *Cart, p *settle.Point) []Violation {
	closed := at(p)
	if !c.near(closed) {
		return nil
	}
	var vs []Violation
	for _, b := range c.buses {
		if way, ohms, ok := c.joinsBuses().Way(c, b.pair(), closed); ok {
			vs = append(vs, c.joined(b, way, ohms))
		}
	}
	return vs
}

func (c *Cart) joined(b bus, way path.Path, ohms quantity.Ohm) Violation {
	high, low := c.Graph.Name(b.high.Plus), c.Graph.Name(b.low.Plus)
	says := fmt.Sprintf("%s (%v) and %s (%v) are joined", high, b.high.Top().Middle, low, b.low.Top().Middle)
	if ohms > 0 {
		says += fmt.Sprintf(" through %v", ohms)
	}
	return Violation{
		Subject: high + ", " + low,
		Says:    says + ".",
		Ways:    func() []Way { return []Way{{Feed: way, Back: c.path(way.End, nil)}} },
	}
}

func pruneBuses(c *Cart, s *Space) ([]*Space, string) {
	var pairs []Pair
	for _, b := range c.buses {
		pairs = append(pairs, b.pair())
	}
	spaces := c.Independent(c.joinsBuses(), pairs, s)
	switch {
	case len(spaces) == 0:
		return nil, "nothing that could ever conduct leads from one positive to the other"
	case len(spaces) == 1 && spaces[0] == s:
		return spaces, "positions in which they stay apart with every contact closed are not settled"
	}
	return spaces, "only the switches between the positives matter, and those on separate ways are independent of each other"
}
