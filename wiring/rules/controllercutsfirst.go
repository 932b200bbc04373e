package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func controllerCutsFirst() *rule.Rule {
	return &rule.Rule{
		ID:    "controller-cuts-first",
		Title: "the controller stops driving before the pack switches itself off",
		Level: diag.Warning,
		Why: "A controller that runs low slows the cart down and says so. A pack that reaches its cut-off (40 V for 16S) opens at once: " +
			"drive, 12 V, horn and brake lamps go together, at whatever speed the cart has. A controller set for lead-acid may drive down to 32 V, " +
			"and then the pack always comes first.",
		Do:     "Set the controller's under-voltage limit above the pack's cut-off, by 1 to 2 V for the sag under load: 42 V for 16S, 32 V for 12S.",
		Source: "Cut-off 2.5 V an LFP cell: public charts. Common practice, no published source.",
		Wrong: `parts:
  U1: {cuts: 36 V}
`,
		Right: `parts:
  U1: {cuts: 42 V}
`,
		Run: runControllerCutsFirst,
	}
}

func runControllerCutsFirst(p *rule.Pass) {
	pack := highest(p)
	if pack == nil || !isGuarded(p, pack) {
		return // old batteries switch nothing off
	}
	for _, part := range p.Harness.Parts {
		if !p.Controller(part) {
			continue
		}
		d := drive(part, func(d *wiring.Driver) bool { return d.Cuts > 0 })
		switch {
		case d == nil:
			p.NotChecked(part.Designation, "it does not say below which voltage it stops driving", part.At)
		case d.Cuts <= cutOff(pack):
			reportCuts(p, pack, d)
		}
	}
}

func isGuarded(p *rule.Pass, s *path.Supply) bool {
	for _, each := range guarded(p) {
		if each == s {
			return true
		}
	}
	return false
}

// drive is the first driver of a part for which something is stated; nil if none.
func drive(part *wiring.Part, stated func(*wiring.Driver) bool) *wiring.Driver {
	for _, el := range part.Elements {
		if d, ok := el.(*wiring.Driver); ok && stated(d) {
			return d
		}
	}
	return nil
}

func reportCuts(p *rule.Pass, pack *path.Supply, d *wiring.Driver) {
	source := pack.Element.Base().Part
	p.Report(diag.Finding{
		Message: fmt.Sprintf("%s drives down to %v, and %s switches itself off at %s", d.Part.Designation, d.Cuts, source.Designation, volts(cutOff(pack))),
		Detail:  "The pack comes first: drive, 12 V, horn and lamps go at once, at speed.",
		Advice:  fmt.Sprintf("Set the under-voltage limit of %s above %s, by 1 to 2 V.", d.Part.Designation, volts(cutOff(pack))),
		At:      d.Part.Span("cuts"), Related: defined(source.Designation, source.At),
		Subjects: []string{d.Part.Designation, source.Designation},
	})
}
