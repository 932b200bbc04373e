package position

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// lasting is a cart on which no fuse opens and no battery trips: the cart as it is in the
// moment before they do. What is joined then is what opens them, and a point that is
// settled after they have opened no longer shows it.
type lasting struct {
	network *settle.Network
	twin    map[wiring.Element]wiring.Element // what stands in the network for an element of the harness
}

// newLasting copies a harness with other fuses and batteries. All else is shared with the
// original: nodes, wires, controls and the elements that conditions name.
func newLasting(h *wiring.Harness) *lasting {
	l := &lasting{twin: map[wiring.Element]wiring.Element{}}
	twin := *h
	twin.Parts = make([]*wiring.Part, len(h.Parts))
	for i, p := range h.Parts {
		part := *p
		part.Elements = make([]wiring.Element, len(p.Elements))
		for j, e := range p.Elements {
			part.Elements[j] = l.last(e)
		}
		twin.Parts[i] = &part
	}
	l.network = settle.Compile(&twin)
	return l
}

// last is the element that stands for e.
func (l *lasting) last(e wiring.Element) wiring.Element {
	switch e := e.(type) {
	case *wiring.Fuse:
		f := *e
		f.Opens = math.MaxFloat64
		l.twin[e] = &f
		return &f
	case *wiring.Source:
		s := *e
		s.Trips = 0
		l.twin[e] = &s
		return &s
	}
	return e
}

// of is the element to ask a point of this network about.
func (l *lasting) of(e wiring.Element) wiring.Element {
	if twin, ok := l.twin[e]; ok {
		return twin
	}
	return e
}
