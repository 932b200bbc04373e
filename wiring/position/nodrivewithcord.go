package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// NoDriveWithCord says that the cart cannot move while its plug is in, live or not. A
// lockout that watches for AC does not see the cord in a dead outlet.
func NoDriveWithCord() *Property {
	return &Property{
		ID:      "no-drive-with-cord",
		Title:   "the cart cannot be driven while its cord is in a dead outlet",
		Means:   "With a plug in, no AC, and no charger behind the plug running, no part that moves the cart is on, in any position of all other controls.",
		Premise: pluggedDead,
		Network: func(c *Cart) *settle.Network { return c.Network.With(c.deadOutlet()...) },
		Judge:   func(c *Cart, p *settle.Point) []Violation { return c.driving(p, "with the cord in a dead outlet") },
	}
}

// pluggedDead has each plug in a dead outlet, or in where it has no such position.
func pluggedDead(c *Cart, s *Space) ([]*Space, string) { return c.plugged(s, "dead", "in") }

// deadOutlet takes away what plugs bring in: mains, and chargers off the cart that stand in
// its inlet.
func (c *Cart) deadOutlet() []settle.Defect {
	var dead []settle.Defect
	for _, p := range c.Harness.Parts {
		for _, e := range p.Elements {
			switch e := e.(type) {
			case *wiring.Mains:
				dead = append(dead, settle.OpenElement(e))
			case *wiring.Charger:
				if asksForPlug(e.When) {
					dead = append(dead, settle.OpenElement(e))
				}
			}
		}
	}
	return dead
}

func asksForPlug(when *wiring.Condition) bool {
	asks := false
	eachSetting(when, func(c *wiring.Condition) { asks = asks || c.Control.Name == "plug" })
	return asks
}
