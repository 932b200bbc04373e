package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Defaults of a fuse, from memory: a blade fuse must open within minutes at 135 % of its
// rating, and drops about 0.08 V at its rating.
const (
	fuseOpens = quantity.Ratio(1.35)
	fuseDrop  = quantity.Volt(0.08)
)

var fuseType = elementType{
	name: "fuse",
	doc:  "Its ohms while it is whole; open once it has opened, or where a map rating has no entry for the channel.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "rating", shape: aQuantity, dim: quantity.Current, need: true, doc: "its rated current, or `auto`"},
		{name: "style", shape: aWord, doc: "what sort of fuse: blade, 10x38, class T, SF30, SF51, single bolt, breaker"},
		{name: "opens", shape: aQuantity, dim: quantity.Share, def: "135 %, from memory", doc: "share of the rating above which it opens"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "0.08 V / rating, from memory", doc: "its resistance"},
		{name: "volts", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "its rated voltage"},
		{name: "breaks", shape: aQuantity, dim: quantity.Current, rule: true, doc: "its interrupting rating"},
	},
	build: func(a *args) wiring.Element {
		x, y := a.pair("between")
		f := &wiring.Fuse{ElementBase: a.base, A: x, B: y, Channel: a.number, Style: a.word("style"),
			Opens: quantity.Ratio(a.quantityOr("opens", float64(fuseOpens))),
			Ohms:  quantity.Ohm(a.quantity("ohms")), Volts: quantity.Volt(a.quantity("volts")),
			Breaks: quantity.Ampere(a.quantity("breaks"))}
		f.Auto = a.word("rating") == "auto"
		if !f.Auto {
			f.Rating = quantity.Ampere(a.quantity("rating"))
		}
		f.Fitted = f.Auto || f.Rating > 0
		if f.Ohms == 0 && f.Rating > 0 {
			f.Ohms = quantity.Ohm(float64(fuseDrop) / float64(f.Rating))
		}
		return f
	},
}
