package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var coilType = elementType{
	name: "coil",
	doc:  "Its ohms; energised once the voltage reaches pull-in, released once it is below drop-out, either way round unless polarised. With hold (an economiser), while energised: a load of that many watts that works down to drop-out.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, need: true, doc: "resistance of the winding, cold"},
		{name: "pull-in", shape: aQuantity, dim: quantity.Voltage, need: true, doc: "energised from here up"},
		{name: "drop-out", shape: aQuantity, dim: quantity.Voltage, need: true, doc: "released below"},
		{name: "hold", shape: aQuantity, dim: quantity.Power, def: "none", doc: "what an economiser holds it with"},
		{name: "polarised", shape: aTruth, def: "no", doc: "works one way round only"},
		{name: "suppressed", shape: aTruth, def: "no", rule: true, doc: "its suppression is built in"},
		{name: "nominal", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "the voltage that it is named for"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		c := &wiring.Coil{ElementBase: a.base, A: x, B: y, Ohms: quantity.Ohm(a.quantity("ohms")),
			PullIn: quantity.Volt(a.quantity("pull-in")), DropOut: quantity.Volt(a.quantity("drop-out")),
			Hold: quantity.Watt(a.quantity("hold")), Polarised: a.truth("polarised"), Suppressed: a.truth("suppressed"),
			Nominal: quantity.Volt(a.quantity("nominal"))}
		if c.DropOut > c.PullIn {
			a.fault(fmt.Sprintf("it is released below %s and energised from %s up: drop-out is the lower of the two", c.DropOut, c.PullIn),
				"drop-out", "pull-in")
		}
		return c
	},
}
