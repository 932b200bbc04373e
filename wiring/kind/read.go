package kind

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// kindKeys are the keys of a kind file behind its header, in the order of the reference.
var kindKeys = []struct{ name, doc string }{
	{"title", "what it is, in words"},
	{"like", "a kind to copy: ratings and terminals are merged by name, `inside` is replaced whole if given"},
	{"letter", "class letter of its designations (IEC 81346 and the trade)"},
	{"symbol", "drawing symbol; default box"},
	{"traction", "true: this part moves the cart"},
	{"basis", "where its figures come from; printed"},
	{"ratings", "parameters with their defaults; `needed`: the part must give it; `{}`: a map by channel number"},
	{"mount", "how it is fixed: hole, screws, note"},
	{"controls", "what a hand sets: {NAME: [rest position, …]}"},
	{"terminals", "in the order in which they sit on the device"},
	{"hidden", "internal nodes"},
	{"inside", "the electrical elements between the terminals"},
}

// PartKeys are the keys that every part has; a rating may not be called like one.
var PartKeys = []string{
	"kind", "title", "place", "note", "serial", "leads", "always-on", "critical", "replaces",
}

// Read reads the document of a kind file, whose header is `kind: NAME`. like may be nil. A
// definition is returned whenever parts can be built from it, even beside findings.
func Read(root *source.Node, like Lookup) (*Definition, []diag.Finding) {
	header, findings := source.Header(root)
	if header.Key == nil || header.Key.Text != "kind" || header.Value.Kind != source.Scalar {
		var at diag.Span
		if root != nil {
			at = root.Span
		}
		return nil, append(findings, source.Fault(at, "a kind file begins with its name, such as kind: reducer"))
	}
	r := &reader{findings: findings, like: like}
	d := r.read(header.Value, root, "kind", "format")
	return d, r.sorted()
}

// ReadNamed reads a kind that stands inside a layer: `kinds: {NAME: {…}}`.
func ReadNamed(name, body *source.Node, like Lookup) (*Definition, []diag.Finding) {
	r := &reader{like: like}
	d := r.read(name, body)
	return d, r.sorted()
}

// reader reads one kind.
type reader struct {
	d        *Definition
	like     Lookup
	findings []diag.Finding
}

func (r *reader) sorted() []diag.Finding {
	diag.Sort(r.findings)
	return r.findings
}

func (r *reader) fault(at *source.Node, message string, advice ...string) {
	r.findings = append(r.findings, source.Fault(at.Span, message, advice...))
}

func (r *reader) read(name, body *source.Node, also ...string) *Definition {
	if body.Kind != source.Map {
		r.fault(name, "the kind "+name.Text+" has no content", "Write its title, terminals and what is inside")
		return nil
	}
	keys := r.keys(name.Text, body, also)
	d, ok := r.base(keys["like"])
	if !ok {
		return nil
	}
	r.d = d
	d.Name, d.At, d.File = name.Text, name.Span, name.Span.File
	r.words(keys)
	r.readRatings(keys["ratings"])
	r.readMount(keys["mount"])
	r.readControls(keys["controls"])
	r.readTerminals(keys["terminals"])
	r.readHidden(keys["hidden"])
	r.readInside(keys["inside"])
	r.checkElements()
	return d
}

// keys sorts the entries of the kind by key, and reports those that no kind has.
func (r *reader) keys(name string, body *source.Node, also []string) map[string]*source.Node {
	known := make([]string, len(kindKeys))
	for i, k := range kindKeys {
		known[i] = k.name
	}
	keys := map[string]*source.Node{}
	for _, e := range body.Entries {
		switch key := e.Key.Text; {
		case slices.Contains(known, key):
			keys[key] = e.Value
		case strings.HasPrefix(key, "x-") || slices.Contains(also, key):
		default:
			r.fault(e.Key, fmt.Sprintf("unknown key %s in kind %s%s", key, name, source.DidYouMean(key, known)))
		}
	}
	return keys
}

