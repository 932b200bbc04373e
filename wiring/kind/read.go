package kind

import (
	"fmt"
	"path"
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// documented is a key with what it says, for checking and for the reference.
type documented struct{ name, doc string }

func namesOf(keys []documented) []string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = k.name
	}
	return names
}

// kindKeys are the keys of a kind file behind its header, in the order of the reference.
var kindKeys = []documented{
	{"title", "what it is, in words"},
	{"like", "a kind to copy: ratings and terminals are merged by name, `inside` is replaced whole if given"},
	{"letter", "class letter of its designations (IEC 81346, or what the trade uses)"},
	{"symbol", "drawing symbol; default `box`"},
	{"traction", "`true`: this part moves the cart"},
	{"basis", "where its figures come from; printed"},
	{"ratings", "parameters with their defaults; `needed`: the part must give it; `{}`: a map by channel number"},
	{"mount", "how it is fixed: `{hole: …, screws: …, note: …}`, as text"},
	{"controls", "what a hand sets: `{NAME: [rest position, …]}`"},
	{"terminals", "in the order in which they sit on the device: neighbours are what a hand confuses"},
	{"hidden", "internal nodes: `[v5]`"},
	{"inside", "the electrical elements between the terminals, a list"},
}

var mountKeys = []string{"hole", "screws", "note"}

// PartKeys are the keys that every part has; a rating may not be called like one.
var PartKeys = []string{
	"kind", "title", "place", "note", "serial", "leads", "always-on", "critical", "replaces",
}

// Read reads the document of a kind file, whose header is `kind: NAME`. like may be nil. A
// definition is returned whenever parts can be built from it, even beside findings.
func Read(root *source.Node, like Lookup) (*Definition, []diag.Finding) {
	header, findings := source.Header(root)
	if !isKindHeader(header) {
		var at diag.Span
		if root != nil {
			at = root.Span
		}
		return nil, append(findings, source.Fault(at, "a kind file begins with its name, such as kind: reducer"))
	}
	r := &reader{findings: findings, like: like}
	r.checkFileName(header.Value)
	d := r.read(header.Value, root, "kind", "format")
	return d, r.sorted()
}

