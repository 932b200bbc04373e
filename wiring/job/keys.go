package job

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// key is one key of the format: what it is called, where it stands, what it takes.
type key struct {
	Name    string
	In      []wiring.LayerKind // the sorts of layer that take it; nil: all
	Shape   string             // what its value looks like
	Doc     string             // one sentence or two
	Example string             // a value, as YAML; empty where Shape says it all
}

// table is a set of keys that stand together.
type table []key

func (t table) find(name string) (key, bool) {
	for _, k := range t {
		if k.Name == name {
			return k, true
		}
	}
	return key{}, false
}

// names lists the keys that a sort of layer takes, "" for all of them.
func (t table) names(in wiring.LayerKind) []string {
	var names []string
	for _, k := range t {
		if in == "" || k.allowed(in) {
			names = append(names, k.Name)
		}
	}
	return names
}

func (k key) allowed(in wiring.LayerKind) bool {
	return k.In == nil || in == "" || slices.Contains(k.In, in)
}

// home names the sorts of layer that take the key: "a job or platform".
func (k key) home() string {
	words := make([]string, len(k.In))
	for i, in := range k.In {
		words[i] = string(in)
	}
	if len(words) > 0 {
		words[0] = article(words[0])
	}
	return orList(words)
}

var (
	jobOnly    = []wiring.LayerKind{wiring.JobLayer}
	shopOnly   = []wiring.LayerKind{wiring.ShopLayer}
	carts      = []wiring.LayerKind{wiring.JobLayer, wiring.PlatformLayer, wiring.KitLayer, wiring.AddonLayer}
	cartsShops = []wiring.LayerKind{wiring.JobLayer, wiring.PlatformLayer, wiring.KitLayer, wiring.AddonLayer, wiring.ShopLayer}
)

