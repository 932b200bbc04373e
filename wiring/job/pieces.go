package job

import (
	"fmt"
	"slices"
	"sort"

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

// checkAdded judges the wire that is joined to a lead.
func (r *reading) checkAdded(w *draftWire) {
	lead := w.end[from]
	if !lead.isLead() {
		lead = w.end[to]
	}
	t := lead.terminal
	if w.cut.vague() {
		r.fault(w.span(), fmt.Sprintf("%s adds wire to the lead %s and does not say its %s", w.name(), t.Ref(), missing(w.cut)),
			fmt.Sprintf("If the lead itself is other than the kind says: %s: {leads: {%s: {…}}}", t.Part.Designation, t.Name))
		return
	}
	l := t.Lead
	if l != nil && !w.cut.auto && w.cut.colour == l.Colour && w.cut.size == l.Size &&
		w.cut.length.Known() && w.cut.length.Value == l.Length.Value {
		r.warn(w.span(), fmt.Sprintf("%s adds a piece just like the lead itself (%s %s %s)", w.name(), l.Colour, l.Size, l.Length),
			"If nothing was added, leave colour, size and length out")
	}
}

// missing names what a joined piece does not say.
func missing(c conductor) string {
	switch {
	case !c.colour.Known() && !c.size.Known() && !c.auto:
		return "colour and size"
	case !c.colour.Known():
		return "colour"
	}
	return "size"
}

func (r *reading) checkExtensions(w *draftWire) {
	for _, x := range w.extend.value {
		if x.vague() {
			r.fault(x.at, fmt.Sprintf("%s is extended, and the %s of that piece is not said", w.name(), missing(x.conductor)),
				"Write extend: {colour: GN, size: 18 AWG, length: 14 in}")
		}
	}
}

// neverLanded reports whether the wire is a lead that would have landed on a point which
// the cart does not have: it is capped, and nothing is added to it.
func (w *draftWire) neverLanded() bool {
	return !w.isLaid && (w.end[from].state == absent || w.end[to].state == absent)
}

// checkCapped reports a capped lead that is said to have wire added to it.
func (r *reading) checkCapped(w *draftWire) {
	for _, s := range []side{from, to} {
		far := w.end[s.other()]
		if w.end[s].isLead() && far.state == capped && w.hasCut && w.cutBy >= far.layer {
			r.fault(w.span(), fmt.Sprintf("%s is capped: colour, size and length belong to wire that is added", w.end[s].terminal.Ref()),
				"Leave them out, or say where it lands")
			w.hasCut = false
			return
		}
	}
}

// checkCord judges a wire that ends on a port.
func (r *reading) checkCord(w *draftWire) {
	a, b := w.end[from], w.end[to]
	if a.state != landed || b.state != landed {
		return
	}
	x, y := a.terminal, b.terminal
	isPort := func(t *wiring.Terminal) bool { return t.Form.Type == wiring.Port }
	switch {
	case isPort(x) && isPort(y):
		if px, py := poleNames(x), poleNames(y); px != py {
			r.fault(b.at, fmt.Sprintf("%s joins ports whose poles differ: %s has %s, %s has %s", w.name(), x.Ref(), px, y.Ref(), py))
		} else if len(w.extend.value) > 0 {
			r.fault(w.extend.value[0].at, fmt.Sprintf("%s is a ready-made cord, which is not extended", w.name()))
		}
	case isPort(x) || isPort(y):
		at, other := b.at, y
		if isPort(y) {
			other = x
		}
		r.fault(at, fmt.Sprintf("%s joins a port to %s: a port takes a cord from another port", w.name(), article(string(other.Form.Type))))
	}
}

// poleNames lists the poles of a port, sorted: "L N PE"; "no poles" for data alone.
func poleNames(t *wiring.Terminal) string {
	names := make([]string, 0, len(t.Poles))
	for _, p := range t.Poles {
		names = append(names, p.Name)
	}
	sort.Strings(names)
	text := ""
	for i, n := range names {
		if i > 0 {
			text += " "
		}
		text += n
	}
	if text == "" {
		return "no poles"
	}
	return text
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
