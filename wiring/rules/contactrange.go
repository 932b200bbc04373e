package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func contactRange() *rule.Rule {
	return &rule.Rule{
		ID:    "contact-range",
		Title: "no switch, relay contact or electronic switch carries more than it is rated for",
		Level: diag.Warning,
		Why: "A push button of 3 A that feeds a horn of 4 A works for a summer: its contact heats, the silver wanders, and it welds shut or burns open. " +
			"A welded key contact leaves the cart on for ever; a burnt one leaves it dead where it stands. What it is rated for counts at its voltage on " +
			"direct current, which fuse-voltage looks at.",
		Do:     "Let a relay carry the current and the switch only its coil, or take a switch for the current.",
		Source: "The ratings of the devices themselves. Common practice, no published source.",
		Wrong: `parts:
  E1: {kind: light-bar, power: 60 W, place: front}
  S6: {kind: rocker, contact: 3 A at 16 V, title: lights, place: dash}
wires:
  W71: {from: A1.1, to: S6.in, colour: OG, size: 14 AWG, length: 18 in}
  W72: {from: S6.out, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Right: `parts:
  E1: {kind: light-bar, power: 60 W, place: front}
  S6: {kind: rocker, contact: 20 A at 16 V, title: lights, place: dash}
wires:
  W71: {from: A1.1, to: S6.in, colour: OG, size: 14 AWG, length: 18 in}
  W72: {from: S6.out, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runContactRange,
	}
}

// signal is the current below which any contact will do. Our own choice.
const signal = quantity.Ampere(0.1)

func runContactRange(p *rule.Pass) {
	var switching []wiring.Element
	for _, o := range openers(p.Harness) {
		if _, fuse := o.element.(*wiring.Fuse); !fuse {
			switching = append(switching, o.element)
		}
	}
	flows := largestAmps(p, switching)
	for i, el := range switching {
		rated, must := contactRated(el)
		switch {
		case flows[i].amps < signal:
		case rated == 0 && must:
			p.NotChecked(el.Base().Ref(), fmt.Sprintf("it carries %s and does not say what it may carry", amps(flows[i].amps)), el.Base().Part.At)
		case rated > 0 && flows[i].amps > rated:
			reportContact(p, el, flows[i], rated)
		}
	}
}

// contactRated is the current that something that switches may carry, and whether it must
// say so: a breaker is rated by its trip, and an electronic switch by its device.
func contactRated(el wiring.Element) (rated quantity.Ampere, must bool) {
	switch el := el.(type) {
	case *wiring.Switch:
		return el.Rated.Amps, !hasFuse(el.Part)
	case *wiring.Contact:
		return el.Rated.Amps, true
	case *wiring.Driver:
		return el.Rated.Amps, false
	}
	return 0, false
}

func hasFuse(part *wiring.Part) bool {
	for _, el := range part.Elements {
		if _, ok := el.(*wiring.Fuse); ok {
			return true
		}
	}
	return false
}

func reportContact(p *rule.Pass, el wiring.Element, flow most, rated quantity.Ampere) {
	part := el.Base().Part
	at := part.At
	for _, key := range []string{"contact", "output", "kind"} {
		if span, ok := part.Where[key]; ok {
			at = span
			break
		}
	}
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s carries %s and is rated %v", openerName(el), amps(flow.amps), rated),
		Detail:   fmt.Sprintf("In the state %s.", flow.state),
		Advice:   "Let a relay carry the current, or take one that is rated for it.",
		At:       at,
		Related:  defined(part.Designation, part.At),
		Subjects: []string{part.Designation, el.Base().Ref()},
		States:   []string{flow.state},
	})
}
