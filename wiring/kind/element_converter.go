package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Defaults of a converter, typical of reducers: common practice, no published source.
const (
	startsAbove         = 1.02 // of the low end of works
	converterEfficiency = 0.9
)

var converterType = elementType{
	name: "converter",
	doc:  "Runs from input ≥ starts, while its condition holds, until the input is below the low or above the high end of `works`. Output: volts behind 5 mohm, at most amps, never taking current. Input: output power / efficiency + idle × V. Not running: standby. Isolated unless input and output share a node or a link.",
	params: []param{
		{name: "in", shape: twoNodes, need: true, doc: "[positive, negative]"},
		{name: "out", shape: twoNodes, need: true, doc: "[positive, negative]"},
		{name: "volts", shape: aQuantity, dim: quantity.Voltage, need: true, doc: "regulated output"},
		{name: "amps", shape: aQuantity, dim: quantity.Current, need: true, doc: "limit of the output current"},
		{name: "works", shape: aBand, need: true, doc: "input voltages at which it works"},
		{name: "starts", shape: aQuantity, dim: quantity.Voltage, def: "2 % above the low end of works", doc: "input voltage at which it starts"},
		{name: "when", shape: aCondition, def: "always", doc: "may run while this holds"},
		{name: "efficiency", shape: aQuantity, dim: quantity.Share, upTo: 1, def: "90 %", doc: "output power of input power"},
		{name: "idle", shape: aQuantity, dim: quantity.Current, zero: true, def: "0", doc: "input current of its own while running"},
		{name: "standby", shape: aQuantity, dim: quantity.Current, zero: true, def: "0", doc: "input current while not running"},
		{name: "shares", shape: aTruth, def: "no", rule: true, doc: "its output may stand on one bus with another source"},
	},
	build: func(a *args) wiring.Element {
		inA, inB := a.pair("in")
		outA, outB := a.pair("out")
		c := &wiring.Converter{ElementBase: a.base, InA: inA, InB: inB, OutA: outA, OutB: outB,
			Volts: quantity.Volt(a.quantity("volts")), Amps: quantity.Ampere(a.quantity("amps")),
			Works: a.band("works"), When: a.when("when"), Efficiency: quantity.Ratio(a.quantityOr("efficiency", converterEfficiency)),
			Idle: quantity.Ampere(a.quantity("idle")), Standby: quantity.Ampere(a.quantity("standby")), Shares: a.truth("shares")}
		c.Starts = quantity.Volt(a.quantityOr("starts", startsAbove*float64(c.Works.Low)))
		if !a.incomplete && (c.Starts < c.Works.Low || c.Starts > c.Works.High) {
			a.fault(fmt.Sprintf("it starts at %s, and works from %s to %s", c.Starts, c.Works.Low, c.Works.High), "starts", "works")
		}
		return c
	},
}
