package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// newest is the wire of a path that the latest layer laid or changed, the first such one;
// nil if the path has no wire. Where a way should not exist, that wire is what made it.
func newest(h *wiring.Harness, way path.Path) (*wiring.Wire, wiring.NodeID) {
	var found *wiring.Wire
	at := way.Begin
	best := -1
	for _, s := range way.Steps {
		if w := s.Edge.Wire; w != nil && latest(h, w) > best {
			found, at, best = w, s.From, latest(h, w)
		}
	}
	return found, at
}

// latest numbers the layer that had the last word on a wire, the lowest 0.
func latest(h *wiring.Harness, w *wiring.Wire) int {
	last := 0
	for i, l := range h.Layers {
		if w.Origin == l {
			last = max(last, i)
		}
		for _, c := range w.Changed {
			if c == l {
				last = max(last, i)
			}
		}
	}
	return last
}
