package path

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// Path is a way from one node to another.
type Path struct {
	Begin, End wiring.NodeID
	Steps      []Step // none if Begin is End
	graph      *Graph
}

// Step is one edge of a path, in the direction in which the path goes.
type Step struct {
	Edge     *Edge
	From, To wiring.NodeID
}

// Wires lists the wires of the path, each once, in order.
func (p Path) Wires() []*wiring.Wire {
	var wires []*wiring.Wire
	for _, s := range p.Steps {
		if s.Edge.Wire != nil && (len(wires) == 0 || wires[len(wires)-1] != s.Edge.Wire) {
			wires = append(wires, s.Edge.Wire)
		}
	}
	return wires
}

// Elements lists the elements of the given sorts that the path passes, in order.
func (p Path) Elements(sorts Sort) []wiring.Element {
	var elements []wiring.Element
	for _, s := range p.Steps {
		if s.Edge.Sort&sorts != 0 && s.Edge.Element != nil {
			elements = append(elements, s.Edge.Element)
		}
	}
	return elements
}

// Passes reports whether the path goes through an edge of one of the given sorts.
func (p Path) Passes(sorts Sort) bool {
	for _, s := range p.Steps {
		if s.Edge.Sort&sorts != 0 {
			return true
		}
	}
	return false
}

// Then joins two paths; q must begin where p ends.
func (p Path) Then(q Path) Path {
	steps := append(append([]Step(nil), p.Steps...), q.Steps...)
	return Path{Begin: p.Begin, End: q.End, Steps: steps, graph: p.graph}
}

// Reversed is the same way from its end to its beginning.
func (p Path) Reversed() Path {
	back := Path{Begin: p.End, End: p.Begin, graph: p.graph}
	for i := len(p.Steps) - 1; i >= 0; i-- {
		s := p.Steps[i]
		back.Steps = append(back.Steps, Step{Edge: s.Edge, From: s.To, To: s.From})
	}
	return back
}

// String tells the path from its first terminal to its last, with the wires and the parts
// in between: "G1.+ - W6 - K1.in - W13 - F11 - W14 - S2.in". Where wire meets wire, the
// terminal is named; a part that has several elements is named with the one that was
// passed ("A1.fuse3").
func (p Path) String() string {
	words := []string{p.graph.Name(p.Begin)}
	say := func(word string) {
		if words[len(words)-1] != word {
			words = append(words, word)
		}
	}
	for i, s := range p.Steps {
		if i > 0 && s.Edge.Wire != nil && p.Steps[i-1].Edge.Wire != nil {
			say(p.graph.Name(s.From))
		}
		say(s.Edge.word())
	}
	if len(p.Steps) > 0 {
		say(p.graph.Name(p.End))
	}
	return strings.Join(words, " - ")
}

// word is what a path says of an edge.
func (e *Edge) word() string {
	switch {
	case e.Wire != nil:
		return e.Wire.Name()
	case e.Sort == Link || len(e.Part().Elements) == 1:
		return e.Part().Designation
	}
	return e.Element.Base().Ref()
}