// layerKeys stand at the left margin of a layer, in the order in which they are best
// written.
var layerKeys = table{
	{Name: "title", In: jobOnly, Shape: "text", Doc: "What is done to this cart: the title of every sheet.", Example: "Two-seat cart to 16S lithium with lights"},
	{Name: "about", Shape: "text", Doc: "What a reader of the file should know. Printed with the layer, not computed with.", Example: "Invented. Fits platforms of 48 V."},
	{Name: "cart", In: jobOnly, Shape: "text", Doc: "The vehicle: what it is called, its type, its serial number.", Example: "cart 14, two seats, serial 0147"},
	{Name: "customer", In: jobOnly, Shape: "text", Doc: "Whose cart it is.", Example: "Tern Point Links"},
	{Name: "by", In: jobOnly, Shape: "text", Doc: "Who wrote the job (ISO 7200: creator).", Example: "R. Ames"},
	{Name: "approved", In: jobOnly, Shape: "text", Doc: "Who approved it (ISO 7200: approval person).", Example: "L. Quay"},
	{Name: "revisions", In: jobOnly, Shape: "map of revisions by index", Doc: "The history of the job, oldest first.", Example: "{A: {date: 2026-03-02, by: RA, note: first issue}}"},
	{Name: "address", In: shopOnly, Shape: "text", Doc: "The shop's address, for the title block.", Example: "4 Quay Lane, Tern Point"},
	{Name: "phone", In: shopOnly, Shape: "text", Doc: "The shop's telephone number, for the title block.", Example: "ask at the counter"},
	{Name: "use", In: carts, Shape: "list of layers, lowest first", Doc: "The layers that this one stands on: a word is NAME.yaml in platforms/, kits/ or addons/ under the root, then built in; a value that ends in .yaml or .csv is a path from this file.", Example: "[48v-separately-excited, 16s-onboard-charger, ../lists/wires.csv]"},
	{Name: "needs", In: carts, Shape: "map of points to what each is", Doc: "Points that the layer expects of those below it.", Example: "{live-when-on: a terminal with pack voltage only while the cart is on}"},
	{Name: "remove", In: carts, Shape: "list of parts, wires and groups", Doc: "What lower layers have and this cart has no longer. With a part go its leads and every wire both ends of which are on removed parts.", Example: "[G11..G16, W39, old meter]"},
	{Name: "move", In: carts, Shape: "map of points to terminals", Doc: "Every wire of lower layers that lands on the first now lands on the second, and the point with it. `capped` caps those wires.", Example: "{pack+: F1.out, pack-: G1.-}"},
	{Name: "kinds", In: append([]wiring.LayerKind{}, cartsShops...), Shape: "map of kinds by name", Doc: "Sorts of device that only this layer brings."},
	{Name: "parts", In: carts, Shape: "map of parts by designation", Doc: "New parts, with a kind; and changes to parts of lower layers, without one.", Example: "{E1: {kind: light-bar, power: 60 W, place: front}}"},
	{Name: "wires", In: carts, Shape: "map of wires by number, of leads by terminal", Doc: "New wires, with both ends; and changes to wires of lower layers.", Example: "{W71: {from: A1.1, to: S6.in, colour: OG, size: 14 AWG, length: 18 in}}"},
	{Name: "as-built", In: jobOnly, Shape: "map of wires by number, of leads by terminal", Doc: "What was built otherwise than planned: another colour, a length that was cut, an end that landed elsewhere. The cart is judged as built; the plan stays in its line, and sheets can mark what differs.", Example: "{W71: {colour: BU, length: 16 in}}"},
	{Name: "stacks", In: carts, Shape: "map of studs to lists of wires", Doc: "The order of lugs on a stud as built, from the face outwards, all wires of that stud.", Example: "{G1.-: [W7, W52, W38]}"},
	{Name: "points", In: carts, Shape: "map of names to terminals", Doc: "Terminals with names by which kits and add-ons find them; `none` where the cart has no such thing.", Example: "{pack+: G16.+, pack-: G11.-, live-when-on: K1.out, lockout: none}"},
	{Name: "interlock", In: carts, Shape: "map", Doc: "What the interlock lead of this cart needs in order to let it drive.", Example: "{kind: loop, leads: [U1.inhibit, U1.common]}"},
	{Name: "groups", In: carts, Shape: "map of names to lists of parts and wires", Doc: "Lists with a name, for `remove`.", Example: "{old charging: [X11, T11]}"},
	{Name: "places", In: carts, Shape: "map of places by name", Doc: "Where things sit on the vehicle.", Example: "{seat box: {along: 56 in, height: 18 in, ambient: 50 C}}"},
	{Name: "runs", In: carts, Shape: "map of runs by name", Doc: "Ways for wires between two places.", Example: "{tunnel: {from: dash, to: seat box, length: 5 ft}}"},
	{Name: "looms", In: carts, Shape: "map of looms by name", Doc: "What holds wires together: looms, multi-core cables, twisted pairs.", Example: "{main loom: {cover: split tube, runs: [tunnel]}}"},
	{Name: "states", In: []wiring.LayerKind{wiring.JobLayer, wiring.PlatformLayer, wiring.KitLayer, wiring.AddonLayer, wiring.CatalogLayer}, Shape: "map of operating states by name", Doc: "Positions of everything that a hand sets, and what is expected then.", Example: "{night work: {like: ready, S6: on, expect: {E3: on}}}"},
	{Name: "limits", In: cartsShops, Shape: "map", Doc: "What the rules compare against."},
	{Name: "assume", In: cartsShops, Shape: "map", Doc: "What is taken where a job says nothing."},
	{Name: "waivers", In: carts, Shape: "list of waivers", Doc: "Findings that this job lives with, each with the reason.", Example: "[{rule: colour-clear, at: W83, reason: sleeved red at both ends, by: RA}]"},
	{Name: "test-points", In: carts, Shape: "list of terminals", Doc: "Terminals that the readings list first.", Example: "[G1.+, F1.out, T2.enable]"},
}

// useKeys stand in an entry of `use`.
var useKeys = table{
	{Name: "layer", Shape: "word or path", Doc: "The layer.", Example: "work-light"},
	{Name: "suffix", Shape: "one letter", Doc: "Put on the parts, wires and looms that the layer itself defines, so that a layer can be used twice.", Example: "R"},
	{Name: "points", Shape: "map of names to terminals", Doc: "Points that hold for this layer only.", Example: "{channel: A1.2}"},
}

