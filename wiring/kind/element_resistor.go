package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var resistorType = elementType{
	name: "resistor",
	doc:  "Ohms between two nodes.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, doc: "its resistance; this or watts"},
		{name: "watts", shape: atPair, dim: quantity.Power, doc: "instead of ohms: the power that it takes at a voltage, ohms = V²/P"},
		{name: "heat", shape: aQuantity, dim: quantity.Power, rule: true, doc: "most power that it may turn into heat"},
		{name: "shunt", shape: aTruth, def: "no", rule: true, doc: "a meter counts the current through it: [side of the loads, side of the battery]"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		r := &wiring.Resistor{ElementBase: a.base, A: x, B: y,
			Ohms: quantity.Ohm(a.quantity("ohms")), Heat: quantity.Watt(a.quantity("heat")), Shunt: a.truth("shunt")}
		if watts, volts, ok := a.two("watts"); ok {
			r.Ohms = quantity.Ohm(volts * volts / watts)
		}
		a.needOne(r.Ohms > 0, "a resistor needs ohms or watts")
		return r
	},
}
