package job

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// designationForm is a reference designation: letters, a number, perhaps a letter. W is
// the letter of wires.
var designationForm = regexp.MustCompile(`^[A-VX-Za-vx-z][A-Za-z]{0,2}[0-9]{1,6}[A-Za-z]?$`)

// readParts merges the parts of a layer into those of lower layers.
func (r *reading) readParts(l *layer) {
	n := l.get("parts")
	if n == nil {
		return
	}
	seen := map[string]diag.Span{}
	for _, e := range r.entries(n, "parts") {
		for _, name := range r.expand(e.Key) {
			if r.twice(seen, name, e.Key.Span) {
				continue
			}
			name = l.name(name)
			if !r.goodDesignation(name, e.Key.Span) || !r.readPart(l, name, e.Key.Span, e.Value) {
				r.faulty[wiring.Fold(name)] = true
			}
		}
	}
}

// twice reports a name that stands in one map a second time, in another spelling or in a
// range.
func (r *reading) twice(seen map[string]diag.Span, name string, at diag.Span) bool {
	first, again := seen[wiring.Fold(name)]
	if again {
		f := r.fault(at, fmt.Sprintf("%s is here already (line %d)", name, first.Line), "Put both together")
		f.Related = []diag.Place{{Span: first, Label: "first here"}}
		return true
	}
	seen[wiring.Fold(name)] = at
	return false
}

func (r *reading) goodDesignation(name string, at diag.Span) bool {
	if designationForm.MatchString(name) {
		return true
	}
	advice := "Write letters, a number and at most one letter: E1, G11, E1F"
	if strings.HasPrefix(wiring.Fold(name), "w") {
		advice = "W is the letter of wires. " + advice
	}
	r.fault(at, fmt.Sprintf("%s is no designation of a part", name), advice)
	return false
}

// readPart makes a part, changes one of a lower layer, or puts another in its place. It
// reports whether there is such a part now.
func (r *reading) readPart(l *layer, name string, at diag.Span, body *source.Node) bool {
	f, rest := r.split(body, partKeys, "in "+name)
	old := r.partAt(name, l.index)
	d := old
	kindNode, replaces := f["kind"].Value, f["replaces"].Value
	switch {
	case old == nil && kindNode == nil:
		if body.Kind == source.Map {
			r.noKind(name, at)
		}
		return false
	case old != nil && kindNode != nil && replaces == nil:
		r.kindClash(l, old, name, kindNode)
		return true
	case old == nil && replaces != nil:
		r.lost(replaces.Span, fmt.Sprintf("%s replaces nothing: no lower layer has a part %s", name, name))
	case replaces != nil:
		if d = r.replace(l, old, replaces, kindNode); d == nil {
			return true
		}
	}
	if d == nil {
		if d = r.newPart(l, name, at, kindNode); d == nil {
			return false
		}
	}
	r.mergePart(l, d, f, rest)
	return true
}

// partAt is the part of a name when a layer's parts are merged, nil if there is none.
func (r *reading) partAt(name string, layer int) *draftPart {
	for _, d := range r.parts[wiring.Fold(name)] {
		if d.live(layer) {
			return d
		}
	}
	return nil
}

func (r *reading) newPart(l *layer, name string, at diag.Span, kindNode *source.Node) *draftPart {
	if r.count++; r.count > MostParts {
		r.once("parts", at, fmt.Sprintf("more than %d parts", MostParts))
		return nil
	}
	d := &draftPart{
		part: &wiring.Part{Designation: name, Origin: l.Layer, At: at, Where: map[string]diag.Span{}},
		kind: kindNode, origin: l, born: l.index, gone: still,
	}
	d.part.Where["kind"] = kindNode.Span
	key := wiring.Fold(name)
	r.parts[key] = append(r.parts[key], d)
	return d
}