// partKeys stand in every part; all else in a part is a rating of its kind.
var partKeys = table{
	{Name: "kind", Shape: "name of a kind", Doc: "What sort of device it is. Makes a new part.", Example: "light-bar"},
	{Name: "title", Shape: "text", Doc: "What it is on this cart.", Example: "main fuse"},
	{Name: "place", Shape: "name of a place, or none", Doc: "Where it sits.", Example: "seat box"},
	{Name: "note", Shape: "text", Doc: "Anything else that a reader should know.", Example: "with the fins upright"},
	{Name: "serial", Shape: "text", Doc: "The serial number of this unit.", Example: "0147"},
	{Name: "leads", Shape: "map of leads to colour, size, length, lug", Doc: "What this unit's own leads are where they differ from its kind's.", Example: "{enable: {colour: GN, length: 20 in}}"},
	{Name: "always-on", Shape: "the reason", Doc: "Says that the part may draw current with the key off, and why.", Example: "finds the shuttle at night, 20 mA"},
	{Name: "critical", Shape: "true or false", Doc: "Holds the part to the smaller limit of voltage drop.", Example: "true"},
	{Name: "replaces", Shape: "name of a kind", Doc: "The kind that the part had in a lower layer: with `kind`, another device takes its designation. Wires stay on terminals of the same name.", Example: "solenoid"},
}

// wireKeys stand in every wire, and are the columns of a wire list.
var wireKeys = table{
	{Name: "from", Shape: "terminal, point or capped", Doc: "One end. It has no electrical meaning which end is which.", Example: "A1.1"},
	{Name: "to", Shape: "terminal, point or capped", Doc: "The other end.", Example: "S6.in"},
	{Name: "colour", Shape: "colour, or unknown", Doc: "Of the wire that is cut. Where an end is a lead, that is the wire joined to the lead.", Example: "BK/YE"},
	{Name: "size", Shape: "conductor size, unknown or auto", Doc: "Of the wire that is cut. `auto`: computed from the fuse in front of it and from what its consumers may lose, and printed as computed.", Example: "14 AWG"},
	{Name: "length", Shape: "length, or unknown", Doc: "Of the wire that is cut; `about` marks an estimate.", Example: "4 ft 6 in"},
	{Name: "extend", Shape: "map, or a list of maps, outwards", Doc: "Pieces that lengthen a wire which exists.", Example: "{colour: GN/WH, size: 18 AWG, length: 14 in}"},
	{Name: "joint", Shape: "butt, solder, plug or stud", Doc: "How the pieces are joined; butt unless said.", Example: "solder"},
	{Name: "insulation", Shape: "temperature", Doc: "The rating of the insulation; from `assume` unless said.", Example: "105 C"},
	{Name: "volts", Shape: "voltage", Doc: "The voltage rating of the insulation; from `assume` unless said.", Example: "600 V"},
	{Name: "from-lug", Shape: "lug, or none", Doc: "The lug at `from` where it is other than what follows from the terminal.", Example: "ring M6"},
	{Name: "to-lug", Shape: "lug, or none", Doc: "The same at `to`.", Example: "ferrule"},
	{Name: "loom", Shape: "name of a loom, or none", Doc: "What holds it together with others.", Example: "main loom"},
	{Name: "for", Shape: "text", Doc: "What the wire does.", Example: "interlock"},
	{Name: "note", Shape: "text", Doc: "Anything else that a reader should know.", Example: "customer's own wire"},
}

// extendKeys stand in `extend`.
var extendKeys = table{
	{Name: "colour", Shape: "colour", Doc: "Of the piece.", Example: "GN/WH"},
	{Name: "size", Shape: "conductor size or auto", Doc: "Of the piece.", Example: "18 AWG"},
	{Name: "length", Shape: "length, or unknown", Doc: "Of the piece.", Example: "14 in"},
	{Name: "at", Shape: "from or to", Doc: "The end that is lengthened: the one that this entry moves, else `to`, unless said.", Example: "from"},
}

// revisionKeys stand in a revision.
var revisionKeys = table{
	{Name: "date", Shape: "date, ISO 8601", Doc: "The day of issue.", Example: "2026-03-02"},
	{Name: "by", Shape: "text", Doc: "Who made it.", Example: "RA"},
	{Name: "note", Shape: "text", Doc: "What changed.", Example: "first issue"},
}

// interlockKeys stand in `interlock`.
var interlockKeys = table{
	{Name: "kind", Shape: "pack+, feed, return, loop, aux+, closed-when-plugged or none", Doc: "What the lead needs in order to let the cart drive: pack positive, the feed of the key or run switch, pack negative, its two leads joined, the 12 V positive, or nothing at all. `pack+` where a layer gives the point `interlock` and says nothing.", Example: "loop"},
	{Name: "leads", Shape: "list of terminals", Doc: "The cart's own terminals that the interlock leads come from; unless said, the other ends of the wires that land on the point `interlock`.", Example: "[U1.inhibit, U1.common]"},
	{Name: "note", Shape: "text", Doc: "What a reader should know of it.", Example: "the reed opens with the plug"},
}

