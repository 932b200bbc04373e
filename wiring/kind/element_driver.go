package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// driverOhms is the resistance of a closed transistor switch; from memory.
const driverOhms = 0.02

var driverType = elementType{
	name: "driver",
	doc:  "An electronic switch: its ohms while its condition holds, both ways, else open.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "when", shape: aCondition, need: true, doc: "closed while this holds"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "20 mohm", doc: "resistance while closed"},
		{name: "rated", shape: atPair, dim: quantity.Current, rule: true, doc: "what it may carry and stand"},
		{name: "peak", shape: forPair, dim: quantity.Current, rule: true, doc: "most current, and for how long"},
		{name: "duty", shape: aQuantity, dim: quantity.Share, upTo: 1, rule: true, doc: "share of the time that it is closed"},
		{name: "least", shape: aQuantity, dim: quantity.Current, rule: true, doc: "of a flasher: below it, it flashes fast or not at all"},
		{name: "regen", shape: aQuantity, dim: quantity.Current, rule: true, doc: "of a drive: most current that braking pushes back into the battery"},
		{name: "holds", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "of a drive: braking is cut back so that the bus stays below this"},
		{name: "cuts", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "of a drive: it stops driving below this"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		return &wiring.Driver{ElementBase: a.base, A: x, B: y, When: a.when("when"),
			Ohms: quantity.Ohm(a.quantityOr("ohms", driverOhms)), Rated: a.rated("rated"), Peak: a.burst("peak"),
			Duty: quantity.Ratio(a.quantity("duty")), Least: quantity.Ampere(a.quantity("least")),
			Regen: quantity.Ampere(a.quantity("regen")), Holds: quantity.Volt(a.quantity("holds")), Cuts: quantity.Volt(a.quantity("cuts"))}
	},
}
