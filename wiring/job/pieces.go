package job

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// finishWires gives every wire that is laid its ends, pieces and lugs.
func (r *reading) finishWires() {
	for _, w := range r.laid {
		if w.gone || !r.isLaid(w) {
			continue
		}
		r.finishEnds(w)
		r.checkCord(w)
		r.checkCapped(w)
		w.wire.Pieces = r.pieces(w, true)
		r.reckonLength(w)
		r.lugs(w)
		r.defaults(w)
		r.h.Wires = append(r.h.Wires, w.wire)
	}
}

// isLaid reports whether there is a wire at all: one that would land on a point which the
// cart does not have is not laid, unless it is a lead, which is then capped.
func (r *reading) isLaid(w *draftWire) bool {
	if w.isLaid {
		return true
	}
	for _, s := range []side{from, to} {
		if w.end[s].state == absent {
			return w.end[s.other()].isLead()
		}
	}
	return true
}

// finishEnds turns the drafts of both ends into what the harness holds.
func (r *reading) finishEnds(w *draftWire) {
	w.wire.From, w.wire.To = r.finishEnd(w.end[from]), r.finishEnd(w.end[to])
}

func (r *reading) finishEnd(e draftEnd) wiring.End {
	end := wiring.End{At: e.at, Point: e.point}
	switch e.state {
	case landed:
		end.Terminal = e.terminal
		if d := r.built[e.terminal.Part]; d.gone != still {
			end.Terminal, end.Loose = nil, e.terminal.Ref()
		}
	case capped, absent:
		end.Capped = true
	}
	return end
}

// pieces lists the pieces of a wire from `from` to `to`: the lead at that end, what
// extends it there, the wire that is cut, what extends it at the other end, its lead. judge
// says whether faults are reported.
func (r *reading) pieces(w *draftWire, judge bool) []wiring.Piece {
	if w.wire.Cord() {
		return []wiring.Piece{w.piece(wiring.CordPiece, w.cut, w.span())}
	}
	hasLead := w.end[from].isLead() || w.end[to].isLead()
	list := append(w.leadAt(from), w.extensionsAt(from)...)
	if !hasLead || w.hasCut && !w.neverLanded() {
		if hasLead && judge {
			r.checkAdded(w)
		}
		list = append(list, w.piece(wiring.CutPiece, w.cut, w.span()))
	}
	list = append(append(list, w.extensionsAt(to)...), w.leadAt(to)...)
	w.join(list)
	if judge {
		r.checkExtensions(w)
	}
	return list
}

// span is where the wire that is cut was written.
func (w *draftWire) span() diag.Span {
	for _, key := range []string{"colour", "size", "length"} {
		if at, ok := w.wire.Where[key]; ok {
			return at
		}
	}
	return w.wire.At
}

func (w *draftWire) piece(k wiring.PieceKind, c conductor, at diag.Span) wiring.Piece {
	return wiring.Piece{Kind: k, Colour: c.colour, Size: c.size, Auto: c.auto, Length: c.length, At: at}
}

// leadAt is the lead at an end, if there is one.
func (w *draftWire) leadAt(s side) []wiring.Piece {
	e := w.end[s]
	if !e.isLead() {
		return nil
	}
	p := wiring.Piece{Kind: wiring.LeadPiece, At: e.terminal.At}
	if l := e.terminal.Lead; l != nil {
		p.Colour, p.Size, p.Length = l.Colour, l.Size, l.Length
	}
	return []wiring.Piece{p}
}

// extensionsAt lists the pieces that lengthen one end, in the order from `from` to `to`;
// they are written outwards.
func (w *draftWire) extensionsAt(s side) []wiring.Piece {
	var list []wiring.Piece
	for _, x := range w.extend.value {
		if x.side == s {
			list = append(list, w.piece(wiring.ExtendPiece, x.conductor, x.at))
		}
	}
	if s == from {
		slices.Reverse(list)
	}
	return list
}

// join says how each piece is joined to the one before it.
func (w *draftWire) join(pieces []wiring.Piece) {
	for i := 1; i < len(pieces); i++ {
		if pieces[i].Joint = w.joint; w.joint == "" {
			pieces[i].Joint = jointWords[0]
		}
	}
}

// neverLanded reports whether the wire is a lead that would have landed on a point which
// the cart does not have: it is capped, and nothing is added to it.
func (w *draftWire) neverLanded() bool {
	return !w.isLaid && (w.end[from].state == absent || w.end[to].state == absent)
}

// defaults fills what a wire does not say of its insulation.
func (r *reading) defaults(w *draftWire) {
	if w.wire.Insulation == 0 {
		w.wire.Insulation = r.h.Assume.Insulation
	}
	if w.wire.Volts == 0 {
		w.wire.Volts = r.h.Assume.Volts
	}
}

// landWires lists the wires of each terminal, and reports a lead with two of them.
func (r *reading) landWires() {
	for _, w := range r.h.Wires {
		for _, e := range w.Ends() {
			t := e.Terminal
			if t == nil {
				continue
			}
			if t.Form.Type == wiring.Lead && len(t.Wires) > 0 {
				first := t.Wires[0]
				f := r.fault(e.At, fmt.Sprintf("the lead %s has two wires, %s and %s: join them at a splice", t.Ref(), first.Name(), w.Name()))
				f.Related = []diag.Place{{Span: first.At, Label: first.Name() + " is defined here"}}
			}
			t.Wires = append(t.Wires, w)
		}
	}
}
