package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// jointWords are the ways in which pieces are joined; the first is the usual one.
var jointWords = []string{"butt", "solder", "plug", "stud"}

// lugWords are what may be on the end of a wire; a size follows the first three.
var lugWords = []string{"ring", "fork", "spade", "pin", "ferrule", "none"}

// mergeWire sets what an entry says of a wire, ends apart. extends is the end that
// `extend` lengthens unless it says otherwise.
func (r *reading) mergeWire(e *entry, w *draftWire, extends side) {
	before := w.said()
	r.mergeKeys(e, w, extends)
	if _, extended := e.f["extend"]; extended || w.said() != before {
		w.wire.Changed = touched(w.wire.Changed, w.origin, e.layer)
	}
}

// said is all that layers have said of a wire, its ends and extensions apart.
type said struct {
	cut              conductor
	joint            string
	insulation       quantity.Celsius
	volts            quantity.Volt
	fromLug, toLug   string
	loom, does, note string
}

func (w *draftWire) said() said {
	return said{
		w.cut, w.joint, w.wire.Insulation, w.wire.Volts, w.lug[from].value, w.lug[to].value,
		w.wire.Loom, w.wire.For, w.wire.Note,
	}
}

func (r *reading) mergeKeys(e *entry, w *draftWire, extends side) {
	r.mergeCut(e, w)
	r.mergeTexts(e, w)
	if n, ok := r.value(e, w, "insulation"); ok {
		w.wire.Insulation = r.amount(n, e.label(n, "insulation"), quantity.Temperature).Celsius()
	}
	if n, ok := r.value(e, w, "volts"); ok {
		w.wire.Volts = r.positive(n, e.label(n, "volts"), quantity.Voltage).Volts()
	}
	if n, ok := r.value(e, w, "joint"); ok {
		w.joint = r.word(n, e.label(n, "joint"), jointWords...)
	}
	for _, s := range []side{from, to} {
		if n, ok := r.value(e, w, s.String()+"-lug"); ok {
			w.lug[s] = field[string]{r.lug(n, e.label(n, s.String()+"-lug")), e.index, true}
		}
	}
	if n, ok := r.value(e, w, "extend"); ok {
		w.extend = field[[]extension]{r.extensions(e, n, extends), e.index, true}
	}
}

// value returns what an entry says under a key, and notes where.
func (r *reading) value(e *entry, w *draftWire, key string) (*source.Node, bool) {
	f, ok := e.f[key]
	if ok {
		w.wire.Where[key] = f.Value.Span
	}
	return f.Value, ok
}

// label is what a message about a value begins with: the key, or the column of a list.
func (e *entry) label(n *source.Node, key string) string {
	if c, ok := e.column[n]; ok {
		return "column " + c + ":"
	}
	return key
}

func (r *reading) mergeCut(e *entry, w *draftWire) {
	if n, ok := r.value(e, w, "colour"); ok {
		w.cut.colour = r.colourOf(e, n)
	}
	if n, ok := r.value(e, w, "size"); ok {
		w.cut.size, w.cut.auto = r.size(n, e.label(n, "size"))
	}
	if n, ok := r.value(e, w, "length"); ok {
		w.cut.length = r.length(n, e.label(n, "length"))
	}
	w.hasCut = w.cut != conductor{}
	for _, key := range []string{"colour", "size", "length"} {
		if n := e.f[key].Value; n != nil && !isUnknown(n) {
			w.cutBy = e.index
		}
	}
}

// colourOf reads a colour; its errors name no key, since a colour can only be one.
func (r *reading) colourOf(e *entry, n *source.Node) colour.Colour {
	text := r.text(n, e.label(n, "colour"))
	if text == "" || isUnknown(n) {
		return colour.Colour{}
	}
	c, err := colour.Parse(text)
	if err == nil {
		return c
	}
	message := err.Error()
	if _, ok := e.column[n]; ok {
		message = e.label(n, "") + " " + message
	}
	r.fault(n.Span, message)
	return colour.Colour{}
}

func isUnknown(n *source.Node) bool { return strings.EqualFold(strings.TrimSpace(n.Text), "unknown") }

// length reads a length, or the word unknown.
func (r *reading) length(n *source.Node, key string) quantity.Amount {
	if n.Kind == source.Scalar && isUnknown(n) {
		return quantity.Amount{}
	}
	return r.positive(n, key, quantity.Length)
}

func (r *reading) mergeTexts(e *entry, w *draftWire) {
	set := func(key string, text *string) {
		if n, ok := r.value(e, w, key); ok {
			*text = r.text(n, e.label(n, key))
		}
	}
	set("for", &w.wire.For)
	set("note", &w.wire.Note)
	set("loom", &w.wire.Loom)
	if isNone(w.wire.Loom) {
		w.wire.Loom = ""
	} else if _, ok := e.f["loom"]; ok {
		w.wire.Loom = e.loom(w.wire.Loom)
	}
}

// lug reads "ring M8", "spade 6.3", "ferrule", "none".
func (r *reading) lug(n *source.Node, key string) string {
	text := r.text(n, key)
	if text == "" {
		return ""
	}
	word, size, _ := strings.Cut(text, " ")
	for i, w := range lugWords {
		if !strings.EqualFold(w, word) {
			continue
		}
		size = strings.TrimSpace(size)
		if size == "" {
			return w
		}
		if i >= 3 {
			r.fault(n.Span, fmt.Sprintf("%s %s: a %s has no size", key, text, w))
			return ""
		}
		return w + " " + size
	}
	r.fault(n.Span, fmt.Sprintf("%s %s is not one of %s%s", key, text, orList(lugWords), source.DidYouMean(word, lugWords)),
		"A size may follow: ring M8")
	return ""
}

// extensions reads `extend`: a map, or a list of maps, outwards.
func (r *reading) extensions(e *entry, n *source.Node, usual side) []extension {
	var list []extension
	for _, item := range r.items(n, "extend") {
		f := r.fields(item, extendKeys, "in extend of "+e.phrase())
		x := extension{side: usual, at: item.Span}
		for key, v := range f {
			r.extensionKey(e, &x, key, v.Value)
		}
		list = append(list, x)
	}
	return list
}

func (r *reading) extensionKey(e *entry, x *extension, key string, n *source.Node) {
	switch key {
	case "colour":
		x.colour = r.colourOf(e, n)
	case "size":
		x.size, x.auto = r.size(n, e.label(n, "size"))
	case "length":
		x.length = r.length(n, e.label(n, "length"))
	case "at":
		if r.word(n, e.label(n, "at"), "from", "to") == "from" {
			x.side = from
		} else {
			x.side = to
		}
	}
}
