package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var loadType = elementType{
	name: "load",
	doc:  "A consumer. `watts: P at V` and `ohms`: a resistor. `watts: P`: constant power within `works`, below it the resistor low²/P. `amps`: constant current within `works`, below it the resistor low/I. Reversed: the mirror image, or open if polarised. On when its condition holds and the voltage is at least the low end of `works`; without `works` (ohms only), above 0.1 V.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends, positive first"},
		{name: "works", shape: aBand, doc: "voltages at which it works; may be left out with ohms"},
		{name: "watts", shape: quantityAt, dim: quantity.Power, doc: "constant power; or `P at V`, the power of a resistor at a voltage"},
		{name: "amps", shape: aQuantity, dim: quantity.Current, doc: "constant current"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, doc: "resistance"},
		{name: "polarised", shape: aTruth, def: "no", doc: "takes nothing the wrong way round"},
		{name: "when", shape: aCondition, def: "always", doc: "takes current while this holds"},
		{name: "most", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "most voltage that it survives"},
		{name: "inrush", shape: forPair, dim: quantity.Current, rule: true, doc: "current at switch-on, and for how long"},
		{name: "peak", shape: forPair, dim: quantity.Current, rule: true, doc: "most current, and for how long"},
		{name: "duty", shape: aQuantity, dim: quantity.Share, upTo: 1, rule: true, doc: "share of the time that it is on"},
		{name: "reads", shape: aWord, words: []string{"LFP", "lead-acid"}, rule: true, doc: "of a gauge: the chemistry whose voltage it shows as charge"},
	},
	build: buildLoad,
}

func buildLoad(a *args) wiring.Element {
	x, y := a.pair("between")
	l := &wiring.Load{ElementBase: a.base, A: x, B: y, Works: a.band("works"), Polarised: a.truth("polarised"),
		When: a.when("when"), Most: quantity.Volt(a.quantity("most")), Inrush: a.burst("inrush"),
		Peak: a.burst("peak"), Duty: quantity.Ratio(a.quantity("duty")), Reads: a.word("reads")}
	if watts, volts, ok := a.two("watts"); ok {
		l.Law, l.Ohms = wiring.Resistive, quantity.Ohm(volts*volts/watts)
	} else if watts := a.quantity("watts"); watts > 0 {
		l.Law, l.Watts = wiring.ConstantPower, quantity.Watt(watts)
	} else if amps := a.quantity("amps"); amps > 0 {
		l.Law, l.Amps = wiring.ConstantCurrent, quantity.Ampere(amps)
	} else if ohms := a.quantity("ohms"); ohms > 0 {
		l.Law, l.Ohms = wiring.Resistive, quantity.Ohm(ohms)
	}
	a.needOne(l.Law != 0, "a load needs watts, amps or ohms")
	if l.Law == wiring.ConstantPower || l.Law == wiring.ConstantCurrent {
		a.needOne(l.Works.High > 0, "a load of constant power or current needs works, such as 10 V to 15 V")
	}
	return l
}
