package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var capacitorType = elementType{
	name: "capacitor",
	doc:  "Open; pre-charge is computed in closed form.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends, positive first"},
		{name: "farads", shape: aQuantity, dim: quantity.Capacitance, need: true, doc: "its capacitance"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		return &wiring.Capacitor{ElementBase: a.base, A: x, B: y, Farads: quantity.Farad(a.quantity("farads"))}
	},
}
