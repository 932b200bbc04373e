package kind

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// check reports everything about `inside` that can be wrong without a part, and learns
// what each rating is from where it is used.
func (r *reader) check() {
	r.checkCounts()
	names := map[string]bool{}
	for i := range r.d.elements {
		spec := &r.d.elements[i]
		spec.faulty = false
		before := len(r.findings)
		if names[spec.name] {
			r.fault(spec.at, "two elements are named "+spec.name)
		}
		names[spec.name] = true
		r.checkElement(spec)
		spec.faulty = len(r.findings) > before || missesValue(spec)
	}
	r.checkDefaults()
}

// missesValue reports whether a parameter has no value that could be read, which has been
// said.
func missesValue(spec *elementSpec) bool {
	return slices.ContainsFunc(spec.body.Entries, func(e source.Entry) bool { return e.Value.Kind == source.Null })
}

// checkCounts learns what the ratings are that terminals use.
func (r *reader) checkCounts() {
	for _, t := range r.d.terminals {
		if span, isRange := cutRange(t.name); isRange {
			r.checkRangeEnd(span.high, t.at)
		}
		if t.holds != nil {
			r.checkValue(t.holds, use{shape: aCount, known: true}, "holds", false)
		}
		if t.rated != nil {
			r.checkValue(t.rated, use{shape: aQuantity, dim: quantity.Current, known: true}, "rated", false)
		}
	}
}

// checkRangeEnd looks at what a range counts up to: a number or a rating.
func (r *reader) checkRangeEnd(high string, at *source.Node) {
	if _, err := quantity.ParseCount(high); err == nil {
		return
	}
	if _, ok := r.d.Rating(high); ok {
		r.learn(high, use{shape: aCount, known: true}, at)
		return
	}
	r.fault(at, "the range ends with "+high+", which is neither a number nor a rating"+
		source.DidYouMean(high, r.d.RatingNames()))
}

func (r *reader) checkElement(spec *elementSpec) {
	for _, e := range spec.body.Entries {
		if e.Key.Text == nameKey || spec.typ.param(e.Key.Text) != nil {
			continue
		}
		r.fault(e.Key, fmt.Sprintf("unknown key %s in %s%s", e.Key.Text, spec.typ.name,
			source.DidYouMean(e.Key.Text, spec.typ.paramNames())),
			strings.ToUpper(article(spec.typ.name)[:1])+article(spec.typ.name)[1:]+" has "+strings.Join(spec.typ.paramNames(), ", "))
	}
	for i := range spec.typ.params {
		p := &spec.typ.params[i]
		switch n := spec.body.Get(p.name); {
		case n == nil && p.need:
			r.fault(spec.at, fmt.Sprintf("the %s has no %s: %s", spec.typ.name, p.name, p.doc))
		case n != nil && n.Kind != source.Null:
			r.checkParam(spec, p, n)
		}
	}
}

func (r *reader) checkParam(spec *elementSpec, p *param, n *source.Node) {
	switch p.shape {
	case oneNode:
		r.checkNode(n)
	case twoNodes:
		r.checkPair(p, n)
	case someNodes:
		r.checkNodes(r.items(n, p.name, "[a, b]"))
	case someWays:
		r.checkWays(spec, n)
	case aCondition:
		r.checkCondition(spec, n, p.name)
	case aReference:
		r.checkReference(spec, p, n)
	case aControl:
		r.checkControl(n)
	default:
		r.checkValue(n, p.use(), p.name, spec.repeated())
	}
}

func (r *reader) checkPair(p *param, n *source.Node) {
	if n.Kind != source.List || len(n.Items) != 2 {
		r.fault(n, p.name+" is a pair of terminals, such as ["+strings.Join(r.firstNodes(), ", ")+"]")
		return
	}
	r.checkNodes(n.Items)
	a, b := n.Items[0], n.Items[1]
	if a.Kind == source.Scalar && strings.EqualFold(a.Text, b.Text) {
		r.fault(n, p.name+" goes from "+a.Text+" to itself")
	}
}

// checkReference looks at the name of a coil.
func (r *reader) checkReference(spec *elementSpec, p *param, n *source.Node) {
	name := r.text(n, p.name)
	if named := r.named(name); named == nil || named.typ != &coilType {
		r.fault(n, fmt.Sprintf("%s names %s, which is no coil of this kind%s", p.name, name,
			source.DidYouMean(name, r.elementNames(func(t *elementType) bool { return t == &coilType }))))
	} else {
		r.checkStep(spec, named, n)
	}
}

// named finds an element by its name.
func (r *reader) named(name string) *elementSpec {
	i := slices.IndexFunc(r.d.elements, func(s elementSpec) bool { return s.name == name })
	if i < 0 {
		return nil
	}
	return &r.d.elements[i]
}

