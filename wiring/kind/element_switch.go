package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// switchOhms is the resistance of one closed way: common practice, no published source.
const switchOhms = 5e-3

var switchType = elementType{
	name: "switch",
	doc:  "In each position the first node of a group is joined to each other one by its ohms; a position that is not listed is open.",
	params: []param{
		{name: "control", shape: aControl, need: true, doc: "the control that works it"},
		{name: "closes", shape: someWays, need: true, doc: "{POSITION: [a, b, …]} or {POSITION: [[a, b], [c, d]]}"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "5 mohm", doc: "resistance of a closed way"},
		{name: "rated", shape: atPair, dim: quantity.Current, rule: true, doc: "what it may carry and break"},
	},
	build: func(a *args) wiring.Element {
		return &wiring.Switch{ElementBase: a.base, Control: a.control("control"), Closes: a.ways("closes"),
			Ohms: quantity.Ohm(a.quantityOr("ohms", switchOhms)), Rated: a.rated("rated")}
	},
}
