package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// args is what an element is built from: its parameters by name, with ratings put in.
//
// What the kind writes was checked when it was read. What a job gave was checked when the
// ratings were read, and a rating without a value that could be read is absent: then the
// element is incomplete, and is not built.
type args struct {
	b      *builder
	spec   *elementSpec
	base   wiring.ElementBase
	step   int // which repetition, from 0
	number int // number of the repetition, 0 for an element that is not repeated

	incomplete bool
}

func (a *args) has(name string) bool { return a.spec.body.Get(name) != nil }

// later runs f when all elements of the part are made; if it fails, the element is not.
func (a *args) later(f func() bool) { a.b.pending = append(a.b.pending, pending{a, f}) }

// fault reports what is wrong with the values of parameters: where a job gave one of them,
// else where the kind says the first.
func (a *args) fault(message string, names ...string) {
	at := a.spec.at.Span
	for i, name := range names {
		n := a.spec.body.Get(name)
		if n == nil {
			continue
		}
		if i == 0 {
			at = n.Span
		}
		if r, ok := a.b.part.Ratings[n.Text]; ok && r.At.Known() {
			at = r.At
			break
		}
	}
	a.b.findings = append(a.b.findings, source.Fault(at, a.b.part.Designation+"."+a.base.Name+": "+message))
	a.incomplete = true
}

// needOne reports an element that has none of the parameters that it could have.
func (a *args) needOne(ok bool, message string) {
	if !ok && !a.incomplete {
		a.fault(message)
	}
}

func (a *args) param(name string) (*source.Node, *param) {
	p := a.spec.typ.param(name)
	if p == nil {
		panic("kind: a " + a.spec.typ.name + " has no parameter " + name)
	}
	return a.spec.body.Get(name), p
}

// value is what stands under a parameter: the rating that it names, or its own text read
// as one. ok is false if nothing is given, or nothing that could be read.
func (a *args) value(name string) (r wiring.Rating, ok bool) {
	n, p := a.param(name)
	if n == nil {
		return wiring.Rating{}, false
	}
	if _, isRating := a.b.d.Rating(n.Text); isRating {
		r, ok = a.b.part.Ratings[n.Text]
		a.incomplete = a.incomplete || !ok
		return r, ok
	}
	r, err := p.use().read(n.Text)
	return r, err == nil
}

// quantity is the value of a parameter in the unit of its dimension, 0 if it is not given.
func (a *args) quantity(name string) float64 { return a.quantityOr(name, 0) }

func (a *args) quantityOr(name string, def float64) float64 {
	r, ok := a.value(name)
	switch {
	case !ok:
		return def
	case r.Channel != nil:
		rating := a.spec.body.Get(name).Text
		a.b.channels[rating] = max(a.b.channels[rating], a.number)
		return r.Channel[a.number].Value
	}
	return r.Amount.Value
}

// auto reports whether a quantity is left to the program.
func (a *args) auto(name string) bool {
	r, _ := a.value(name)
	if r.Channel != nil {
		return a.b.auto[a.spec.body.Get(name).Text][a.number]
	}
	_, p := a.param(name)
	return p.auto && r.Word == autoWord
}

// two is the pair of values of a parameter; ok is false if it is none.
func (a *args) two(name string) (first, second float64, ok bool) {
	r, _ := a.value(name)
	if r.Pair == nil {
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
	r, _ := a.value(name)
	return r.Count
}

func (a *args) word(name string) string {
	r, _ := a.value(name)
	return r.Word
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
	members := a.b.members(n)
	switch {
	case len(members) == 0:
		a.incomplete = true
		return wiring.NoNode
	case a.step < len(members) && source.IsRange(n.Text):
		return a.lookup(n, members[a.step].name)
	}
	return a.lookup(n, members[0].name)
}

func (a *args) lookup(n *source.Node, name string) wiring.NodeID {
	id, ok := a.b.nodes[wiring.Fold(name)]
	if !ok {
		a.b.fault(n, fmt.Sprintf("%s: this %s has no %s", a.b.part.Designation, a.b.d.Name, name))
		a.incomplete = true
		return wiring.NoNode
	}
	return id
}

func (a *args) pair(name string) (first, second wiring.NodeID) {
	n, _ := a.param(name)
	if n == nil {
		return wiring.NoNode, wiring.NoNode
	}
	return a.nodeOf(n.Items[0]), a.nodeOf(n.Items[1])
}

// nodes is a list of nodes in which a range stands for all its members.
func (a *args) nodes(name string) []wiring.NodeID {
	n, _ := a.param(name)
	var out []wiring.NodeID
	for _, item := range n.Items {
		for _, m := range a.b.members(item) {
			out = append(out, a.lookup(item, m.name))
		}
	}
	return out
}

func (a *args) control(name string) *wiring.Control {
	n, _ := a.param(name)
	return a.b.control(n.Text)
}

// ways is what each position of a control joins.
func (a *args) ways(name string) map[string][][]wiring.NodeID {
	n, _ := a.param(name)
	closes := map[string][][]wiring.NodeID{}
	for _, w := range waysOf(n) {
		group := make([]wiring.NodeID, len(w.nodes))
		for i, item := range w.nodes {
			group[i] = a.nodeOf(item)
		}
		closes[w.position.Text] = append(closes[w.position.Text], group)
	}
	return closes
}

// reference is the element that a parameter names.
func (a *args) reference(name string) wiring.Element {
	n, _ := a.param(name)
	return a.named(n.Text)
}