func (r *reading) noKind(name string, at diag.Span) {
	message := fmt.Sprintf("%s has no kind, and no lower layer has an %s", name, name)
	if !startsWithVowelSound(name) {
		message = fmt.Sprintf("%s has no kind, and no lower layer has a %s", name, name)
	}
	list := r.parts[wiring.Fold(name)]
	if len(list) == 0 {
		r.lost(at, message)
		return
	}
	last := list[len(list)-1]
	f := r.fault(at, fmt.Sprintf("%s was removed already by %s", name, r.layers[last.gone]))
	f.Related = []diag.Place{{Span: last.goneAt, Label: "removed here"}}
}

// startsWithVowelSound reports whether a designation is spoken with a vowel first: an E1,
// an F1, an S1; a G1, a U1.
func startsWithVowelSound(name string) bool {
	return name != "" && strings.ContainsRune("AEFHILMNORSX", rune(name[0]&^0x20))
}

func (r *reading) kindClash(l *layer, old *draftPart, name string, kindNode *source.Node) {
	f := r.fault(kindNode.Span,
		fmt.Sprintf("%s is %s already (%s)", name, article(old.kind.Text), where(old.part.At)),
		fmt.Sprintf("Take a free number (next: %s), or write replaces: %s", r.nextPart(name, l.index), old.kind.Text))
	f.Related = []diag.Place{{Span: old.part.At, Label: name + " is defined here"}}
}

// nextPart is the next free designation after name.
func (r *reading) nextPart(name string, layer int) string {
	return r.nextFree(lettersOf(name), name, func(candidate string) bool {
		return r.partAt(candidate, layer) == nil
	})
}

// replace puts another kind of device in the place of a part, which keeps its title, place
// and notes.
func (r *reading) replace(l *layer, old *draftPart, replaces, kindNode *source.Node) *draftPart {
	name := old.part.Designation
	if kindNode == nil {
		r.fault(replaces.Span, fmt.Sprintf("%s says what it replaces and not what it is", name), "Give its new kind too")
		return nil
	}
	if was := r.text(replaces, "replaces"); wiring.Fold(was) != wiring.Fold(old.kind.Text) {
		if was != "" {
			f := r.fault(replaces.Span, fmt.Sprintf("%s is %s, not %s", name, article(old.kind.Text), article(was)))
			f.Related = []diag.Place{{Span: old.part.At, Label: name + " is defined here"}}
		}
		return nil
	}
	d := r.newPart(l, name, old.part.At, kindNode)
	if d == nil {
		return nil
	}
	*d.part = wiring.Part{
		Designation: old.part.Designation, Title: old.part.Title, Place: old.part.Place, Note: old.part.Note,
		AlwaysOn: old.part.AlwaysOn, Critical: old.part.Critical,
		Origin: l.Layer, At: d.part.At, Where: map[string]diag.Span{"kind": kindNode.Span},
	}
	for _, key := range []string{"title", "place", "note", "always-on", "critical"} {
		if at, ok := old.part.Where[key]; ok {
			d.part.Where[key] = at
		}
	}
	old.gone, old.heir, old.goneAt = l.index, d, kindNode.Span
	return d
}

// mergePart sets what a layer says of a part. rest are ratings, which its kind judges.
func (r *reading) mergePart(l *layer, d *draftPart, f map[string]source.Entry, rest []source.Entry) {
	p := d.part
	p.Changed = touched(p.Changed, d.origin, l)
	set := func(key string, field *string) {
		if e, ok := f[key]; ok {
			*field = r.text(e.Value, key)
			p.Where[key] = e.Value.Span
		}
	}
	set("title", &p.Title)
	set("place", &p.Place)
	set("note", &p.Note)
	set("serial", &p.Serial)
	set("always-on", &p.AlwaysOn)
	if isNone(p.Place) {
		p.Place = ""
	}
	if e, ok := f["critical"]; ok {
		p.Critical = r.truth(e.Value, "critical")
		p.Where["critical"] = e.Value.Span
	}
	if e, ok := f["leads"]; ok {
		d.given.SetLeads(e.Value)
	}
	for _, e := range rest {
		d.given.Set(e.Key, e.Value)
	}
}
