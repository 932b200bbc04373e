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
		Why: "A fuse of 30 A holds 30 A for ever and may hold 40 A for minutes. Behind it 18 AWG with 105 C insulation may carry 19 A at 40 C: " +
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
	f := fusing{pass: p, worst: map[*wiring.Wire]behind{}, bundles: bundles(p)}
	for _, s := range p.Supplies() {
		f.along(s)
	}
	for _, w := range p.Harness.Wires {
		if b, ok := f.worst[w]; ok && b.way.Agrees() {
			f.judge(w, b)
		} else if ok {
			p.NotChecked(w.Name(), "the largest fuse in front of it stands behind a changeover switch", w.At)
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

	bundles map[string]int // by loom
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
