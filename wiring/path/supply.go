package path

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Supply is something that drives current out of a node: a battery, a charger, the output
// of a converter.
type Supply struct {
	Element     wiring.Element // Source, Charger or Converter
	Plus, Minus wiring.NodeID
	Limit       quantity.Ampere // most that it gives; Unlimited for a battery
	Base        Volts           // of Minus against the bottom of the string that it stands on
	Own         Volts           // of Plus against Minus
	Bottom      wiring.NodeID   // the negative that Base counts from; Minus if it stands alone
	Under       []*Supply       // the batteries that it stands on, from the next one down
	island      int             // supplies with a common negative have one number
}

// Volts is what a supply gives by its state of charge; the same four times for one that is
// regulated.
type Volts struct{ Floor, Middle, Rested, Full quantity.Volt }

// Top is the voltage of Plus against Bottom.
func (s *Supply) Top() Volts { return s.Base.plus(s.Own) }

// Negatives lists the nodes to which current of the supply can come back: its own
// negative, and those of the batteries that it stands on.
func (s *Supply) Negatives() []wiring.NodeID {
	nodes := []wiring.NodeID{s.Minus}
	for _, u := range s.Under {
		nodes = append(nodes, u.Minus)
	}
	return nodes
}

// Battery reports whether the supply is a battery, whose current only a fuse limits.
func (s *Supply) Battery() bool { _, ok := s.Element.(*wiring.Source); return ok }

// SameNegative reports whether two supplies count their voltages from one negative, so
// that they may be compared.
func (s *Supply) SameNegative(o *Supply) bool { return s.island == o.island }

func (v Volts) plus(w Volts) Volts {
	return Volts{v.Floor + w.Floor, v.Middle + w.Middle, v.Rested + w.Rested, v.Full + w.Full}
}

// Cells gives the voltages of one cell of a chemistry, and false if it is not known.
type Cells func(chemistry string) (Volts, bool)

// Supplies lists the supplies of the harness, batteries first, in the order of their
// parts, and finds how batteries stand on each other in series. Batteries of unknown
// voltage have zero Own.
func (g *Graph) Supplies(cells Cells) []*Supply {
	var batteries, others []*Supply
	for _, p := range g.Harness.Parts {
		for _, el := range p.Elements {
			switch el := el.(type) {
			case *wiring.Source:
				batteries = append(batteries, &Supply{Element: el, Plus: el.A, Minus: el.B, Limit: Unlimited, Own: batteryVolts(el, cells)})
			case *wiring.Charger:
				others = append(others, &Supply{Element: el, Plus: el.A, Minus: el.B, Limit: el.Amps, Own: steady(el.End)})
			case *wiring.Converter:
				others = append(others, &Supply{Element: el, Plus: el.OutA, Minus: el.OutB, Limit: el.Amps, Own: steady(el.Volts)})
			}
		}
	}
	all := append(batteries, others...)
	g.stack(all)
	return all
}

func batteryVolts(s *wiring.Source, cells Cells) Volts {
	if s.Volts != 0 {
		return steady(s.Volts)
	}
	v, ok := cells(s.Chemistry)
	if !ok {
		return Volts{}
	}
	n := quantity.Volt(s.Cells)
	return Volts{v.Floor * n, v.Middle * n, v.Rested * n, v.Full * n}
}

func steady(v quantity.Volt) Volts { return Volts{v, v, v, v} }

// stack gives every supply its Base and Bottom. Nodes that metal can join count as one;
// batteries then lift the group of their positive above that of their negative.
func (g *Graph) stack(all []*Supply) {
	group := g.groups(Through{Sorts: Metal})
	at := func(n wiring.NodeID) int32 {
		if g.has(n) {
			return group[n]
		}
		return -1
	}
	for _, s := range all {
		s.Bottom, s.Base = s.Minus, Volts{}
		seen := map[*Supply]bool{s: true}
		for below := under(all, at, at(s.Minus), seen); below != nil; below = under(all, at, at(s.Bottom), seen) {
			s.Base = s.Base.plus(below.Own)
			s.Bottom = below.Minus
			s.Under = append(s.Under, below)
		}
		s.island = int(at(s.Bottom))
	}
}

// under finds a battery whose positive is in a group that holds no battery's negative as
// its own bottom yet; each battery counts once, so a ring of batteries ends.
func under(all []*Supply, at func(wiring.NodeID) int32, group int32, seen map[*Supply]bool) *Supply {
	for _, s := range all {
		if s.Battery() && !seen[s] && at(s.Plus) == group && at(s.Minus) != group {
			seen[s] = true
			return s
		}
	}
	return nil
}
