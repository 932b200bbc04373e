package job

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
)

// move is where the wires of one point go.
type move struct {
	point string
	to    draftEnd
}

// readMoves lands the wires of points of lower layers elsewhere. All moves of one layer
// happen at once, so that two points can change places.
func (r *reading) readMoves(l *layer) {
	n := l.get("move")
	if n == nil {
		return
	}
	moves := map[*wiring.Terminal]move{}
	for _, e := range r.entries(n, "move") {
		name := e.Key.Text
		m := move{point: name}
		text := r.text(e.Value, "move")
		if text == "" {
			continue
		}
		m.to = r.end(text, scope{layer: l, who: "move " + name + ": ", at: e.Value.Span})
		was := r.pointNamed(name, scope{layer: l, at: e.Key.Span})
		if was.state != landed || m.to.state == unknown || m.to.state == unmet {
			continue
		}
		if first, twice := moves[was.terminal]; twice {
			r.fault(e.Key.Span, fmt.Sprintf("%s and %s are one terminal, %s: it cannot move to two places", first.point, name, was.terminal.Ref()))
			continue
		}
		moves[was.terminal] = m
	}
	if len(moves) > 0 {
		r.applyMoves(l, moves)
	}
}

// pointNamed finds what a point names, and reports it if it is none.
func (r *reading) pointNamed(name string, s scope) draftEnd {
	e := draftEnd{state: unknown, at: s.at, layer: s.index}
	if !r.pointEnd(name, s, &e) {
		r.noPoint(name, s)
	}
	return e
}

func (r *reading) applyMoves(l *layer, moves map[*wiring.Terminal]move) {
	r.markLanded(moves)
	for _, w := range r.laid {
		if w.gone {
			continue
		}
		for _, s := range []side{from, to} {
			if m, ok := moves[w.end[s].terminal]; ok && w.end[s].state == landed {
				r.land(l, w, s, m.to)
			}
		}
	}
	for _, p := range r.points {
		if m, ok := moves[p.terminal]; ok && p.terminal != nil {
			p.terminal, p.moved, p.at = m.to.terminal, true, m.to.at
		}
	}
}

// markLanded marks the wires that are on the point `interlock` when it is moved for the
// first time: whatever lands where it moves to is not the interlock.
func (r *reading) markLanded(moves map[*wiring.Terminal]move) {
	p := r.points[interlockPoint]
	if p == nil || p.terminal == nil || p.moved {
		return
	}
	if _, ok := moves[p.terminal]; !ok {
		return
	}
	r.markOn(p.terminal)
}

// markOn marks the wires on a terminal as interlock leads.
func (r *reading) markOn(t *wiring.Terminal) {
	for _, w := range r.laid {
		if !w.gone && (w.end[from].terminal == t || w.end[to].terminal == t) {
			w.wire.Interlock = true
		}
	}
}

// land puts an end of a wire somewhere else, and keeps where it was.
func (r *reading) land(l *layer, w *draftWire, s side, e draftEnd) {
	old := w.end[s]
	r.unlead(w, old)
	e.layer = l.index
	w.end[s] = e
	r.lead(w, e)
	w.wire.Where[s.String()] = e.at
	if w.origin != l && (old.state != e.state || old.terminal != e.terminal) {
		w.wire.Changed = touched(w.wire.Changed, w.origin, l)
		w.wire.Moved = append(w.wire.Moved, wiring.Move{To: s == to, Was: old.String(), By: l.Layer, At: e.at})
	}
}

// lead notes which wire a lead has; the first one keeps it.
func (r *reading) lead(w *draftWire, e draftEnd) {
	if e.isLead() && r.leads[e.terminal] == nil {
		r.leads[e.terminal] = w
	}
}

func (r *reading) unlead(w *draftWire, e draftEnd) {
	if e.isLead() && r.leads[e.terminal] == w {
		delete(r.leads, e.terminal)
	}
}

// markInterlock marks the wires that land on the point `interlock` as the layer that
// defines it leaves them.
func (r *reading) markInterlock(l *layer) {
	if p := r.points[interlockPoint]; p != nil && p.layer == l.index && !p.moved && p.terminal != nil {
		r.markOn(p.terminal)
	}
}
