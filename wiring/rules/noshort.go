package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func noShort() *rule.Rule {
	return &rule.Rule{
		ID:    "no-short",
		Title: "no position of any switch joins the poles of a supply without a load between them",
		Level: diag.Error,
		Why: "A 16S pack drives over 5 kA through two feet of cable. A 5 A fuse in such a loop opens at once, every time the switch is thrown; " +
			"without a fuse the contact welds, the cable burns, and the pack's own electronics, which switch some 350 A, may fail closed. " +
			"Two packs of unequal charge in parallel do the same to each other: 1 V apart, behind 20 mohm, 50 A flow.",
		Do: "Take the wire off that closes the loop, or put the load back that belongs into it. Old batteries that stay for a while are not joined to the pack.",
		Source: "Common practice, no published source. A loop counts if one of its fuses would carry more than 3 times its rating, or if the battery " +
			"would give more than it can: our own choice.",
		Wrong: `parts:
  S8: {kind: key-switch, title: lights, place: dash}
wires:
  W101: {from: X13, to: S8.in, colour: PK, size: 16 AWG, length: 2 ft}
  W102: {from: S8.out, to: X3.5, colour: PK, size: 16 AWG, length: 2 ft}   # straight to negative: the lamp was forgotten
`,
		Right: `parts:
  S8: {kind: key-switch, title: buzzer, place: dash}
  P1: {kind: buzzer, place: dash}
wires:
  W101: {from: X13, to: S8.in, colour: PK, size: 16 AWG, length: 2 ft}
  W102: {from: S8.out, to: P1.+, colour: PK, size: 16 AWG, length: 2 ft}
  W103: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 2 ft}
`,
		Run:    runNoShort,
		Proves: []*position.Property{position.NoShort()},
	}
}

func runNoShort(p *rule.Pass) {
	told := map[*wiring.Wire]bool{}
	for _, r := range p.Proofs() {
		for _, x := range r.Counterexamples {
			reportShort(p, x, told)
		}
	}
}

// reportShort says once of each wire that it closes a loop: a charger that is plugged in is
// shorted by the wire that shorts the battery. A diode that is the wrong way round and a wire
// that joins two buses have been told.
func reportShort(p *rule.Pass, x position.Counterexample, told map[*wiring.Wire]bool) {
	f := counterexample(p, x)
	f.Message = fmt.Sprintf("%s is shorted", titled(x.Element.Base().Part))
	if x.State.Name != atRest {
		f.Message += " with " + x.State.Name
	}
	f.Advice = "Take the way apart before anything is energised."
	if len(x.Ways) > 0 {
		w, n := newestOf(p, x.Ways[0])
		if w != nil && (told[w] || p.Reported("buses-apart", w.Name())) || p.Blamed(diodesOn(x.Ways[0])...) {
			return
		}
		if w != nil {
			told[w] = true
			f.Advice = fmt.Sprintf("Take %s off %s.", w.Name(), p.Graph.Name(n))
		}
		f.Detail += opensFirst(p, x)
	}
	p.Report(f)
}

// diodesOn names the diodes of a way.
func diodesOn(way position.Way) []string {
	var names []string
	for _, e := range way.Feed.Elements(path.Diode) {
		names = append(names, e.Base().Part.Designation)
	}
	return names
}

// opensFirst says what the smallest fuse of a short does.
func opensFirst(p *rule.Pass, x position.Counterexample) string {
	var least *wiring.Fuse
	for _, f := range fusesOn(x.Ways[0].Feed) {
		if f.Rating > 0 && (least == nil || f.Rating < least.Rating) {
			least = f
		}
	}
	if least == nil {
		return " No fuse is in it."
	}
	o := p.Figures().FuseOpening(least, quantity.Ampere(3)*least.Rating)
	if o.Class == figure.OpeningUnknown {
		return fmt.Sprintf(" The first to open is %s, of %v.", fuseName(least), least.Rating)
	}
	return fmt.Sprintf(" The first to open is %s, of %v: at 3 times that it %v.", fuseName(least), least.Rating, o.Class)
}
