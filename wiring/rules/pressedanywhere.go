package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// withinMaximum says that no position of the switches puts more on anything than it stands.
func withinMaximum() *position.Property {
	return &position.Property{
		ID:    "bus-voltage",
		Title: "nothing sees more than it stands",
		Means: "In no position of the switches do loads, converter inputs and senses see more than their maximum, with the batteries full and rested.",
		Judge: func(c *position.Cart, at *settle.Point) []position.Violation {
			var vs []position.Violation
			for _, t := range pressedIn(c.Harness) {
				if v := quantity.Volt(math.Abs(float64(at.Across(t.a, t.b)))); t.most > 0 && v > t.most {
					vs = append(vs, position.Violation{Subject: t.name(), Element: t.element, Says: fmt.Sprintf("%s sees %s and stands %v.", t.name(), volts(v), t.most)})
				}
			}
			return vs
		},
	}
}

// pressAnywhere notes what sees too much in a position that is none of the cart's states.
func pressAnywhere(p *rule.Pass, things []*pressed) {
	told := map[wiring.Element]bool{}
	for _, t := range things {
		told[t.element] = len(t.over) > 0
	}
	for _, r := range p.Proofs() {
		for _, x := range r.Counterexamples {
			if told[x.Element] {
				continue
			}
			for _, t := range things {
				if t.element == x.Element {
					t.worst, t.overAt, t.over = quantity.Volt(math.Abs(float64(x.Point.Across(t.a, t.b)))), x.Point, []string{x.State.Name}
				}
			}
		}
	}
}
