package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// contactOhms is the resistance of a closed contact: common practice, no published source.
const contactOhms = 0.5e-3

var contactType = elementType{
	name: "contact",
	doc:  "Its ohms, or open; it leaves `rest` while its coil is energised.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "coil", shape: aReference, need: true, doc: "name of the coil that moves it"},
		{name: "rest", shape: aWord, words: []string{"open", "closed"}, def: "open", doc: "how it stands while the coil is not energised"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "0.5 mohm", doc: "resistance while closed"},
		{name: "rated", shape: atPair, dim: quantity.Current, rule: true, doc: "what it may carry and break"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		c := &wiring.Contact{ElementBase: a.base, A: x, B: y, RestClosed: a.word("rest") == "closed",
			Ohms: quantity.Ohm(a.quantityOr("ohms", contactOhms)), Rated: a.rated("rated")}
		a.later(func() (ok bool) {
			c.Coil, ok = a.reference("coil").(*wiring.Coil)
			return ok
		})
		return c
	},
}
