package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var mainsType = elementType{
	name: "mains",
	doc:  "Live while its condition holds. AC is not solved: it is present between two nodes if conductors, whole fuses and closed switches and contacts join each to a different pole of one live mains.",
	params: []param{
		{name: "poles", shape: twoNodes, need: true, doc: "[L, N]"},
		{name: "volts", shape: aQuantity, dim: quantity.Voltage, doc: "nominal voltage"},
		{name: "amps", shape: aQuantity, dim: quantity.Current, doc: "rating of the circuit or inlet"},
		{name: "when", shape: aCondition, def: "always", doc: "live while this holds"},
	},
	build: func(a *args) wiring.Element {
		l, n := a.pair("poles")
		return &wiring.Mains{ElementBase: a.base, L: l, N: n, Volts: quantity.Volt(a.quantity("volts")),
			Amps: quantity.Ampere(a.quantity("amps")), When: a.when("when")}
	},
}
