package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

var sourceType = elementType{
	name: "source",
	doc:  "A battery: its open-circuit voltage behind its ohms; open while its condition does not hold, or once it has carried more than `trips`, either way.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "[positive, negative]"},
		{name: "volts", shape: aQuantity, dim: quantity.Voltage, doc: "a fixed open-circuit voltage; or chemistry and cells"},
		{name: "chemistry", shape: aWord, words: []string{"LFP", "lead-acid"}, doc: "open-circuit voltage from the handbook's curve for the state of charge"},
		{name: "cells", shape: aCount, doc: "cells in series"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, need: true, doc: "internal resistance"},
		{name: "trips", shape: aQuantity, dim: quantity.Current, def: "never", doc: "its protection opens above this current"},
		{name: "when", shape: aCondition, def: "always", doc: "in circuit while this holds"},
		{name: "capacity", shape: aQuantity, dim: quantity.Charge, rule: true, doc: "ampere-hours"},
		{name: "discharge", shape: aQuantity, dim: quantity.Current, rule: true, doc: "continuous discharge"},
		{name: "peak", shape: forPair, dim: quantity.Current, rule: true, doc: "what it gives for a time"},
		{name: "charge", shape: aQuantity, dim: quantity.Current, rule: true, doc: "most charging current"},
		{name: "low", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "lowest voltage of the whole source"},
		{name: "high", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "highest voltage of the whole source"},
		{name: "cold", shape: aWord, words: []string{"blocks", "heats", "takes"}, rule: true, doc: "what it does with charge below freezing: blocks it, warms itself first, or takes it"},
		{name: "wakes", shape: aWord, words: []string{"charger", "button", "itself"}, rule: true, doc: "what wakes it once its protection has gone to sleep"},
		{name: "charge-port", shape: oneNode, def: "its posts", rule: true, doc: "where a charger belongs"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		s := &wiring.Source{ElementBase: a.base, A: x, B: y, Volts: quantity.Volt(a.quantity("volts")),
			Chemistry: a.word("chemistry"), Cells: a.count("cells"), Ohms: quantity.Ohm(a.quantity("ohms")),
			Trips: quantity.Ampere(a.quantity("trips")), When: a.when("when"),
			Capacity:  quantity.AmpereHour(a.quantity("capacity")),
			Discharge: quantity.Ampere(a.quantity("discharge")), Peak: a.burst("peak"),
			Charge: quantity.Ampere(a.quantity("charge")), Low: quantity.Volt(a.quantity("low")), High: quantity.Volt(a.quantity("high")),
			Cold: a.word("cold"), Wakes: a.word("wakes"), Port: max(a.node("charge-port"), wiring.FrameNode)}
		a.needOne(s.Volts > 0 || s.Chemistry != "" && s.Cells > 0, "a source needs volts, or chemistry and cells")
		return s
	},
}
