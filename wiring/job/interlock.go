package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// interlock fills what the cart's interlock leads need. It is declared by the key of that
// name; a layer that only gives the point means the commonest kind.
func (r *reading) interlock() {
	il := r.declared()
	p, known := r.points[interlockPoint]
	if il == nil && !known {
		return
	}
	if il == nil {
		il = &wiring.Interlock{}
		if p.terminal == nil && !p.moved && len(r.markedWires()) == 0 {
			il.Kind = wiring.NoInterlock
		}
	}
	if il.Kind == "" {
		il.Kind = wiring.InterlockPackPositive
	}
	il.Wires = r.markedWires()
	if len(il.Terminals) == 0 {
		il.Terminals = r.ownEnds(il.Wires)
	}
	r.h.Interlock = il
}

// declared merges the `interlock` keys of all layers; nil if there is none.
func (r *reading) declared() *wiring.Interlock {
	var il *wiring.Interlock
	for _, l := range r.layers {
		n := l.get("interlock")
		if n == nil || n.Kind == source.Null {
			continue
		}
		if il == nil {
			il = &wiring.Interlock{}
		}
		f := r.fields(n, interlockKeys, "in interlock")
		if e, ok := f["kind"]; ok {
			il.Kind = wiring.InterlockKind(r.word(e.Value, "interlock", interlockWords()...))
			il.At = e.Value.Span
		}
		if e, ok := f["note"]; ok {
			il.Note = r.text(e.Value, "note")
		}
		if e, ok := f["leads"]; ok {
			il.Terminals = r.interlockLeads(l, e.Value)
		}
	}
	return il
}

func (r *reading) interlockLeads(l *layer, n *source.Node) []*wiring.Terminal {
	var list []*wiring.Terminal
	for _, item := range r.items(n, "leads") {
		t := r.terminalOf(item, l, "interlock: ")
		if t == nil {
			continue
		}
		if r.built[t.Part].gone == still {
			list = append(list, t)
		}
	}
	return list
}

func interlockWords() []string {
	words := make([]string, 0, len(wiring.InterlockKinds()))
	for _, k := range wiring.InterlockKinds() {
		words = append(words, string(k))
	}
	return words
}

// markedWires lists the interlock leads that are still there.
func (r *reading) markedWires() []*wiring.Wire {
	var list []*wiring.Wire
	for _, w := range r.h.Wires {
		if w.Interlock {
			list = append(list, w)
		}
	}
	return list
}

// ownEnds are the ends of the interlock leads on the cart's own devices: of each wire the
// end that no layer has moved, else the one that is not on the point.
func (r *reading) ownEnds(ws []*wiring.Wire) []*wiring.Terminal {
	on := r.points[interlockPoint]
	var list []*wiring.Terminal
	for _, w := range ws {
		own := w.From.Terminal
		if on != nil && on.terminal != nil && own == on.terminal || movedFrom(w) {
			own = w.To.Terminal
		}
		if own != nil {
			list = append(list, own)
		}
	}
	return list
}

// movedFrom reports whether the end `from` was the first that a layer moved.
func movedFrom(w *wiring.Wire) bool { return len(w.Moved) > 0 && !w.Moved[0].To }
