package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func smallestWire() *rule.Rule {
	return &rule.Rule{
		ID:    "smallest-wire",
		Title: "no wire of 1 A and more is thinner than 16 AWG, or 18 AWG inside a sheath",
		Level: diag.Note,
		Why: "A thin wire breaks before it melts: at a crimp, where it is pulled through a frame, under a shoe. 18 AWG has 16 strands " +
			"and breaks at some 170 N; 16 AWG stands half as much again. With its strands half gone it gets hot there, and " +
			"the fuse, which is sized for the whole wire, sees nothing.",
		Do: "Lay 16 AWG or more, or several wires in a common sheath; support either every 24 in. Pigtails under 7 in and circuits under 1 A may be thinner.",
		Source: "33 CFR 183.425(d), (e), (g); support: 46 CFR 183.340(b)(4). A yardstick of boats: it does not bind a cart. " +
			"Breaking loads from memory.",
		Wrong: `parts:
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
wires:
  W74: {from: A1.2, to: P3.+, colour: BN, size: 18 AWG, length: 4 ft}
  W75: {from: P3.-, to: S7.in, colour: BK/BN, size: 16 AWG, length: 4 ft}
  W76: {from: S7.out, to: A1.n, colour: BK, size: 16 AWG, length: 18 in}
`,
		Right: `parts:
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
wires:
  W74: {from: A1.2, to: P3.+, colour: BN, size: 16 AWG, length: 4 ft}
  W75: {from: P3.-, to: S7.in, colour: BK/BN, size: 16 AWG, length: 4 ft}
  W76: {from: S7.out, to: A1.n, colour: BK, size: 16 AWG, length: 18 in}
`,
		Run: runSmallestWire,
	}
}

func runSmallestWire(p *rule.Pass) {
	flows := wireFlows(p)
	exempt, _ := p.Handbook.Limit("exempt-current")
	for i, w := range p.Harness.Wires {
		if w.Cord() || float64(flows[i].amps) < exempt.Amount.Value {
			continue
		}
		for j := range w.Pieces {
			judgePiece(p, w, &w.Pieces[j], flows[i])
		}
	}
}

// wireFlows is the largest current of each wire over all states and charges.
func wireFlows(p *rule.Pass) []most {
	flows := make([]most, len(p.Harness.Wires))
	p.Sweep(func(s *wiring.State, _ rule.Charge, at *settle.Point) {
		for i, w := range p.Harness.Wires {
			flows[i].note(at.WireAmps(w, 0), s)
		}
	})
	return flows
}

func judgePiece(p *rule.Pass, w *wiring.Wire, piece *wiring.Piece, flow most) {
	if piece.Kind == wiring.LeadPiece || !piece.Size.Known() {
		return // a lead is as its maker ships it; that a size is missing others say
	}
	pigtail, _ := p.Handbook.Limit("exempt-pigtail")
	if piece.Length.Known() && piece.Length.Value < pigtail.Amount.Value {
		return
	}
	sheathed := inSheath(p.Harness, w)
	least := p.Handbook.SmallestConductor(sheathed)
	if !thinner(p, piece.Size, least) {
		return
	}
	run := "run singly"
	if sheathed {
		run = "in a sheath"
	}
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s carries %s and is %v; %s the thinnest is %v", w.Name(), amps(flow.amps), piece.Size, run, least),
		Detail:   fmt.Sprintf("In the state %s. Thin wire breaks before it melts.", flow.state),
		Advice:   fmt.Sprintf("Lay %v, or put several wires into one sheath; support it every 24 in.", least),
		At:       w.Span("size"),
		Related:  defined(w.Name(), w.At),
		Subjects: []string{w.Name()},
	})
}

// inSheath reports whether a wire is one of a multi-core cable.
func inSheath(h *wiring.Harness, w *wiring.Wire) bool {
	for _, l := range h.Looms {
		if w.Loom != "" && wiring.Fold(l.Name) == wiring.Fold(w.Loom) {
			return l.Cover == "sheath"
		}
	}
	return false
}

func thinner(p *rule.Pass, size, than quantity.Size) bool {
	a, err := p.Handbook.Area(size)
	if err != nil {
		return false
	}
	b, err := p.Handbook.Area(than)
	return err == nil && a < b
}
