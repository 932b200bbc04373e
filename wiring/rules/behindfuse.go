package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// judge compares the fuse with every piece of a wire.
func (f *fusing) judge(w *wiring.Wire, b behind) {
	bundled := f.bundles[w.Loom]
	var worst weak
	for _, piece := range w.Pieces {
		if isPigtail(piece) || w.Cord() {
			continue
		}
		if !piece.Size.Known() {
			f.pass.NotChecked(w.Name(), fmt.Sprintf("it has no size, so nobody can say whether %s protects it", fuseName(b.fuse)), w.Span("size"))
			continue
		}
		one, ok := f.weigh(w, piece, b, bundled)
		if ok && b.amps > one.most && (worst.carries.amps == 0 || one.carries.amps < worst.carries.amps) {
			worst = one
		}
	}
	if worst.carries.amps > 0 {
		f.report(w, b, worst)
	}
}

// weak is a piece of a wire, what it may carry, and the largest fuse that may stand before
// it.
type weak struct {
	piece   wiring.Piece
	carries carries
	most    quantity.Ampere
}

// weigh finds what a piece may carry and the largest fuse before it.
func (f *fusing) weigh(w *wiring.Wire, piece wiring.Piece, b behind, bundled int) (weak, bool) {
	c, err := pieceCarries(f.pass, w, piece.Size, bundled)
	if err != nil {
		f.pass.NotChecked(w.Name(), err.Error(), pieceSpan(w, piece))
		return weak{}, false
	}
	if c.thin {
		return weak{piece, c, c.amps}, true
	}
	return weak{piece, c, f.most(c.amps, b.fuse)}, true
}

// most is the largest rating that may protect an ampacity, by the clause that holds from
// 50 V up.
func (f *fusing) most(amps quantity.Ampere, fuse *wiring.Fuse) quantity.Ampere {
	series, ok := f.pass.Handbook.FuseSeries(fuse.Style)
	if !ok {
		return amps
	}
	return f.pass.Handbook.HighestFuse(amps, f.pass.Handbook.FuseLine(), series)
}

func (f *fusing) report(w *wiring.Wire, b behind, worst weak) {
	level := diag.Warning
	if float64(b.amps) > 1.5*float64(worst.carries.amps) {
		level = diag.Error
	}
	what := "behind"
	if b.back {
		what = "in the return of"
	}
	detail := fmt.Sprintf("%s is %s %s, by %s. Its %s, %v, may carry %v (%s); a fuse of %v at most may protect it.", w.Name(), what, fuseName(b.fuse), b.way,
		pieceWord(worst.piece), worst.piece.Size, worst.carries.amps, worst.carries.basis, worst.most)
	if b.amps < b.fuse.Rating {
		detail += fmt.Sprintf(" %s gives up to %v.", b.supply.Element.Base().Part.Designation, b.amps)
	}
	if breaker, fuse, ok := f.pass.Handbook.FAAProtector(worst.piece.Size); ok {
		detail += faaText(b.fuse, breaker, fuse)
	}
	f.pass.Report(diag.Finding{
		Level:    level,
		Message:  fmt.Sprintf("%s of %v protects %s, which may carry %v", fuseName(b.fuse), b.fuse.Rating, w.Name(), worst.carries.amps),
		Detail:   detail,
		Advice:   f.advice(w, b, worst),
		At:       pieceSpan(w, worst.piece),
		Related:  defined(fuseName(b.fuse), fuseSpan(b.fuse)),
		Subjects: subjects([]string{w.Name(), b.fuse.Part.Designation, b.fuse.Ref()}),
	})
}

// advice is a smaller fuse, or one of its own where the wire leaves thicker ones.
func (f *fusing) advice(w *wiring.Wire, b behind, worst weak) string {
	thicker := false
	area, _ := f.pass.Handbook.Area(worst.piece.Size)
	for _, before := range b.way.Wires() {
		size := thinnest(f.pass.Handbook, before)
		if other, err := f.pass.Handbook.Area(size); err == nil && size.Known() && other > area && before != w {
			thicker = true
		}
	}
	if thicker && !b.back {
		at := b.way.End
		for _, s := range b.way.Steps {
			if s.Edge.Wire == w {
				at = s.From
				break
			}
		}
		return fmt.Sprintf("Put a fuse of at most %v into %s where it leaves %s, or lay a larger wire.", worst.most, w.Name(), f.pass.Graph.Name(at))
	}
	return fmt.Sprintf("Fit at most %v in %s, or lay a larger %s.", worst.most, fuseName(b.fuse), w.Name())
}

// faaText is the figure of the aircraft circular, printed beside ours.
func faaText(f *wiring.Fuse, breaker, fuse quantity.Ampere) string {
	word, amps := "fuse", fuse
	if f.Style == "breaker" && breaker > 0 {
		word, amps = "breaker", breaker
	}
	return fmt.Sprintf(" AC 43.13-1B Table 11-3 gives a %s of %v for a hot bundle.", word, amps)
}

// pieceWord says which piece of a wire is meant.
func pieceWord(piece wiring.Piece) string {
	switch piece.Kind {
	case wiring.LeadPiece:
		return "lead"
	case wiring.ExtendPiece:
		return "extension"
	}
	return "wire"
}
