package kind

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// param is one parameter of an element type. The table of an element's parameters is what
// its reading, its checking and its reference page come from.
type param struct {
	name  string
	shape shape
	dim   quantity.Dimension // of a quantity, or of the first of a pair
	need  bool               // the element is nothing without it
	def   string             // default as the reference prints it; empty: none
	rule  bool               // used by rules only, not by the solver
	words []string           // of a word: the only ones there are
	zero  bool               // of a quantity: may be nothing
	from  float64            // of a share: at least
	upTo  float64            // of a share: at most; 0: no limit
	auto  bool               // of a quantity: may be left to the program
	doc   string
}

// use is what a value under the parameter must be.
func (p *param) use() use {
	return use{shape: p.shape, dim: p.dim, known: true, words: p.words, zero: p.zero, from: p.from, upTo: p.upTo, auto: p.auto}
}

// elementType is one sort of element.
type elementType struct {
	name   string
	doc    string // what it behaves as
	params []param
	build  func(*args) wiring.Element
}

// elementTypes is every sort of element, in the order of the reference. A new one is one
// file with its table, and one line here.
var elementTypes = []*elementType{
	&resistorType,
	&linkType,
	&fuseType,
	&switchType,
	&coilType,
	&contactType,
	&diodeType,
	&capacitorType,
	&sourceType,
	&mainsType,
	&chargerType,
	&converterType,
	&loadType,
	&senseType,
	&driverType,
}

func findElementType(name string) *elementType {
	i := slices.IndexFunc(elementTypes, func(t *elementType) bool { return t.name == name })
	if i < 0 {
		return nil
	}
	return elementTypes[i]
}

func elementTypeNames() []string {
	names := make([]string, len(elementTypes))
	for i, t := range elementTypes {
		names[i] = t.name
	}
	return names
}

func (t *elementType) param(name string) *param {
	i := slices.IndexFunc(t.params, func(p param) bool { return p.name == name })
	if i < 0 {
		return nil
	}
	return &t.params[i]
}

// nameKey is the key of an element that names it; every type has it.
const nameKey = "name"

func (t *elementType) paramNames() []string {
	names := []string{nameKey}
	for _, p := range t.params {
		names = append(names, p.name)
	}
	return names
}

// ranges lists the ranges in an element of the type that make it repeat, in the order of
// its parameters. A range in a list of nodes that stands for all of them does not.
func (t *elementType) ranges(body *source.Node) []*source.Node {
	var found []*source.Node
	add := func(nodes ...*source.Node) {
		for _, n := range nodes {
			if source.IsRange(n.Text) {
				found = append(found, n)
			}
		}
	}
	for _, p := range t.params {
		value := body.Get(p.name)
		if value == nil {
			continue
		}
		switch p.shape {
		case oneNode:
			add(value)
		case twoNodes:
			add(value.Items...)
		case someWays:
			for _, w := range waysOf(value) {
				add(w.nodes...)
			}
		}
	}
	return found
}

// way is one group of nodes that a position joins.
type way struct {
	position *source.Node
	nodes    []*source.Node
}

// waysOf reads `{POSITION: [a, b]}` and `{POSITION: [[a, b], [c, d]]}`.
func waysOf(n *source.Node) []way {
	var ways []way
	for _, e := range n.Entries {
		if len(e.Value.Items) > 0 && e.Value.Items[0].Kind == source.List {
			for _, group := range e.Value.Items {
				ways = append(ways, way{e.Key, group.Items})
			}
			continue
		}
		ways = append(ways, way{e.Key, e.Value.Items})
	}
	return ways
}
