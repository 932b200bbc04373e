package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func regenHasAHome() *rule.Rule {
	return &rule.Rule{
		ID:    "regen-has-a-home",
		Title: "what braking pushes back finds a pack that takes it, or is cut back before anything is overvolted",
		Level: diag.Warning,
		Why: "A pack that is full, cold or hurt blocks charge while it still drives. Braking then has nowhere to go: 60 A into the 5.7 mF of controller and " +
			"reducer pass 64 V in 0.5 ms and 70 V in 1.1 ms, and everything on the posts sees it. More current than the pack takes makes it " +
			"open in the middle of the descent, with the same end.",
		Do: "Set the controller's braking current to the pack's charge limit or less, and its upper voltage limit below what every device " +
			"on the bus stands. Say at hand-over that a full pack gives no braking: not full before a descent.",
		Source: "v = i t / C. Field cases of owners. Common practice, no published source.",
		Wrong: `parts:
  U1: {regen: 80 A}          # the pack takes 50 A
`,
		Right: `parts:
  U1: {regen: 50 A}
`,
		Run: runRegenHasAHome,
	}
}

func runRegenHasAHome(p *rule.Pass) {
	pack := highest(p)
	if pack == nil || !isGuarded(p, pack) {
		return // old batteries take what comes
	}
	for _, part := range p.Harness.Parts {
		d := drive(part, func(d *wiring.Driver) bool { return d.Regen > 0 })
		if d == nil || !p.Controller(part) {
			continue
		}
		judgeCharge(p, pack, d)
		judgeBus(p, pack, d)
	}
}

// judgeCharge holds the braking current against what the pack takes.
func judgeCharge(p *rule.Pass, pack *path.Supply, d *wiring.Driver) {
	source := pack.Element.(*wiring.Source)
	limit := quantity.Ampere(0)
	for _, s := range guarded(p) { // packs side by side share it
		if s.Top().Full == pack.Top().Full {
			limit += s.Element.(*wiring.Source).Charge
		}
	}
	switch {
	case source.Charge == 0:
		p.NotChecked(source.Part.Designation, fmt.Sprintf("it does not say what charge it takes; %s brakes with %v", d.Part.Designation, d.Regen), source.Part.At)
	case d.Regen > limit:
		p.Report(diag.Finding{
			Message:  fmt.Sprintf("%s brakes with %v, and %s takes %v", titled(d.Part), d.Regen, source.Part.Designation, limit),
			Detail:   "Its protection opens on the descent: no braking by the motor, and the bus rises.",
			Advice:   fmt.Sprintf("Set the braking current of %s to %v or less.", d.Part.Designation, limit),
			At:       d.Part.Span("regen"),
			Related:  defined(source.Part.Designation, source.Part.At),
			Subjects: []string{d.Part.Designation, source.Part.Designation},
		})
	}
}

// judgeBus holds the voltage that braking may lift the bus to against what stands on it.
func judgeBus(p *rule.Pass, pack *path.Supply, d *wiring.Driver) {
	if d.Holds == 0 {
		p.NotChecked(d.Part.Designation, "it does not say at which voltage it cuts braking back", d.Part.At)
		return
	}
	weakest := weakestOnBus(p, pack)
	if weakest == nil || weakest.most >= d.Holds {
		return
	}
	part := weakest.element.Base().Part
	f := diag.Finding{
		Message:  fmt.Sprintf("braking may lift the bus to %v, and %s stands %v", d.Holds, titled(part), weakest.most),
		Advice:   fmt.Sprintf("Set the upper voltage limit of %s below %v.", d.Part.Designation, weakest.most),
		At:       d.Part.Span("holds"),
		Related:  defined(part.Designation, part.At),
		Subjects: subjects([]string{d.Part.Designation, part.Designation, weakest.name()}),
	}
	if farads := onBus(p, pack); farads > 0 {
		rise := float64(weakest.most - pack.Top().Full)
		f.Detail = fmt.Sprintf("With a full pack that blocks charge, %v into %.3g mF get there in %.2g ms.", d.Regen, float64(farads)*1000, max(0, rise)*float64(farads)/float64(d.Regen)*1000)
	}
	p.Report(f)
}

// weakestOnBus is what stands the least of all that hangs on the pack while the cart
// drives; nil if nothing does.
func weakestOnBus(p *rule.Pass, pack *path.Supply) *pressed {
	driving := firstMoving(p.Harness)
	if driving == nil {
		return nil
	}
	at := p.Point(driving, rule.Full)
	if at == nil {
		return nil
	}
	bus := float64(at.Across(pack.Plus, pack.Bottom))
	var weakest *pressed
	for _, t := range pressedThings(p) {
		if t.most <= 0 || t.element.Base().Part.Kind.Traction || float64(at.Across(t.a, t.b)) < 0.95*bus {
			continue
		}
		if weakest == nil || t.most < weakest.most {
			weakest = t
		}
	}
	return weakest
}

// onBus adds up the capacitors that the main contact joins to the pack.
func onBus(p *rule.Pass, pack *path.Supply) quantity.Farad {
	reach := p.Graph.From(path.Through{Sorts: path.Metal}.Until(p.Negative), pack.Plus)
	total := quantity.Farad(0)
	for _, c := range elementsOf[*wiring.Capacitor](p.Harness) {
		if reach.Has(c.A) {
			total += c.Farads
		}
	}
	return total
}
