package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/rule"
)

func noDriveOnCharge() *rule.Rule {
	return &rule.Rule{
		ID:    "no-drive-on-charge",
		Title: "the cart cannot be driven while its charger is plugged in",
		Level: diag.Error,
		Why: "A cart that drives off with its cord in tears inlet, cord and outlet out, with 120 V AC on the loose end. The factory's reed opened with the " +
			"plug; whoever bridges the interlock lead to get the cart moving takes that away. A lockout in the charger watches for AC within " +
			"a second or so, and does not see a cord in a dead outlet.",
		Do: "Lead the interlock lead through the lockout contact of the new charger, or through an inlet with a switch of its own, which acts on the plug " +
			"and so on a dead outlet, too. Where neither exists, say so on the cart: unplug before driving.",
		Source: "Common practice, no published source. Proved over plug in and out, AC live and dead, and every position of all other switches.",
		Wrong: `parts:
  X15: {kind: splice, title: interlock, place: seat box}
wires:
  W101: {from: F4.out, to: X15, colour: GN, size: 18 AWG, length: 6 in}
  W57: {from: X15}            # on to T1.lock-a as before
  W37: {to: X15}              # but the lead is on the near side of the contact: it drives with the cord in
  W102: {from: T1.lock-b, to: X15}
`,
		Right: `wires:
  W37: {to: T1.lock-b}        # T1.lock-a goes to pack positive through its own fuse
`,
		Run:    runNoDriveOnCharge,
		Proves: []*position.Property{position.NoDriveOnCharge(), position.NoDriveWithCord()},
	}
}

func runNoDriveOnCharge(p *rule.Pass) {
	results := p.Proofs()
	if len(results) < 2 {
		return
	}
	live := false
	for _, x := range results[0].Counterexamples {
		live = true
		reportDrive(p, x)
	}
	for _, x := range results[1].Counterexamples {
		if !live {
			reportDeadOutlet(p, x)
		}
	}
}

// reportDrive is an error where something on the cart claims to stop it; where the
// interlock was bypassed and nothing took its place, it is a warning that belongs on the
// hand-over sheet. An interlock lead that is landed wrongly has been told.
func reportDrive(p *rule.Pass, x position.Counterexample) {
	if p.Blamed(interlockNames(p)...) {
		return
	}
	f := counterexample(p, x)
	f.Message = fmt.Sprintf("the cart drives with the plug in: %s", positionWords(x.State))
	f.Detail += because(x)
	if locks := lockouts(p); len(locks) > 0 {
		f.Detail += fmt.Sprintf(" %s could stop it and does not.", list(locks))
		f.Advice = fmt.Sprintf("Lead the interlock lead through the contact of %s.", list(locks))
		f.Subjects = subjects(f.Subjects, locks)
	} else {
		f.Level = diag.Warning
		f.Detail += " Nothing on this cart stops it."
		f.Advice = "Lead the interlock lead through a lockout contact in charger or inlet; else write it on the hand-over sheet and at the key: unplug before driving."
	}
	f.At = interlockPlace(p, x)
	p.Report(f)
}

// interlockNames names the interlock leads.
func interlockNames(p *rule.Pass) []string {
	if p.Harness.Interlock == nil {
		return nil
	}
	return wireNames(p.Harness.Interlock.Wires)
}

// interlockPlace is where the interlock lead is landed; on a cart without one the plug that
// is in.
func interlockPlace(p *rule.Pass, x position.Counterexample) diag.Span {
	if il := p.Harness.Interlock; il != nil {
		for _, w := range il.Wires {
			_, landed := interlockEnds(p.Harness, w)
			return endSpan(w, landed)
		}
	}
	return plugPlace(p, x)
}

// plugPlace is where the part stands whose plug is in.
func plugPlace(p *rule.Pass, x position.Counterexample) diag.Span {
	for _, c := range position.Moved(p.Harness, x.State) {
		if c.Name == "plug" {
			return c.Part.At
		}
	}
	return p.Harness.Identity.At
}

func reportDeadOutlet(p *rule.Pass, x position.Counterexample) {
	f := counterexample(p, x)
	f.Level = diag.Note
	f.Message = "the cart drives while its cord is in a dead outlet"
	f.Detail = fmt.Sprintf("What stops it while it charges watches for AC, not for the plug. Found with %s.", positionWords(x.State))
	f.Advice = "Say so at hand-over, or take an inlet with an interlock switch, which acts on the plug."
	f.At = plugPlace(p, x)
	p.Report(f)
}

// lockouts names the parts of the cart that have a contact to stop it while it charges, with
// wires at both of its ends: one whose leads are capped claims nothing.
func lockouts(p *rule.Pass) []string {
	var names []string
	for _, e := range p.Graph.Edges() {
		if e.Element != nil && lockout(e) && landedOn(p, e.A) && landedOn(p, e.B) {
			names = append(names, e.Part().Designation)
		}
	}
	return natural(names)
}

// landedOn reports whether a wire joins a node to another.
func landedOn(p *rule.Pass, n wiring.NodeID) bool {
	for _, e := range p.Graph.At(n) {
		if e.Wire != nil {
			return true
		}
	}
	return false
}
