package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func colourClear() *rule.Rule {
	return &rule.Rule{
		ID:    "colour-clear",
		Title: "colours tell wires apart: every piece has one, no two neighbours look alike, no positive is black",
		Level: diag.Note,
		Why: "A drawing is read with the wire in hand. Where white goes in at one end of a splice and red comes out, both must stand on it. " +
			"Where 2 of 5 wires on one block are orange, somebody lands the wrong one in two years. A black 10 AWG positive is taken for " +
			"ground, a yellow-green one for protective earth.",
		Do:     "Give the wire another colour or a tracer, or sleeve both ends and waive the finding with the reason.",
		Source: "Colour letters: IEC 60757. Customs of colour: common practice, no published source; what looks alike under a seat: distance in CIE 1976 colour space, our own limit.",
		Wrong: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: BK, size: 14 AWG, length: 4 ft}   # a black positive
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runColourClear,
	}
}

func runColourClear(p *rule.Pass) {
	c := clarity{pass: p, powered: powered(p), mains: mains(p)}
	for _, w := range p.Harness.Wires {
		c.pieces(w)
		c.meaning(w)
	}
	for _, part := range p.Harness.Parts {
		c.neighbours(part)
	}
}

type clarity struct {
	pass    *rule.Pass
	powered *path.Reach // what a supply's positive reaches over metal
	mains   *path.Reach // what carries AC
}

func powered(p *rule.Pass) *path.Reach {
	var plus []wiring.NodeID
	for _, s := range p.Supplies() {
		plus = append(plus, s.Plus)
	}
	return p.Graph.From(path.Through{Sorts: path.Metal | path.Diode}.Until(p.Negative), plus...)
}

func mains(p *rule.Pass) *path.Reach {
	var poles []wiring.NodeID
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			if m, ok := el.(*wiring.Mains); ok {
				poles = append(poles, m.L, m.N)
			}
		}
	}
	return p.Graph.From(path.Through{Sorts: path.Metal}, poles...)
}

// pieces asks for the colour of every piece of a wire that has several.
func (c clarity) pieces(w *wiring.Wire) {
	if len(w.Pieces) < 2 {
		return
	}
	for i, piece := range w.Pieces {
		if piece.Colour.Known() {
			continue
		}
		c.pass.Report(diag.Finding{
			Message:  fmt.Sprintf("%s is joined of %d pieces, and piece %d has no colour", w.Name(), len(w.Pieces), i+1),
			Detail:   fmt.Sprintf("It goes from %v to %v; a splice shows on the drawing as one colour meeting another.", w.From, w.To),
			Advice:   "Look at the cart and write it down.",
			At:       pieceSpan(w, piece),
			Subjects: []string{w.Name()},
		})
		return
	}
}

// stout is the size from which a black positive is pointed out whoever laid it.
var stout = quantity.Gauge(10)

// meaning points out colours that mean something else than the wire is.
func (c clarity) meaning(w *wiring.Wire) {
	for _, piece := range w.Pieces {
		base := piece.Colour.Base
		if piece.Kind == wiring.LeadPiece || piece.Kind == wiring.CordPiece || piece.Colour.Tracer != "" {
			continue
		}
		switch {
		case (base == "GN" || base == "GNYE") && c.on(c.mains, w):
			c.report(w, piece, "carries AC", "green is taken for protective earth")
		case base == "GNYE" && c.positive(w):
			c.report(w, piece, "is a positive", "it is taken for protective earth")
		case base == "BK" && c.positive(w) && (c.stout(piece) || !w.Untouched()):
			c.report(w, piece, "is a positive", "it is taken for a negative")
		}
	}
}

func (c clarity) stout(piece wiring.Piece) bool {
	area, err := c.pass.Handbook.Area(piece.Size)
	least, _ := c.pass.Handbook.Area(stout)
	return err == nil && piece.Size.Known() && area >= least
}

func (c clarity) on(reach *path.Reach, w *wiring.Wire) bool {
	for _, pair := range w.Joins() {
		if reach.Has(pair[0]) {
			return true
		}
	}
	return false
}

// positive reports whether a wire brings a load its current from a supply. Jumpers of a
// string and leads of a drive's motor have a side of their own.
func (c clarity) positive(w *wiring.Wire) bool {
	for _, pair := range w.Joins() {
		if c.powered.Has(pair[0]) && !c.pass.Negative(pair[0]) && !jumper(c.pass, pair) && c.feedsLoad(pair) {
			return true
		}
	}
	return false
}

// jumper reports whether a wire joins the positive of one battery to the negative of the
// next.
func jumper(p *rule.Pass, pair [2]wiring.NodeID) bool {
	plus, minus := false, false
	for _, s := range p.Supplies() {
		for _, n := range pair {
			plus = plus || s.Battery() && s.Plus == n
			minus = minus || s.Battery() && s.Minus == n
		}
	}
	return plus && minus
}

// feedsLoad reports whether a load, a coil or a converter hangs on the wire, and not only
// senses.
func (c clarity) feedsLoad(pair [2]wiring.NodeID) bool {
	_, ok := c.pass.Graph.From(path.Through{Sorts: path.Metal | path.Diode}.Until(c.pass.Negative), pair[0]).First(func(n wiring.NodeID) bool {
		for _, e := range c.pass.Graph.At(n) {
			if e.Sort&(path.Consumers) != 0 {
				return true
			}
		}
		return false
	})
	return ok
}

func (c clarity) report(w *wiring.Wire, piece wiring.Piece, is, because string) {
	c.pass.Report(diag.Finding{
		Message:  fmt.Sprintf("%s is %v and %s", w.Name(), piece.Colour, is),
		Detail:   fmt.Sprintf("%v, from %v to %v: %s.", piece.Size, w.From, w.To, because),
		Advice:   "Use another colour, or sleeve both ends and waive this with the reason.",
		At:       colourSpan(w, piece),
		Subjects: []string{w.Name()},
	})
}

func colourSpan(w *wiring.Wire, piece wiring.Piece) diag.Span {
	if piece.Kind == wiring.CutPiece {
		return w.Span("colour")
	}
	return pieceSpan(w, piece)
}
