package kind

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// checkElements reports everything about `inside` that can be wrong without a part, and
// learns what each rating is from where it is used.
func (r *reader) checkElements() {
	if r.d.uses == nil {
		r.d.uses = map[string]use{}
	} else {
		uses := make(map[string]use, len(r.d.uses))
		for k, v := range r.d.uses {
			uses[k] = v
		}
		r.d.uses = uses
	}
	r.checkRanges()
	names := map[string]bool{}
	for i := range r.d.elements {
		spec := &r.d.elements[i]
		if names[spec.name] {
			r.fault(spec.at, "two elements are named "+spec.name)
		}
		names[spec.name] = true
		r.checkElement(spec)
	}
}

// checkRanges learns which ratings count terminals.
func (r *reader) checkRanges() {
	for _, t := range r.d.terminals {
		if _, high, isRange := strings.Cut(t.name, ".."); isRange {
			r.countRating(high, t.at)
		}
		if t.holds != nil {
			r.useOf(t.holds, use{shape: aCount, known: true}, "holds")
		}
		if t.rated != nil {
			r.useOf(t.rated, use{dim: quantity.Current, known: true}, "rated")
		}
	}
}

// countRating notes that a rating ends a range; a number is fine too.
func (r *reader) countRating(name string, at *source.Node) {
	if _, err := quantity.ParseCount(name); err == nil {
		return
	}
	if _, ok := r.d.Rating(name); ok {
		r.d.uses[name] = use{shape: aCount, known: true}
		return
	}
	r.fault(at, "the range ends with "+name+", which is neither a number nor a rating"+
		source.DidYouMean(name, r.d.RatingNames()))
}

func (r *reader) checkElement(spec *elementSpec) {
	for _, e := range spec.body.Entries {
		if e.Key.Text == "name" || spec.typ.param(e.Key.Text) != nil || strings.HasPrefix(e.Key.Text, "x-") {
			continue
		}
		r.fault(e.Key, fmt.Sprintf("unknown key %s in %s%s", e.Key.Text, spec.typ.name,
			source.DidYouMean(e.Key.Text, spec.typ.paramNames())), "A "+spec.typ.name+" has "+strings.Join(spec.typ.paramNames(), ", "))
	}
	for i := range spec.typ.params {
		p := &spec.typ.params[i]
		switch n := spec.body.Get(p.name); {
		case n == nil && p.need:
			r.fault(spec.at, fmt.Sprintf("the %s needs %s: %s", spec.name, p.name, p.doc))
		case n != nil:
			r.checkParam(p, n)
		}
	}
}

func (r *reader) checkParam(p *param, n *source.Node) {
	if n.Kind == source.Null {
		return // reported by the file's reader
	}
	switch p.shape {
	case oneNode:
		r.checkNode(n)
	case twoNodes:
		if len(n.Items) != 2 {
			r.fault(n, p.name+" is a pair of terminals, such as ["+strings.Join(r.firstNodes(), ", ")+"]")
		}
		r.checkNodes(n.Items)
	case someNodes:
		if n.Kind != source.List {
			r.fault(n, p.name+" is a list of terminals")
		}
		r.checkNodes(n.Items)
	case someWays:
		r.checkWays(n)
	case aCondition:
		r.checkCondition(n, p.name)
	case aWord, aReference:
		r.checkWord(p, n)
	case aTruth:
		r.truth(n, p.name)
	default:
		r.useOf(n, use{shape: p.shape, dim: p.dim, known: true}, p.name)
	}
}

func (r *reader) checkWord(p *param, n *source.Node) {
	text := r.text(n, p.name)
	if _, ok := r.d.Rating(text); ok {
		r.d.uses[text] = use{shape: aWord, known: true}
		return
	}
	if len(p.words) > 0 && !slices.Contains(p.words, text) {
		r.fault(n, fmt.Sprintf("%s is %s, not %s", p.name, strings.Join(p.words, " or "), text))
	}
	if p.name == "control" {
		r.checkPositionless(n)
	}
}

