package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var chargerType = elementType{
	name: "charger",
	doc:  "Runs while AC is present (if `ac` is given) and its condition holds: amps until the voltage reaches end, then end behind 10 mohm; it never takes current. Not running: a load of `standby` at its output, working down to half of end.",
	params: []param{
		{name: "out", shape: twoNodes, need: true, doc: "[positive, negative]"},
		{name: "amps", shape: aQuantity, dim: quantity.Current, need: true, doc: "constant current"},
		{name: "end", shape: aQuantity, dim: quantity.Voltage, need: true, doc: "end-of-charge voltage"},
		{name: "ac", shape: twoNodes, doc: "[L, N]; without it no AC is needed here"},
		{name: "when", shape: aCondition, def: "always", doc: "may run while this holds"},
		{name: "standby", shape: aQuantity, dim: quantity.Current, zero: true, def: "0", doc: "drawn from the output while not running"},
		{name: "takes", shape: aQuantity, dim: quantity.Power, rule: true, doc: "AC power at full output"},
		{name: "efficiency", shape: aQuantity, dim: quantity.Share, upTo: 1, rule: true, doc: "DC out of AC in"},
		{name: "profile", shape: aWord, rule: true, doc: "chemistry that it is made for: LFP, lead-acid"},
		{name: "starts", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "voltage that it must see at its output before it gives current"},
		{name: "wakes", shape: aWord, words: []string{"yes", "no"}, rule: true, doc: "whether it gives voltage to a pack that sleeps and shows none"},
		{name: "pins", shape: aWord, words: []string{"shrouded", "bare"}, rule: true, doc: "of an inlet: how its pins are while nothing is plugged in"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("out")
		l, n := a.pair("ac")
		return &wiring.Charger{ElementBase: a.base, A: x, B: y, Amps: quantity.Ampere(a.quantity("amps")),
			End: quantity.Volt(a.quantity("end")), L: l, N: n, When: a.when("when"),
			Standby: quantity.Ampere(a.quantity("standby")), Takes: quantity.Watt(a.quantity("takes")),
			Efficiency: quantity.Ratio(a.quantity("efficiency")), Profile: a.word("profile"),
			Starts: quantity.Volt(a.quantity("starts")), Wakes: a.word("wakes"), Pins: a.word("pins")}
	},
}
