package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// args is what an element is built from: its parameters by name, with ratings put in.
// What is written was checked when the kind was read; only values that a job gave can
// still be wrong, and those have been reported when the ratings were read.
type args struct {
	b      *builder
	spec   *elementSpec
	base   wiring.ElementBase
	step   int // which repetition, from 0
	number int // number of the repetition, 0 for an element that is not repeated
}

func (a *args) has(name string) bool { return a.spec.body.Get(name) != nil }

// later runs f when all elements of the part are made.
func (a *args) later(f func()) { a.b.pending = append(a.b.pending, f) }

// fault reports what is wrong with a parameter.
func (a *args) fault(name, message string) {
	at := a.spec.at.Span
	if n := a.spec.body.Get(name); n != nil {
		at = n.Span
	}
	a.b.fault(at, message)
}

// needOne reports an element that has none of the parameters it could have.
func (a *args) needOne(ok bool, names ...string) {
	if ok || a.missingRating() {
		return
	}
	list := names[0]
	for _, n := range names[1:] {
		list += " or " + n
	}
	a.b.fault(a.spec.at.Span, a.b.part.Designation+"."+a.base.Name+" needs "+list)
}

// missingRating reports whether a parameter names a rating that nobody gave, which has
// been said already.
func (a *args) missingRating() bool {
	for _, p := range a.spec.typ.params {
		n := a.spec.body.Get(p.name)
		if n == nil || n.Kind != source.Scalar {
			continue
		}
		if _, isRating := a.b.d.Rating(n.Text); isRating {
			if r := a.b.part.Ratings[n.Text]; r.Channel == nil && !r.Amount.Known() && r.Pair == nil && r.Count == 0 {
				return true
			}
		}
	}
	return false
}

func (a *args) param(name string) (*source.Node, *param) {
	return a.spec.body.Get(name), a.spec.typ.param(name)
}

// quantity is the value of a parameter in the unit of its dimension, 0 if it is not given.
func (a *args) quantity(name string) float64 { return a.quantityOr(name, 0) }

func (a *args) quantityOr(name string, def float64) float64 {
	n, p := a.param(name)
	if n == nil {
		return def
	}
	return a.b.amountOf(n, use{dim: p.dim}, a.number)
}

// rating is what a parameter names, or its own value read as one.
func (a *args) rating(name string) (wiring.Rating, bool) {
	n, p := a.param(name)
	if n == nil {
		return wiring.Rating{}, false
	}
	if r, ok := a.b.part.Ratings[n.Text]; ok {
		return r, true
	}
	r := wiring.Rating{Word: n.Text}
	err := readRating(&r, n.Text, use{shape: p.shape, dim: p.dim})
	return r, err == nil
}

// two is the pair of values of a parameter; ok is false if it is none.
func (a *args) two(name string) (first, second float64, ok bool) {
	r, found := a.rating(name)
	if !found || r.Pair == nil {
		return 0, 0, false
	}
	return r.Pair.First.Value, r.Pair.Second.Value, true
}

func (a *args) rated(name string) wiring.Rated {
	amps, volts, _ := a.two(name)
	return wiring.Rated{Amps: quantity.Ampere(amps), Volts: quantity.Volt(volts)}
}

func (a *args) burst(name string) wiring.Burst {
	amps, seconds, _ := a.two(name)
	return wiring.Burst{Amps: quantity.Ampere(amps), For: quantity.Second(seconds)}
}

func (a *args) band(name string) wiring.Band {
	low, high, _ := a.two(name)
	return wiring.Band{Low: quantity.Volt(low), High: quantity.Volt(high)}
}

func (a *args) count(name string) int {
	n, _ := a.param(name)
	if n == nil {
		return 0
	}
	return a.b.countOf(n)
}

// word is a parameter's text, or that of the rating it names. A fuse's rating by channel
// is "auto" where the job says so.
func (a *args) word(name string) string {
	n, _ := a.param(name)
	if n == nil {
		return ""
	}
	if r, ok := a.b.part.Ratings[n.Text]; ok {
		if r.Channel != nil && a.b.auto[a.number] {
			return "auto"
		}
		return r.Word
	}
	return n.Text
}

func (a *args) truth(name string) bool {
	v, _ := truthOf(a.word(name))
	return v
}

// node is the node that a parameter names, NoNode if it is not given.
func (a *args) node(name string) wiring.NodeID {
	n, _ := a.param(name)
	if n == nil {
		return wiring.NoNode
	}
	return a.nodeOf(n)
}

// nodeOf is the node of a name; of a range, the one of this repetition.
func (a *args) nodeOf(n *source.Node) wiring.NodeID {
	members := a.b.members(n.Text, n.Span)
	if a.step < len(members) && len(members) > 1 {
		return a.b.lookup(members[a.step].name)
	}
	if len(members) == 0 {
		return wiring.NoNode
	}
	return a.b.lookup(members[0].name)
}

func (b *builder) lookup(name string) wiring.NodeID {
	if id, ok := b.nodes[wiring.Fold(name)]; ok {
		return id
	}
	return wiring.NoNode
}

func (a *args) pair(name string) (first, second wiring.NodeID) {
	n, _ := a.param(name)
	if n == nil || len(n.Items) != 2 {
		return wiring.NoNode, wiring.NoNode
	}
	return a.nodeOf(n.Items[0]), a.nodeOf(n.Items[1])
}

// nodes is a list of nodes in which a range stands for all its members.
func (a *args) nodes(name string) []wiring.NodeID {
	n, _ := a.param(name)
	var out []wiring.NodeID
	if n == nil {
		return out
	}
	for _, item := range n.Items {
		for _, m := range a.b.members(item.Text, item.Span) {
			out = append(out, a.b.lookup(m.name))
		}
	}
	return out
}

func (a *args) control(name string) *wiring.Control {
	want := a.word(name)
	for _, c := range a.b.part.Controls {
		if c.Name == want {
			return c
		}
	}
	return nil
}

// ways is what each position of a control joins.
func (a *args) ways(name string, c *wiring.Control) map[string][][]wiring.NodeID {
	n, _ := a.param(name)
	closes := map[string][][]wiring.NodeID{}
	if n == nil || c == nil {
		return closes
	}
	for _, w := range waysOf(n) {
		var group []wiring.NodeID
		for _, item := range w.nodes {
			group = append(group, a.nodeOf(item))
		}
		closes[w.position.Text] = append(closes[w.position.Text], group)
	}
	return closes
}

// reference is the element that a parameter names.
func (a *args) reference(name string) wiring.Element { return a.b.elements[a.word(name)] }