// placeKeys stand in a place.
var placeKeys = table{
	{Name: "along", Shape: "length", Doc: "From the front bumper.", Example: "56 in"},
	{Name: "height", Shape: "length", Doc: "Above the floor.", Example: "18 in"},
	{Name: "ambient", Shape: "temperature", Doc: "What it is like there; `assume: ambient` unless said.", Example: "50 C"},
}

// runKeys stand in a run.
var runKeys = table{
	{Name: "from", Shape: "name of a place", Doc: "One end.", Example: "dash"},
	{Name: "to", Shape: "name of a place", Doc: "The other end.", Example: "seat box"},
	{Name: "length", Shape: "length", Doc: "The way along the vehicle.", Example: "5 ft"},
}

// loomKeys stand in a loom.
var loomKeys = table{
	{Name: "cover", Shape: "split tube, tape, braid, lacing, sheath or none", Doc: "What is round it. A multi-core cable is a loom with `cover: sheath`.", Example: "split tube"},
	{Name: "colour", Shape: "colour", Doc: "Of the cover.", Example: "BK"},
	{Name: "twisted", Shape: "true or false", Doc: "The wires are twisted round each other.", Example: "true"},
	{Name: "runs", Shape: "list of runs", Doc: "The way that it takes.", Example: "[tunnel]"},
}

// stateKeys stand in a state; all else in a state is a control and its position.
var stateKeys = table{
	{Name: "like", Shape: "name of a state", Doc: "Copies another state, which this one then changes.", Example: "ready"},
	{Name: "after", Shape: "name of a state", Doc: "Begins with what the contacts and senses were in another state; from cold unless said.", Example: "driving"},
	{Name: "soc", Shape: "share", Doc: "The charge of every source; `assume: soc` unless said.", Example: "40 %"},
	{Name: "expect", Shape: "map of parts, or traction, to on or off", Doc: "What must be on or off in this state.", Example: "{E3: on, traction: off}"},
}

// limitKeys stand in `limits`.
var limitKeys = table{
	{Name: "drop", Shape: "share", Doc: "Voltage lost on the way to a critical part; 3 % unless said.", Example: "3 %"},
	{Name: "drop-other", Shape: "share", Doc: "The same for the other parts; 10 % unless said.", Example: "10 %"},
	{Name: "fuse-distance", Shape: "length", Doc: "Wire between a source and its fuse; 7 in unless said.", Example: "7 in"},
	{Name: "key-off", Shape: "current", Doc: "What the cart may draw with the key off; 30 mA unless said.", Example: "30 mA"},
	{Name: "lugs", Shape: "count", Doc: "Lugs on one stud; 4 unless said.", Example: "4"},
}

// assumeKeys stand in `assume`.
var assumeKeys = table{
	{Name: "ambient", Shape: "temperature", Doc: "Of every place that says nothing else; 40 C unless said.", Example: "35 C"},
	{Name: "insulation", Shape: "temperature", Doc: "The rating of every wire that says nothing else. Not stated at all: the rules take the 75 C column and say so.", Example: "105 C"},
	{Name: "volts", Shape: "voltage", Doc: "The voltage rating of the insulation; 60 V unless said.", Example: "60 V"},
	{Name: "slack", Shape: "length", Doc: "Added to the way along the runs where a length is not stated; 12 in unless said.", Example: "12 in"},
	{Name: "soc", Shape: "share", Doc: "State of charge; 80 % unless said.", Example: "80 %"},
	{Name: "conductor", Shape: "temperature", Doc: "Of the copper, for its resistance; 20 C unless said.", Example: "20 C"},
}

// waiverKeys stand in a waiver.
var waiverKeys = table{
	{Name: "rule", Shape: "name of a rule", Doc: "Whose finding it is.", Example: "colour-clear"},
	{Name: "at", Shape: "wire, part or terminal", Doc: "What the finding is about.", Example: "W83"},
	{Name: "reason", Shape: "text", Doc: "Why the job lives with it. Printed.", Example: "sleeved red at both ends"},
	{Name: "by", Shape: "text", Doc: "Who says so.", Example: "RA"},
}
