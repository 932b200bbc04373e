package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fuseProtectsWire() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-protects-wire",
		Title: "a fuse is rated at most what each conductor behind it may carry, or the next standard size up",
		Level: diag.Error,
		Why: "A fuse of 30 A holds 30 A for ever and 40 A for minutes. Behind it 18 AWG with 105 C insulation may carry 19 A at 40 C: " +
			"a half-short of 28 A through a wet plug heats it to more than twice that rise, and the fuse does not know. " +
			"The thinnest piece counts, down to the next fuse: where a wire is spliced to a thinner one, that is the one that burns.",
		Do: "Fit a smaller fuse if the load allows it, lay a larger wire, or put a fuse where the wire gets thinner.",
		Source: "33 CFR 183.455(c)(2): at most 100 % of the table current or the next standard size up, never over 150 %. We hold to that clause at " +
			"every voltage; the regulation allows 150 % below 50 V nominal. AC 43.13-1B para 11-48 is stricter: the protector opens before the wire's rating. " +
			"Table currents: 33 CFR 183.425 Table 5, by sqrt((Tc - Ta) / (Tc - 30)) to the ambient; bundles by its note 2.",
		Wrong: `parts:
  A1: {fuses: {3: 20 A}}
  X5: {kind: usb-outlet}
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 18 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 18 AWG, length: 2 ft}
`,
		Right: `parts:
  A1: {fuses: {3: 5 A}}
  X5: {kind: usb-outlet}
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 18 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 18 AWG, length: 2 ft}
`,
		Run: runFuseProtectsWire,
	}
}

func runFuseProtectsWire(p *rule.Pass) {
	f := fusing{pass: p, worst: map[*wiring.Wire]behind{}}
	for _, s := range p.Supplies() {
		f.along(s)
	}
	for _, w := range p.Harness.Wires {
		if b, ok := f.worst[w]; ok {
			f.judge(w, b)
		}
	}
}

// behind is the fuse that a wire is behind, and how a fault current comes there.
type behind struct {
	amps   quantity.Ampere
	fuse   *wiring.Fuse
	way    path.Path
	supply *path.Supply
	back   bool // it carries the current of that fuse back
}

type fusing struct {
	pass  *rule.Pass
	worst map[*wiring.Wire]behind // the largest fuse that each wire is behind
}

// along follows a supply's positive through everything but drives and loads, and then the
// return of each consumer that it finds.
func (f *fusing) along(s *path.Supply) {
	protection := f.pass.Graph.Protection(faultThrough(f.pass, s), s.Plus, s.Limit)
	for _, w := range f.pass.Harness.Wires {
		for _, pair := range w.Joins() {
			if f.pass.Negative(pair[0]) || !protection.Has(pair[0]) || !protection.Has(pair[1]) {
				continue
			}
			for _, n := range pair {
				if amps, fuse := protection.At(n); fuse != nil {
					way, _ := protection.To(n)
					f.put(w, behind{amps: amps, fuse: fuse, way: way, supply: s})
				}
			}
		}
	}
	f.returns(s, protection)
}

func (f *fusing) put(w *wiring.Wire, b behind) {
	if before, ok := f.worst[w]; !ok || b.amps > before.amps {
		f.worst[w] = b
	}
}

// returns puts the wires by which each consumer's current goes back behind its fuse.
func (f *fusing) returns(s *path.Supply, protection *path.Protection) {
	back := carrying()
	back.Against = true
	reach := f.pass.Graph.From(back, s.Minus)
	for _, c := range consumers(f.pass.Graph) {
		amps, fuse := protection.At(c.plus)
		if fuse == nil || f.pass.Controller(c.part) || c.part.Kind.Traction {
			continue
		}
		way, ok := reach.To(c.minus)
		if !ok {
			continue
		}
		for _, w := range way.Wires() {
			f.put(w, behind{amps: amps, fuse: fuse, way: way, supply: s, back: true})
		}
	}
}

// judge compares the fuse with every piece of a wire.
func (f *fusing) judge(w *wiring.Wire, b behind) {
	bundled := bundle(f.pass, w)
	var worst weak
	for _, piece := range w.Pieces {
		if isPigtail(piece) || piece.Auto || w.Cord() {
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

// weigh finds what a piece may carry: by the ampacity table, and where it is thinner than
// that begins, by the aircraft circular.
func (f *fusing) weigh(w *wiring.Wire, piece wiring.Piece, b behind, bundled int) (weak, bool) {
	if c, err := pieceCarries(f.pass, w, piece.Size, bundled); err == nil {
		return weak{piece, c, f.most(c.amps, b.fuse)}, true
	}
	_, fuse, ok := f.pass.Handbook.FAAProtector(piece.Size)
	if !ok {
		f.pass.NotChecked(w.Name(), fmt.Sprintf("no table has %v", piece.Size), pieceSpan(w, piece))
		return weak{}, false
	}
	return weak{piece, carries{amps: fuse, basis: "AC 43.13-1B Table 11-3; the ampacity table ends at 18 AWG"}, fuse}, true
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

// fuseName is a fuse as people call it: its part, or the element where a part has many.
func fuseName(f *wiring.Fuse) string {
	if f.Channel > 0 {
		return f.Ref()
	}
	return f.Part.Designation
}

// fuseSpan is where a fuse's rating was written.
func fuseSpan(f *wiring.Fuse) diag.Span {
	if f.Channel > 0 {
		return f.Part.Span(fmt.Sprintf("fuses.%d", f.Channel))
	}
	return f.Part.Span("rating")
}

// pieceSpan is where the size of a piece was written.
func pieceSpan(w *wiring.Wire, piece wiring.Piece) diag.Span {
	if piece.Kind == wiring.CutPiece {
		return w.Span("size")
	}
	if piece.At.Known() && piece.Kind == wiring.ExtendPiece {
		return piece.At
	}
	return w.At
}