func isKindHeader(e source.Entry) bool {
	return e.Key != nil && e.Key.Text == "kind" && e.Value.Kind == source.Scalar
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

// checkFileName holds a kind to the name of its file, by which people look for it.
func (r *reader) checkFileName(name *source.Node) {
	file, isYAML := strings.CutSuffix(path.Base(name.Span.File), ".yaml")
	if isYAML && file != name.Text {
		r.fault(name, fmt.Sprintf("kind %s stands in a file called %s.yaml", name.Text, file), "Give both one name")
	}
}

func (r *reader) read(name, body *source.Node, also ...string) *Definition {
	switch {
	case body.Kind == source.Null:
		return nil // reported by the file's reader
	case body.Kind != source.Map:
		r.fault(body, "kind "+name.Text+" is a map of its title, terminals and what is inside")
		return nil
	}
	keys := r.keys(name.Text, body, also)
	d, ok := r.base(keys["like"])
	if !ok {
		return nil
	}
	r.d = d
	d.Name, d.At, d.File = name.Text, name.Span, name.Span.File
	r.checkName(name, "kind")
	r.words(keys)
	r.readRatings(keys["ratings"])
	r.readMount(keys["mount"])
	r.readControls(keys["controls"])
	r.readTerminals(keys["terminals"])
	r.readHidden(keys["hidden"])
	r.checkNodeNames(name)
	r.readInside(keys["inside"])
	r.check()
	return d
}

// keys sorts the entries of the kind by key, and reports those that no kind has.
func (r *reader) keys(name string, body *source.Node, also []string) map[string]*source.Node {
	known := namesOf(kindKeys)
	keys := map[string]*source.Node{}
	for _, e := range body.Entries {
		switch key := e.Key.Text; {
		case slices.Contains(also, key):
		case !slices.Contains(known, key):
			r.fault(e.Key, fmt.Sprintf("unknown key %s in kind %s%s", key, name, source.DidYouMean(key, known)))
		case e.Value.Kind != source.Null:
			keys[key] = e.Value
		}
	}
	return keys
}

// base is an empty definition, or a copy of the kind that this one is like.
func (r *reader) base(like *source.Node) (*Definition, bool) {
	if like == nil {
		return &Definition{Kind: wiring.Kind{Symbol: "box"}, uses: map[string]use{}}, true
	}
	var other *Definition
	found := false
	if r.like != nil && like.Kind == source.Scalar {
		other, found = r.like(like.Text)
	}
	if !found {
		r.fault(like, "no kind "+like.Text+" to be like", "Kinds: lugwright kinds")
	}
	if other == nil {
		return nil, false
	}
	d := *other
	d.Kind.Ratings = slices.Clone(other.Kind.Ratings)
	d.ratings = slices.Clone(other.ratings)
	d.terminals = slices.Clone(other.terminals)
	d.elements = slices.Clone(other.elements)
	d.uses = map[string]use{}
	return &d, true
}

// words reads the keys that are plain text.
func (r *reader) words(keys map[string]*source.Node) {
	for _, key := range []struct {
		name string
		to   *string
	}{
		{"title", &r.d.Title}, {"letter", &r.d.Letter}, {"symbol", &r.d.Symbol}, {"basis", &r.d.Basis},
	} {
		if n := keys[key.name]; n != nil {
			*key.to = r.text(n, key.name)
		}
	}
	if n := keys["letter"]; n != nil && !isClassLetter(r.d.Letter) {
		r.fault(n, "letter is one or two capital letters, and not W, which is for wires")
	}
	if n := keys["traction"]; n != nil {
		r.d.Traction = r.truth(n, "traction")
	}
}

// isClassLetter reports whether designations may begin with it.
func isClassLetter(s string) bool {
	return len(s) >= 1 && len(s) <= 2 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == "" && !strings.Contains(s, "W")
}

func (r *reader) text(n *source.Node, key string) string {
	switch n.Kind {
	case source.Scalar:
		return n.Text
	case source.Null: // reported by the file's reader
	default:
		r.fault(n, key+" is one text, not a list or a map")
	}
	return ""
}

func (r *reader) truth(n *source.Node, key string) bool {
	text := r.text(n, key)
	if text == "" {
		return false
	}
	v, err := truthOf(text)
	if err != nil {
		r.fault(n, key+" "+err.Error())
	}
	return v
}

// items returns the members of a list; anything else is a fault.
func (r *reader) items(n *source.Node, key, example string) []*source.Node {
	if n.Kind == source.List {
		return n.Items
	}
	if n.Kind != source.Null {
		r.fault(n, key+" is a list, such as "+example)
	}
	return nil
}

// entries returns the entries of a map; anything else is a fault.
func (r *reader) entries(n *source.Node, key, example string) []source.Entry {
	if n.Kind == source.Map {
		return n.Entries
	}
	if n.Kind != source.Null {
		r.fault(n, key+" is a map, such as "+example)
	}
	return nil
}

const mostInName = 32

// checkName holds names to what can be written in a reference and read on a sheet.
func (r *reader) checkName(n *source.Node, what string) {
	switch {
	case n.Text == "" || strings.ContainsAny(n.Text, " \t.,:;{}[]()\"'#|/\\"):
		r.fault(n, fmt.Sprintf("the name of a %s has no blanks, dots, commas, colons, slashes, quotes or brackets: %s", what, n.Text))
	case utf8.RuneCountInString(n.Text) > mostInName:
		r.fault(n, fmt.Sprintf("the name of a %s has at most %d characters", what, mostInName))
	}
}

func (r *reader) readMount(n *source.Node) {
	if n == nil {
		return
	}
	r.d.Mount = wiring.Mount{}
	for _, e := range r.entries(n, "mount", "{screws: 4 x M5}") {
		switch e.Key.Text {
		case "hole":
			r.d.Mount.Hole = r.text(e.Value, "hole")
		case "screws":
			r.d.Mount.Screws = r.text(e.Value, "screws")
		case "note":
			r.d.Mount.Note = r.text(e.Value, "note")
		default:
			r.fault(e.Key, "unknown key "+e.Key.Text+" in mount"+source.DidYouMean(e.Key.Text, mountKeys),
				"Mount has "+strings.Join(mountKeys, ", "))
		}
	}
}

func (r *reader) readControls(n *source.Node) {
	if n == nil {
		return
	}
	r.d.controls = nil
	for _, e := range r.entries(n, "controls", "{switch: [off, on]}") {
		c := controlSpec{name: e.Key.Text}
		for _, p := range r.items(e.Value, "control "+c.name, "[off, on], the rest position first") {
			position := r.text(p, "position")
			if slices.Contains(c.positions, position) {
				r.fault(p, "the control "+c.name+" has the position "+position+" twice")
				continue
			}
			c.positions = append(c.positions, position)
		}
		if e.Value.Kind == source.List && len(c.positions) < 2 {
			r.fault(e.Value, "the control "+c.name+" needs at least two positions, the rest position first",
				"For example: "+c.name+": [off, on]")
		}
		if len(c.positions) > 0 {
			r.d.controls = append(r.d.controls, c)
		}
	}
}

func (r *reader) readHidden(n *source.Node) {
	if n == nil {
		return
	}
	r.d.hidden = nil
	for _, item := range r.items(n, "hidden", "[v5]") {
		if name := r.text(item, "hidden"); name != "" {
			r.checkName(item, "hidden node")
			r.d.hidden = append(r.d.hidden, item)
		}
	}
}

func (r *reader) readInside(n *source.Node) {
	if n == nil {
		return
	}
	r.d.elements = nil
	count := map[string]int{}
	for _, item := range r.items(n, "inside", "- fuse: {between: [in, out], rating: rating}, a dash before each") {
		if spec, ok := r.element(item, count); ok {
			r.d.elements = append(r.d.elements, spec)
		}
	}
}

// element reads one entry of `inside`: its type and its parameters.
func (r *reader) element(item *source.Node, count map[string]int) (spec elementSpec, ok bool) {
	if item.Kind != source.Map || len(item.Entries) != 1 {
		r.fault(item, "an element is its type and, behind a colon, its parameters in { }",
			"For example: - fuse: {between: [in, out], rating: rating}")
		return spec, false
	}
	e := item.Entries[0]
	t := findElementType(e.Key.Text)
	if t == nil {
		r.fault(e.Key, "no element "+e.Key.Text+source.DidYouMean(e.Key.Text, elementTypeNames()),
			"Elements: "+strings.Join(elementTypeNames(), ", "))
		return spec, false
	}
	if e.Value.Kind != source.Map {
		if e.Value.Kind != source.Null {
			r.fault(e.Value, "a "+t.name+" is a map of its parameters: "+strings.Join(t.paramNames(), ", "))
		}
		return spec, false
	}
	count[t.name]++
	spec = elementSpec{typ: t, name: defaultName(t.name, count[t.name]), body: e.Value, at: e.Key}
	if name := e.Value.Get(nameKey); name != nil && name.Kind != source.Null {
		spec.name = r.text(name, nameKey)
		r.checkName(name, "element")
	}
	return spec, true
}

// defaultName is the type, from the second of a type on with a number.
func defaultName(typ string, n int) string {
	if n == 1 {
		return typ
	}
	return fmt.Sprintf("%s%d", typ, n)
}

// article puts a or an before a word.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiouAEIOU", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
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
