package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
)

// block is how many terminals of one form a part must have for its wires to be mistaken
// for each other.
const block = 3

// neighbours points out wires on one part that look alike, have one size, and belong to
// different nets. Leads that came with the device do not count.
func (c clarity) neighbours(part *wiring.Part) {
	groups := map[wiring.Form][]landed{}
	var forms []wiring.Form
	for _, t := range part.Terminals {
		switch t.Form.Type {
		case wiring.Lead, wiring.Port, wiring.Pin: // the pins of a plug come and go together
			continue
		}
		if _, ok := groups[t.Form]; !ok {
			forms = append(forms, t.Form)
		}
		groups[t.Form] = append(groups[t.Form], landed{terminal: t})
		for _, w := range t.Wires {
			if piece := pieceOn(w, t); piece != nil && piece.Colour.Known() && piece.Kind != wiring.LeadPiece {
				groups[t.Form] = append(groups[t.Form], landed{terminal: t, wire: w, piece: piece})
			}
		}
	}
	for _, f := range forms {
		if terminals(groups[f]) >= block {
			c.alike(part, groups[f])
		}
	}
}

// landed is one wire on one terminal; without a wire it is the terminal alone.
type landed struct {
	terminal *wiring.Terminal
	wire     *wiring.Wire
	piece    *wiring.Piece
}

func terminals(all []landed) int {
	n := 0
	for _, l := range all {
		if l.wire == nil {
			n++
		}
	}
	return n
}

func pieceOn(w *wiring.Wire, t *wiring.Terminal) *wiring.Piece {
	for _, e := range w.Ends() {
		if e.Terminal == t {
			return pieceAt(w, e)
		}
	}
	return nil
}

// alike reports each group of look-alikes once, at its last wire.
func (c clarity) alike(part *wiring.Part, all []landed) {
	told := map[*wiring.Wire]bool{}
	for i, a := range all {
		if a.wire == nil || told[a.wire] {
			continue
		}
		names, last := []string{a.wire.Name()}, a
		for _, b := range all[i+1:] {
			if b.wire != nil && b.wire != a.wire && !told[b.wire] && c.mistaken(a, b) {
				names, last = append(names, b.wire.Name()), b
				told[b.wire] = true
			}
		}
		if len(names) > 1 {
			c.pass.Report(diag.Finding{
				Message:  fmt.Sprintf("%s look alike on %s and belong to different nets", list(names), titled(part)),
				Detail:   fmt.Sprintf("All are like %v, %v.", a.piece.Colour, a.piece.Size),
				Advice:   "Give one another colour or a tracer, or mark their ends.",
				At:       landing(last.wire, last.terminal.Node),
				Subjects: subjects(names, []string{part.Designation}),
			})
		}
	}
}

func (c clarity) mistaken(a, b landed) bool {
	if c.pass.Graph.SameCopper(a.terminal.Node, b.terminal.Node) {
		return false
	}
	return a.piece.Size == b.piece.Size && colour.LookAlike(a.piece.Colour, b.piece.Colour)
}