// base is an empty definition, or a copy of the kind that this one is like.
func (r *reader) base(like *source.Node) (*Definition, bool) {
	if like == nil {
		return &Definition{Kind: wiring.Kind{Symbol: "box"}}, true
	}
	var other *Definition
	found := false
	if r.like != nil {
		other, found = r.like(like.Text)
	}
	if !found {
		r.fault(like, "no kind "+like.Text+" to be like", "Kinds: lugwright kinds")
		return nil, false
	}
	d := *other
	d.Kind.Ratings = slices.Clone(other.Kind.Ratings)
	d.ratings = slices.Clone(other.ratings)
	d.terminals = slices.Clone(other.terminals)
	return &d, true
}

// words reads the keys that are plain text.
func (r *reader) words(keys map[string]*source.Node) {
	for key, to := range map[string]*string{
		"title": &r.d.Title, "letter": &r.d.Letter, "symbol": &r.d.Symbol, "basis": &r.d.Basis,
	} {
		if n := keys[key]; n != nil {
			*to = r.text(n, key)
		}
	}
	if n := keys["traction"]; n != nil {
		r.d.Traction = r.truth(n, "traction")
	}
}

func (r *reader) text(n *source.Node, key string) string {
	if n.Kind == source.Null {
		return ""
	}
	if n.Kind != source.Scalar {
		r.fault(n, key+" is one text, not a list or a map")
		return ""
	}
	return n.Text
}

func (r *reader) truth(n *source.Node, key string) bool {
	v, err := truthOf(n.Text)
	if n.Kind == source.Scalar && err != nil {
		r.fault(n, key+" "+err.Error())
	}
	return v
}

// truthOf reads true and false as people write them.
func truthOf(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "true", "yes":
		return true, nil
	case "false", "no":
		return false, nil
	}
	return false, fmt.Errorf("is true or false (yes or no), not %s", text)
}

func (r *reader) readMount(n *source.Node) {
	if n == nil {
		return
	}
	r.d.Mount = wiring.Mount{}
	for _, e := range n.Entries {
		switch e.Key.Text {
		case "hole":
			r.d.Mount.Hole = r.text(e.Value, "hole")
		case "screws":
			r.d.Mount.Screws = r.text(e.Value, "screws")
		case "note":
			r.d.Mount.Note = r.text(e.Value, "note")
		default:
			r.fault(e.Key, "unknown key "+e.Key.Text+" in mount"+source.DidYouMean(e.Key.Text, []string{"hole", "screws", "note"}))
		}
	}
}

func (r *reader) readControls(n *source.Node) {
	if n == nil {
		return
	}
	r.d.controls = nil
	for _, e := range n.Entries {
		c := controlSpec{name: e.Key.Text}
		for _, p := range e.Value.Items {
			c.positions = append(c.positions, r.text(p, "position"))
		}
		if len(c.positions) < 2 {
			r.fault(e.Key, "the control "+c.name+" needs at least two positions, the rest position first",
				"For example: {"+c.name+": [off, on]}")
			continue
		}
		r.d.controls = append(r.d.controls, c)
	}
}

func (r *reader) readHidden(n *source.Node) {
	if n == nil {
		return
	}
	r.d.hidden = nil
	for _, item := range n.Items {
		r.d.hidden = append(r.d.hidden, r.text(item, "hidden"))
	}
}

func (r *reader) readInside(n *source.Node) {
	if n == nil {
		return
	}
	r.d.elements = nil
	count := map[string]int{}
	for _, item := range n.Items {
		if item.Kind != source.Map || len(item.Entries) != 1 {
			r.fault(item, "an element is its type and, behind a colon, its parameters in { }",
				"For example: - fuse: {between: [in, out], rating: rating}")
			continue
		}
		e := item.Entries[0]
		t := findElementType(e.Key.Text)
		if t == nil {
			r.fault(e.Key, "no element "+e.Key.Text+source.DidYouMean(e.Key.Text, elementTypeNames()),
				"Elements: "+strings.Join(elementTypeNames(), ", "))
			continue
		}
		count[t.name]++
		spec := elementSpec{typ: t, name: defaultName(t.name, count[t.name]), body: e.Value, at: e.Key}
		if name := e.Value.Get("name"); name != nil {
			spec.name = r.text(name, "name")
		}
		r.d.elements = append(r.d.elements, spec)
	}
}

// defaultName is the type, from the second of a type on with a number.
func defaultName(typ string, n int) string {
	if n == 1 {
		return typ
	}
	return fmt.Sprintf("%s%d", typ, n)
}

// sortedKeys lists the keys of a map in order.
func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
