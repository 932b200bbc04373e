package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// A silicon diode's line through its working range, in volts and ohms; from memory.
const (
	diodeDrop = 0.7
	diodeOhms = 0.01
)

var diodeType = elementType{
	name: "diode",
	doc:  "From anode to cathode: volts = drop + current × ohms; the other way open.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "[anode, cathode]"},
		{name: "drop", shape: aQuantity, dim: quantity.Voltage, zero: true, def: "0.7 V", doc: "forward voltage at no current"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "10 mohm", doc: "forward resistance"},
		{name: "reverse", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "most voltage the wrong way"},
		{name: "amps", shape: aQuantity, dim: quantity.Current, rule: true, doc: "most forward current"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		return &wiring.Diode{ElementBase: a.base, A: x, B: y, Drop: quantity.Volt(a.quantityOr("drop", diodeDrop)),
			Ohms: quantity.Ohm(a.quantityOr("ohms", diodeOhms)), Reverse: quantity.Volt(a.quantity("reverse")),
			Amps: quantity.Ampere(a.quantity("amps"))}
	},
}
