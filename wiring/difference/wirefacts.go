package difference

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/stack"
)

func wireOf(w *wiring.Wire) Wire {
	out := Wire{Name: w.Name()}
	ends := w.Ends()
	for i, e := range ends {
		out.Ends[i] = End{On: e.String(), State: landing(*e), Lug: e.Lug}
		if e.Terminal != nil && e.Terminal.Form.Type == wiring.Lead {
			out.Leads = append(out.Leads, e.Terminal.Ref())
		}
	}
	cut := piecesOf(w, &out)
	out.Facts = facts(append(cut,
		Fact{"for", Word(w.For)},
		Fact{"joint", Word(jointOf(w))},
		Fact{"insulation", Word(degrees(w))},
		Fact{"loom", Word(w.Loom)},
		Fact{"note", Word(w.Note)},
		Fact{"volts", Word(volts(w))},
	)...)
	sortFacts(out.Facts)
	return out
}

func landing(e wiring.End) Landing {
	switch {
	case e.Terminal != nil:
		return OnTerminal
	case e.Capped:
		return Capped
	}
	return Loose
}

func degrees(w *wiring.Wire) string {
	if w.Insulation == 0 {
		return ""
	}
	return w.Insulation.String()
}

func volts(w *wiring.Wire) string {
	if w.Volts == 0 {
		return ""
	}
	return w.Volts.String()
}

// piecesOf puts the pieces that extend a wire at its ends, and returns what is known of the
// piece that is cut. Leads belong to their parts and are left out.
func piecesOf(w *wiring.Wire, out *Wire) []Fact {
	cut := slices.IndexFunc(w.Pieces, func(p wiring.Piece) bool {
		return p.Kind == wiring.CutPiece || p.Kind == wiring.CordPiece
	})
	var known []Fact
	for i, p := range w.Pieces {
		switch {
		case p.Kind == wiring.LeadPiece:
		case i == cut:
			known = []Fact{{"colour", Word(p.Colour.String())}, {"length", amountValue(p.Length)}, {"size", pieceSize(p)}}
		case i < cut || cut < 0 && w.Pieces[0].Kind != wiring.LeadPiece:
			out.Ends[0].Pieces = slices.Insert(out.Ends[0].Pieces, 0, pieceValue(p))
		default:
			out.Ends[1].Pieces = append(out.Ends[1].Pieces, pieceValue(p))
		}
	}
	return known
}

func pieceSize(p wiring.Piece) Value {
	if p.Auto && !p.Size.Known() {
		return Word("auto")
	}
	return Word(p.Size.String())
}

func pieceValue(p wiring.Piece) Value {
	return joined(Word(p.Colour.String()), pieceSize(p), amountValue(p.Length))
}

// commonJoint is how pieces are joined where nobody says otherwise.
const commonJoint = "butt"

// jointOf is how the pieces of a wire are joined, if in another way than the common one. A
// wire has one word for all its joints.
func jointOf(w *wiring.Wire) string {
	for _, p := range w.Pieces {
		if p.Joint != "" && p.Joint != commonJoint {
			return p.Joint
		}
	}
	return ""
}

// stacksOf lists the lugs on every stud.
func stacksOf(h *wiring.Harness) []Stack {
	tables := handbook.Default()
	var all []Stack
	for _, p := range h.Parts {
		for _, t := range p.Terminals {
			if t.Form.Type != wiring.Stud {
				continue
			}
			one := Stack{Terminal: t.Ref()}
			for _, l := range stack.Of(h, t, tables, nil) {
				one.Wires = append(one.Wires, l.Wire.Name())
			}
			all = append(all, one)
		}
	}
	return all
}