func (r *reader) checkPositionless(control *source.Node) {
	var names []string
	for _, c := range r.d.controls {
		if c.name == control.Text {
			return
		}
		names = append(names, c.name)
	}
	r.fault(control, "no control "+control.Text+" in this kind"+source.DidYouMean(control.Text, names),
		"Declare it: controls: {"+control.Text+": [off, on]}")
}

func (r *reader) checkWays(n *source.Node) {
	if n.Kind != source.Map {
		r.fault(n, "closes says what each position joins, such as {on: [in, out]}")
		return
	}
	for _, w := range waysOf(n) {
		r.checkNodes(w.nodes)
		if len(w.nodes) < 2 {
			r.fault(w.position, "the position "+w.position.Text+" joins less than two terminals")
		}
		if !r.knowsPosition(w.position.Text) {
			r.fault(w.position, "no control of this kind has the position "+w.position.Text)
		}
	}
}

func (r *reader) knowsPosition(position string) bool {
	for _, c := range r.d.controls {
		if slices.Contains(c.positions, position) {
			return true
		}
	}
	return false
}

func (r *reader) checkNodes(nodes []*source.Node) {
	for _, n := range nodes {
		r.checkNode(n)
	}
}

// checkNode reports a name that is no terminal, pole or hidden node.
func (r *reader) checkNode(n *source.Node) {
	names := r.nodeNames()
	if !slices.ContainsFunc(names, func(name string) bool { return strings.EqualFold(name, n.Text) }) && !r.inRange(n.Text) {
		r.fault(n, "no terminal, pole or hidden node "+n.Text+source.DidYouMean(n.Text, names))
	}
}

// inRange reports whether a name is one member of a terminal range of the kind.
func (r *reader) inRange(name string) bool {
	digits := strings.TrimLeft(name[len(strings.TrimRight(name, "0123456789")):], "0")
	prefix := strings.TrimRight(name, "0123456789")
	if digits == "" {
		return false
	}
	for _, t := range r.d.terminals {
		low, _, isRange := strings.Cut(t.name, "..")
		if isRange && strings.EqualFold(strings.TrimRight(low, "0123456789"), prefix) {
			return true
		}
	}
	return false
}

func (r *reader) nodeNames() []string {
	names := []string{}
	for _, t := range r.d.terminals {
		for _, pole := range t.poles {
			names = append(names, pole, t.name+"."+pole)
		}
		if t.form.Type != wiring.Port {
			names = append(names, t.name)
		}
	}
	return append(append(names, r.d.hidden...), "frame")
}

func (r *reader) firstNodes() []string {
	names := r.nodeNames()
	return names[:min(2, len(names))]
}

// useOf checks a value that may be the name of a rating, and learns the rating's use.
func (r *reader) useOf(n *source.Node, u use, key string) {
	if n.Kind != source.Scalar {
		if n.Kind != source.Null {
			r.fault(n, key+" is one value, or the name of a rating")
		}
		return
	}
	if _, ok := r.d.Rating(n.Text); ok {
		r.learn(n.Text, u)
		return
	}
	var probe wiring.Rating
	if err := readRating(&probe, n.Text, u); err != nil {
		r.fault(n, key+" "+err.Error()+source.DidYouMean(n.Text, r.d.RatingNames()))
	}
}

// learn notes the use of a rating and checks its default against it.
func (r *reader) learn(name string, u use) {
	if old := r.d.uses[name]; old.known && old.shape == quantityAt {
		return
	}
	r.d.uses[name] = u
	for _, spec := range r.d.ratings {
		if spec.name != name || spec.value == nil || spec.isMap || spec.value.Kind != source.Scalar {
			continue
		}
		var probe wiring.Rating
		if err := readRating(&probe, spec.value.Text, u); err != nil {
			r.fault(spec.value, "rating "+name+" "+err.Error())
		}
	}
}
