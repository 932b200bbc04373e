package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Defaults of a sense: common practice, no published source.
const (
	senseOhms     = 1e6
	backFromAbove = 0.9
	backFromBelow = 1.1
)

var senseType = elementType{
	name: "sense",
	doc:  "Its ohms from at to to. True once the voltage reaches above (or falls to below), false once it passes back. With `ac`: true while AC is present, and no branch.",
	params: []param{
		{name: "at", shape: oneNode, doc: "where it measures"},
		{name: "to", shape: oneNode, doc: "against what"},
		{name: "above", shape: aQuantity, dim: quantity.Voltage, doc: "true from here up; this or below"},
		{name: "below", shape: aQuantity, dim: quantity.Voltage, doc: "true from here down"},
		{name: "back", shape: aQuantity, dim: quantity.Voltage, def: "0.9 × above, 1.1 × below", doc: "false again beyond"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "1 Mohm", doc: "its input resistance"},
		{name: "either-way", shape: aTruth, def: "no", doc: "the sign of the voltage does not matter"},
		{name: "most", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "most voltage that it survives"},
		{name: "ac", shape: twoNodes, doc: "[L, N]: watches AC instead"},
	},
	build: buildSense,
}

func buildSense(a *args) wiring.Element {
	if l, n := a.pair("ac"); l != wiring.NoNode {
		return &wiring.Sense{ElementBase: a.base, At: l, To: n, AC: true}
	}
	s := &wiring.Sense{ElementBase: a.base, At: a.node("at"), To: a.node("to"),
		Above: quantity.Volt(a.quantity("above")), Below: quantity.Volt(a.quantity("below")),
		Ohms: quantity.Ohm(a.quantityOr("ohms", senseOhms)), EitherWay: a.truth("either-way"),
		Most: quantity.Volt(a.quantity("most"))}
	s.Back = quantity.Volt(a.quantityOr("back", backFromAbove*float64(s.Above)+backFromBelow*float64(s.Below)))
	a.needOne(a.has("at") && a.has("to"), "a sense needs at and to, or ac")
	a.needOne((s.Above > 0) != (s.Below > 0), "a sense needs above or below, one of the two")
	if s.Above > 0 && s.Back > s.Above || s.Below > 0 && s.Back < s.Below {
		a.fault(fmt.Sprintf("true at %s and false again at %s leaves no room between", s.Above+s.Below, s.Back), "back", "above", "below")
	}
	return s
}
