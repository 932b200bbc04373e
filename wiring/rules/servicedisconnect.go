package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func serviceDisconnect() *rule.Rule {
	return &rule.Rule{
		ID:    "service-disconnect",
		Title: "a contact that a hand reaches takes the whole pack off the cart",
		Level: diag.Note,
		Why: "The pack's own switch is no disconnect: its transistors leak, show ghost volts to a meter and can fail closed. With nothing else, " +
			"whoever works on the cart or stands before a smoking seat has to undo a live lug: 54 V and 5 kA behind it.",
		Do: "Fit a battery switch, or a connector pair that can be pulled, in the positive or negative of the pack, before everything else, within " +
			"reach without tools. Without one, say at hand-over that the pack is isolated by taking its negative lug off first.",
		Source: "Common practice, no published source.",
		Wrong: `parts:
  Q1: {kind: battery-switch, place: seat box}
wires:
  W101: {from: G1.-, to: Q1.in, colour: BK, size: 2 AWG, length: 12 in, insulation: 105 C}
  W7: {from: Q1.out}       # the drive alone: the negative bus stays on the post
`,
		Right: `parts:
  Q1: {kind: battery-switch, place: seat box}
wires:
  W101: {from: G1.-, to: Q1.in, colour: BK, size: 2 AWG, length: 12 in, insulation: 105 C}
  W7: {from: Q1.out}
  W52: {from: Q1.out}
`,
		Run: runServiceDisconnect,
	}
}

func runServiceDisconnect(p *rule.Pass) {
	for _, s := range p.Supplies() {
		if !s.Battery() || s.Top().Full < controlBus || standsUnder(p, s) || !drives(p.Harness) {
			continue
		}
		if isolators := isolating(p, s); len(isolators) == 0 {
			reportNoDisconnect(p, s)
		}
	}
}

// standsUnder reports whether another battery stands on this one: a string is asked once,
// at its top.
func standsUnder(p *rule.Pass, s *path.Supply) bool {
	for _, each := range p.Supplies() {
		for _, under := range each.Under {
			if under == s {
				return true
			}
		}
	}
	return false
}

// isolating lists the parts whose hand switch or plug, opened, leaves nothing of the cart
// on a battery.
func isolating(p *rule.Pass, s *path.Supply) []*wiring.Part {
	var all []*wiring.Part
	for _, part := range p.Harness.Parts {
		if part != s.Element.Base().Part && hasSwitch(part) && (alone(p, s, s.Plus, part) || alone(p, s, s.Bottom, part)) {
			all = append(all, part)
		}
	}
	return all
}

func hasSwitch(part *wiring.Part) bool {
	for _, el := range part.Elements {
		if _, ok := el.(*wiring.Switch); ok {
			return true
		}
	}
	return false
}

// alone reports whether nothing that takes current can be reached from a pole of a battery
// once the switches of a part are open.
func alone(p *rule.Pass, s *path.Supply, pole wiring.NodeID, without *wiring.Part) bool {
	pack := s.Element.Base().Part
	through := path.Through{Sorts: path.Conducting | path.Source, Against: pole != s.Plus}.Only(func(e *path.Edge) bool {
		return e.Sort != path.Switch || e.Part() != without
	}).Only(func(e *path.Edge) bool { return e.Sort != path.Source || e.Part() != pack })
	for _, n := range p.Graph.From(through, pole).Nodes() {
		for _, e := range p.Graph.At(n) {
			if e.Sort&(path.Consumers|path.Charger|path.Resistor) != 0 && e.Part() != pack {
				return false
			}
		}
	}
	return true
}

func reportNoDisconnect(p *rule.Pass, s *path.Supply) {
	part := s.Element.Base().Part
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("nothing that a hand reaches takes %s off the cart", part.Designation),
		Detail:   "Its own switch is no disconnect: transistors leak, and can fail closed.",
		Advice:   fmt.Sprintf("Fit a battery switch or a connector pair before everything else; until then isolate by taking the lug off %s first.", p.Graph.Name(s.Bottom)),
		At:       part.Span("kind"),
		Subjects: []string{part.Designation},
	})
}
