package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func followsTheKey() *rule.Rule {
	return &rule.Rule{
		ID:    "follows-the-key",
		Title: "the switched 12 V is on whenever the key is, and stays on while the pedal is up",
		Level: diag.Warning,
		Why: "On a cart whose solenoid closes with the pedal, an enable lead on the controller side follows the foot: lamps go out at every stop, " +
			"and come back with each start. An enable lead on a point that never gets 9 V leaves the cart without lamps and horn. " +
			"That the 12 V goes off with the key is what off-means-off looks at.",
		Do: "Move the enable lead to the platform's switched point (live-when-on): pack voltage if and only if the cart is switched on. Where the key " +
			"carries pack voltage, its output is right on every variant.",
		Source: "Common practice, no published source.",
		Wrong: `wires:
  W69: {to: S4.out}          # live only while the pedal is down
`,
		Right: `wires:
  W69: {to: X13}             # on the key's output
`,
		Run: runFollowsTheKey,
	}
}

func runFollowsTheKey(p *rule.Pass) {
	ready, driving := p.Harness.State("ready"), p.Harness.State("driving")
	if ready == nil || driving == nil {
		return // no key on this cart
	}
	for _, c := range elementsOf[*wiring.Converter](p.Harness) {
		told := watching(c.When)
		if told == nil || c.Part.AlwaysOn != "" || p.Blamed(c.Part.Designation) {
			continue
		}
		if off, charge := offIn(p, c, ready); off != nil {
			rolling, _ := offIn(p, c, driving)
			reportKey(p, c, told, off, charge, rolling == nil)
		}
	}
}

// offIn is the point of a state, every accessory switch on, in which a converter does not
// run; nil if it always does.
func offIn(p *rule.Pass, c *wiring.Converter, s *wiring.State) (*settle.Point, rule.Charge) {
	if all := allSwitchesOn(p.Harness, s); all != nil {
		s = all
	}
	for _, charge := range []rule.Charge{rule.Middle, rule.Full, rule.Floor} {
		if at := p.Point(s, charge); at != nil && !at.Holds(c) {
			return at, charge
		}
	}
	return nil, 0
}

func reportKey(p *rule.Pass, c *wiring.Converter, told *wiring.Sense, off *settle.Point, charge rule.Charge, pedal bool) {
	f := diag.Finding{
		Message:  fmt.Sprintf("the 12 V of %s is off while the key is on", titled(c.Part)),
		Detail:   fmt.Sprintf("With the key on and the pedal up, %s, %s reads %s.", charge, p.Graph.Name(told.At), volts(off.Reading(told.At))),
		Advice:   "Move its enable lead to this platform's switched point.",
		At:       c.Part.At,
		Related:  defined(c.Part.Designation, c.Part.At),
		Subjects: []string{c.Part.Designation, p.Graph.Name(told.At)},
		States:   []string{"ready"},
	}
	if pedal {
		f.Message = fmt.Sprintf("the 12 V of %s follows the pedal", titled(c.Part))
	}
	if w, landed := enableWire(p, told, off); w != nil {
		f.At = landing(w, landed)
		f.Subjects = subjects(f.Subjects, []string{w.Name(), p.Graph.Name(landed)})
		if t, ok := pointTerminal(p.Harness, "live-when-on"); ok && !p.Graph.SameCopper(t.Node, landed) {
			f.Advice = fmt.Sprintf("Move %s from %s to this platform's switched point, %s.", w.Name(), p.Graph.Name(landed), t.Ref())
		}
	}
	p.Report(f)
}

// enableWire is the wire by which an enable lead leaves the thing that it hangs on, and
// where: on the way of copper and fuses that leads away from the sense, the last wire
// before something that is neither.
func enableWire(p *rule.Pass, told *wiring.Sense, off *settle.Point) (*wiring.Wire, wiring.NodeID) {
	reach := p.Graph.From(path.Through{Sorts: path.Conductors | path.Fuse}.Until(p.Negative), told.At)
	for _, n := range reach.Nodes() {
		part := p.Harness.Nodes[n].Part
		if part == nil || part == told.Part || inlineFuse(part) || p.Negative(n) {
			continue
		}
		if way, ok := reach.To(n); ok {
			if w, landed := tap(p.Harness, way.Reversed()); w != nil {
				return w, landed
			}
		}
	}
	return nil, wiring.NoNode
}
