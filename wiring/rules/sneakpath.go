package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/rule"
)

func sneakPath() *rule.Rule {
	return &rule.Rule{
		ID:    "sneak-path",
		Title: "nothing is energised through another load or backwards through a device, in any position of any switch",
		Level: diag.Warning,
		Why: "A missing diode lets the controller side of the solenoid, 50 V and charged, feed the key circuit backwards: the coil keeps 9 to 10 V through " +
			"250 ohm, above a drop-out of 7.5 V, and the solenoid stays in with the key off. A 48 V and a 12 V consumer that share a return which opens " +
			"put up to 40 V of the wrong sign on the 12 V one. Two lamps in series on one open ground glow, and the switch of one seems to work the other.",
		Do: "Follow the way that the finding names, and give what is on it a feed or a return of its own; where current may run one way only, put in the diode.",
		Source: "Common practice, no published source. Energised is a lamp at 5 % of its power, a coil above its drop-out, a sense above its threshold: " +
			"our own choice.",
		Wrong: `parts:
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
  A2: {kind: tracker, place: dash, always-on: finds the cart}
wires:
  W101: {from: A1.2, to: P3.+, colour: BN, size: 14 AWG, length: 4 ft}
  W102: {from: P3.-, to: S7.in, colour: BK/BN, size: 14 AWG, length: 4 ft}
  W103: {from: S7.out, to: A1.n, colour: BK, size: 14 AWG, length: 18 in}
  W104: {from: A1.3, to: A2.+}
  W105: {from: A2.-, to: A1.n}
  W106: {from: A2.ignition, to: S7.in}     # 12 V through the horn while the button is up
`,
		Right: `parts:
  A1: {fuses: {1: 3 A}}
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
  A2: {kind: tracker, place: dash, always-on: finds the cart}
wires:
  W101: {from: A1.2, to: P3.+, colour: BN, size: 14 AWG, length: 4 ft}
  W102: {from: P3.-, to: S7.in, colour: BK/BN, size: 14 AWG, length: 4 ft}
  W103: {from: S7.out, to: A1.n, colour: BK, size: 14 AWG, length: 18 in}
  W104: {from: A1.3, to: A2.+}
  W105: {from: A2.-, to: A1.n}
  W106: {from: A2.ignition, to: A1.1}
`,
		Run:    runSneakPath,
		Proves: []*position.Property{position.SneakPath()},
	}
}

func runSneakPath(p *rule.Pass) {
	told := map[string]bool{}
	for _, r := range p.Proofs() {
		for _, x := range r.Counterexamples {
			reportSneak(p, x, told)
		}
	}
}

// reportSneak says once for each part that it is fed by a way that is not its own, at the
// first of its elements. What lacks its return altogether, or is wired the wrong way round,
// has been told by the rules for that.
func reportSneak(p *rule.Pass, x position.Counterexample, told map[string]bool) {
	part := x.Element.Base().Part
	if told[part.Designation] || p.Blamed(part.Designation, x.Element.Base().Ref()) {
		return
	}
	told[part.Designation] = true
	f := counterexample(p, x)
	f.Level = sneakLevel(x.Element)
	f.Message = fmt.Sprintf("%s is energised by a way that is not its own", titled(part))
	f.Advice = fmt.Sprintf("Give %s a feed and a return of its own.", x.Element.Base().Ref())
	if len(x.Ways) > 0 {
		if odd := lent(x); len(odd) > 0 {
			f.Message = fmt.Sprintf("%s is energised through %s", titled(part), list(odd))
			f.Advice = fmt.Sprintf("Give %s a feed and a return of its own, apart from %s.", x.Element.Base().Ref(), list(odd))
			if w, n := behindLent(x); w != nil {
				f.At = landing(w, n)
				f.Subjects = subjects([]string{w.Name()}, f.Subjects)
			}
		}
	}
	p.Report(f)
}

// sneakLevel is worst for what moves a contact or lets the cart drive.
func sneakLevel(e wiring.Element) diag.Level {
	switch e.(type) {
	case *wiring.Coil, *wiring.Driver:
		return diag.Error
	}
	return diag.Warning
}

// behindLent is the last wire of the feed behind the first device that it uses as a conductor.
func behindLent(x position.Counterexample) (*wiring.Wire, wiring.NodeID) {
	var wire *wiring.Wire
	var at wiring.NodeID
	through := false
	for _, s := range x.Ways[0].Feed.Steps {
		through = through || isLent(s.Edge, x)
		if through && s.Edge.Wire != nil {
			wire, at = s.Edge.Wire, s.From
		}
	}
	return wire, at
}

// isLent reports whether an edge of a way belongs to a device that is no conductor.
func isLent(e *path.Edge, x position.Counterexample) bool {
	return e.Sort&(path.Metal|path.Diode|path.Source) == 0 && e.Part() != x.Element.Base().Part
}

// lent names the parts whose devices a way uses as conductors.
func lent(x position.Counterexample) []string {
	var names []string
	for _, half := range []path.Path{x.Ways[0].Feed, x.Ways[0].Back} {
		for _, s := range half.Steps {
			if isLent(s.Edge, x) {
				names = append(names, s.Edge.Part().Designation)
			}
		}
	}
	return natural(names)
}
