package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// endAt returns the end of a wire that lands on a node, nil if neither does.
func endAt(w *wiring.Wire, n wiring.NodeID) *wiring.End {
	for _, e := range w.Ends() {
		if e.Terminal == nil {
			continue
		}
		if e.Terminal.Node == n {
			return e
		}
		for _, p := range e.Terminal.Poles {
			if p.Node == n {
				return e
			}
		}
	}
	return nil
}

// landing is where a file says that a wire lands on a node; where the wire is defined, if
// it says no such thing.
func landing(w *wiring.Wire, n wiring.NodeID) diag.Span {
	if e := endAt(w, n); e != nil {
		return endSpan(w, e)
	}
	return w.At
}

// endSpan is where an end was written.
func endSpan(w *wiring.Wire, e *wiring.End) diag.Span {
	switch {
	case e.At.Known():
		return e.At
	case e == &w.From:
		return w.Span("from")
	}
	return w.Span("to")
}

// pieceAt is the piece of a wire at one of its ends; nil if the wire has none.
func pieceAt(w *wiring.Wire, e *wiring.End) *wiring.Piece {
	switch {
	case len(w.Pieces) == 0:
		return nil
	case e == &w.From:
		return &w.Pieces[0]
	}
	return &w.Pieces[len(w.Pieces)-1]
}

// pointTerminal is the terminal of a named point, and false if the cart has none.
func pointTerminal(h *wiring.Harness, name string) (*wiring.Terminal, bool) {
	p, ok := h.Point(name)
	return p.Terminal, ok && p.Terminal != nil
}

func has(nodes []wiring.NodeID, n wiring.NodeID) bool {
	for _, each := range nodes {
		if each == n {
			return true
		}
	}
	return false
}
