package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// fuseOpens is the share of its rating above which a fuse opens for good: a blade fuse
// must open within minutes at 135 %, from memory.
const fuseOpens = 1.35

// fuseDrops is the voltage that a fuse drops at its rating, by style, from which its
// resistance follows: invented, typical, rounded. A 10x38 fuse of 5 A is 30 mohm, a blade
// of 10 A 8 mohm, a class T of 200 A 0.3 mohm.
var fuseDrops = map[string]quantity.Volt{
	"10x38":   0.15,
	"class T": 0.06,
}

const otherFuseDrop = quantity.Volt(0.08)

func fuseDrop(style string) quantity.Volt {
	if drop, ok := fuseDrops[style]; ok {
		return drop
	}
	return otherFuseDrop
}

var fuseType = elementType{
	name: "fuse",
	doc:  "Its ohms while it is whole; open once it has opened, or where a map rating has no entry for the channel.",
	params: []param{
		{name: "between", shape: twoNodes, need: true, doc: "its two ends"},
		{name: "rating", shape: aQuantity, dim: quantity.Current, need: true, auto: true, doc: "its rated current, or `auto`: computed from what is behind it"},
		{name: "style", shape: aWord, doc: "what sort of fuse: `blade`, `10x38`, `class T`, `SF30`, `SF51`, `single bolt`, `breaker`"},
		{name: "opens", shape: aQuantity, dim: quantity.Share, from: 1, def: "135 %, from memory", doc: "share of the rating above which it opens for good"},
		{name: "ohms", shape: aQuantity, dim: quantity.Resistance, def: "0.15 V / rating (10x38), 0.06 V / rating (class T), else 0.08 V / rating", doc: "its resistance"},
		{name: "volts", shape: aQuantity, dim: quantity.Voltage, rule: true, doc: "its rated voltage"},
		{name: "breaks", shape: aQuantity, dim: quantity.Current, rule: true, doc: "its interrupting rating"},
		{name: "holder", shape: aQuantity, dim: quantity.Current, rule: true, doc: "most current that its holder carries"},
	},
	build: buildFuse,
}

func buildFuse(a *args) wiring.Element {
	x, y := a.pair("between")
	f := &wiring.Fuse{ElementBase: a.base, A: x, B: y, Channel: a.number, Auto: a.auto("rating"),
		Rating: quantity.Ampere(a.quantity("rating")), Style: a.word("style"),
		Opens: quantity.Ratio(a.quantityOr("opens", fuseOpens)), Ohms: quantity.Ohm(a.quantity("ohms")),
		Volts: quantity.Volt(a.quantity("volts")), Breaks: quantity.Ampere(a.quantity("breaks")),
		Holder: quantity.Ampere(a.quantity("holder"))}
	f.Fitted = f.Auto || f.Rating > 0
	if f.Ohms == 0 && f.Rating > 0 {
		f.Ohms = FuseOhms(f.Style, f.Rating)
	}
	return f
}

// FuseOhms is the resistance of a fuse that states none, by its style and rating. Invented,
// typical, rounded.
func FuseOhms(style string, rating quantity.Ampere) quantity.Ohm {
	return quantity.Ohm(float64(fuseDrop(style)) / float64(rating))
}