func (r *reader) elementNames(of func(*elementType) bool) []string {
	var names []string
	for _, s := range r.d.elements {
		if of(s.typ) {
			names = append(names, s.name)
		}
	}
	return names
}

// checkStep refuses to name a repeated element where it is not clear which one is meant.
func (r *reader) checkStep(spec, named *elementSpec, at *source.Node) {
	if named.repeated() && !spec.repeated() {
		r.fault(at, fmt.Sprintf("%s is repeated (%s1, %s2…) and %s is not: which one is meant?",
			named.name, named.name, named.name, spec.name))
	}
}

func (r *reader) checkControl(n *source.Node) {
	name := r.text(n, "control")
	if _, ok := r.d.control(name); ok || name == "" {
		return
	}
	r.fault(n, "no control "+name+" in this kind"+source.DidYouMean(name, r.d.controlNames()),
		"Declare it: controls: {"+name+": [off, on]}")
}

func (r *reader) checkWays(spec *elementSpec, n *source.Node) {
	r.entries(n, "closes", "{on: [in, out]}")
	control := spec.body.Get("control")
	for _, w := range waysOf(n) {
		r.checkNodes(w.nodes)
		if len(w.nodes) < 2 {
			r.fault(w.position, "the position "+w.position.Text+" joins less than two terminals",
				"For example: "+w.position.Text+": ["+strings.Join(r.firstNodes(), ", ")+"]")
		}
		if control != nil {
			r.checkPosition(control.Text, w.position)
		}
	}
}

// checkPosition reports a position that a control does not have; a control that does not
// exist is reported elsewhere.
func (r *reader) checkPosition(control string, position *source.Node) {
	c, ok := r.d.control(control)
	if !ok || slices.Contains(c.positions, position.Text) {
		return
	}
	r.fault(position, fmt.Sprintf("the control %s has the positions %s, not %s%s", c.name,
		strings.Join(c.positions, ", "), position.Text, source.DidYouMean(position.Text, c.positions)))
}

// checkValue checks a value that may be the name of a rating, and learns what that is.
// channels says whether the element is repeated, so that a map by channel may stand here.
func (r *reader) checkValue(n *source.Node, u use, key string, channels bool) {
	if n.Kind == source.Null {
		return
	}
	if n.Kind != source.Scalar {
		r.fault(n, key+" is one value, or the name of a rating")
		return
	}
	if spec := r.rating(n.Text); spec != nil {
		if spec.isMap && (!channels || u.shape != aQuantity) {
			r.fault(n, fmt.Sprintf("%s is a map by channel number, and %s here is one value", n.Text, key))
		}
		r.learn(n.Text, u, n)
		return
	}
	if _, err := u.read(n.Text); err != nil {
		r.fault(n, key+" "+err.Error()+source.DidYouMean(n.Text, r.d.RatingNames()))
	}
}

func (r *reader) rating(name string) *ratingSpec {
	i := slices.IndexFunc(r.d.ratings, func(s ratingSpec) bool { return s.name == name })
	if i < 0 {
		return nil
	}
	return &r.d.ratings[i]
}

// learn notes what a rating must be to serve where it is used.
func (r *reader) learn(name string, u use, at *source.Node) {
	both, ok := r.d.uses[name].and(u)
	if !ok {
		r.fault(at, fmt.Sprintf("%s is used as %s here and as %s above: make two ratings of it", name, u, r.d.uses[name]))
	}
	r.d.uses[name] = both
}

// checkDefaults holds the defaults of the ratings to their use.
func (r *reader) checkDefaults() {
	for i := range r.d.ratings {
		spec := &r.d.ratings[i]
		u := r.d.uses[spec.name]
		if meaning, ok := meanings[spec.name]; ok && !u.known {
			u = meaning
		}
		switch {
		case spec.isMap:
			r.checkMapDefault(spec, u)
		case spec.value == nil:
		case !u.known:
			u = useOfDefault(spec.value.Text)
		default:
			if _, err := u.read(spec.value.Text); err != nil {
				r.fault(spec.value, "rating "+spec.name+" "+err.Error())
			}
		}
		r.d.uses[spec.name] = u
	}
}

func (r *reader) checkMapDefault(spec *ratingSpec, u use) {
	for _, e := range spec.value.Entries {
		if _, ok := channelsOf(e.Key.Text); !ok {
			r.fault(e.Key, fmt.Sprintf("rating %s: %s is no channel number", spec.name, e.Key.Text))
			continue
		}
		if _, err := u.read(e.Value.Text); err != nil && e.Value.Kind == source.Scalar && u.known {
			r.fault(e.Value, "rating "+spec.name+" "+e.Key.Text+" "+err.Error())
		}
	}
}
