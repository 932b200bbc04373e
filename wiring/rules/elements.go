package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// elementsOf lists the elements of one type, in the order of parts.
func elementsOf[T wiring.Element](h *wiring.Harness) []T {
	var all []T
	for _, part := range h.Parts {
		for _, el := range part.Elements {
			if el, ok := el.(T); ok {
				all = append(all, el)
			}
		}
	}
	return all
}

// absolute is a current without its direction.
func absolute(a quantity.Ampere) quantity.Ampere { return quantity.Ampere(math.Abs(float64(a))) }

// amps prints a current as an ammeter shows it.
func amps(a quantity.Ampere) string { return fmt.Sprintf("%.3g A", float64(a)) }

// most is the largest current of something over all states and charges, and the state in
// which it flows.
type most struct {
	amps  quantity.Ampere
	state string
}

func (m *most) note(amps quantity.Ampere, s *wiring.State) {
	if amps = absolute(amps); amps > m.amps {
		m.amps, m.state = amps, s.Name
	}
}

// largestAmps finds the largest current of each of some elements.
func largestAmps[T wiring.Element](p *rule.Pass, elements []T) []most {
	all := make([]most, len(elements))
	p.Sweep(func(s *wiring.State, _ rule.Charge, at *settle.Point) {
		for i, el := range elements {
			all[i].note(at.ElementAmps(el), s)
		}
	})
	return all
}

// batteryAt is the battery of the highest voltage whose positive reaches a node by what
// carries a load's current; nil if none does.
func batteryAt(p *rule.Pass, n wiring.NodeID) *path.Supply {
	var found *path.Supply
	for _, s := range p.Supplies() {
		if !s.Battery() || found != nil && found.Top().Full >= s.Top().Full {
			continue
		}
		if p.Graph.From(carrying().Until(p.Negative), s.Plus).Has(n) {
			found = s
		}
	}
	return found
}

// chargersOf lists the chargers whose positive reaches that of a battery, in the order of
// parts.
func chargersOf(p *rule.Pass, battery *path.Supply) []*wiring.Charger {
	var all []*wiring.Charger
	for _, s := range p.Supplies() {
		if c, ok := s.Element.(*wiring.Charger); ok && p.Graph.From(carrying().Until(p.Negative), s.Plus).Has(battery.Plus) {
			all = append(all, c)
		}
	}
	return all
}

// guarded lists the batteries that have electronics of their own which switch them off.
func guarded(p *rule.Pass) []*path.Supply {
	var all []*path.Supply
	for _, s := range p.Supplies() {
		if source, ok := s.Element.(*wiring.Source); ok && source.Chemistry == "LFP" {
			all = append(all, s)
		}
	}
	return all
}
