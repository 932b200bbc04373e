package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func interlockLanded() *rule.Rule {
	return &rule.Rule{
		ID:    "interlock-landed",
		Title: "the interlock lead reaches what its platform needs, by conductors, fuses and lockout contacts only",
		Level: diag.Error,
		Why: "The lead to the old charge inlet passed through a reed switch that opened while a plug was in. When the inlet goes, the " +
			"lead must see what it saw before, mostly pack voltage (24 V and more reads as true), or the cart does not move. " +
			"On the controller side of the solenoid the cart seems to drive, because pre-charge holds 48 V there, until that is gone. " +
			"Other kinds need pack negative, 12 V, or their own two leads joined: pack voltage on a loop of 12 V logic (30 V at most) destroys the input.",
		Do: "Land the lead on pack positive through its own small fuse, and through the charger's lockout contact where there is one, so that " +
			"the cart still stays put while it charges. A platform whose lead needs something else declares its kind: interlock: {kind: return}.",
		Source: "Common practice, no published source.",
		Wrong: `wires:
  W37: {to: K1.out}         # live through pre-charge only
  T1.lock-b: {to: capped}
`,
		Right: `wires:
  W37: {to: T1.lock-b}      # T1.lock-a goes to pack positive through its own fuse
`,
		Run: runInterlockLanded,
	}
}

func runInterlockLanded(p *rule.Pass) {
	if p.Harness.Interlock == nil && drives(p.Harness) {
		p.NotChecked("the interlock", "no layer says whether this cart has one, and what it needs", p.Harness.Identity.At)
	}
	if il := p.Harness.Interlock; il != nil && il.Kind != wiring.InterlockLoop {
		for _, w := range p.Harness.Wires {
			if w.Interlock {
				judgeInterlock(p, w)
			}
		}
	}
	judgeLoop(p)
}

// drives reports whether the harness has something that moves it.
func drives(h *wiring.Harness) bool {
	for _, p := range h.Parts {
		if p.Kind.Traction {
			return true
		}
	}
	return false
}

func judgeInterlock(p *rule.Pass, w *wiring.Wire) {
	device, landed := interlockEnds(p.Harness, w)
	need, ok := neededBy(p, device)
	if !ok {
		p.NotChecked(w.Name(), "the cart has no supply of the sort that its interlock lead needs", w.At)
		return
	}
	i := interlock{pass: p, wire: w, device: device, landed: landed, need: need}
	switch {
	case len(need.nodes) == 0:
		i.open()
	case landed.Terminal == nil || device.Terminal == nil:
		i.report(diag.Error, fmt.Sprintf("the interlock lead %s is %s", w.Name(), nowhere(landed, device)),
			fmt.Sprintf("It must reach %s, or the cart does not move.", need.what))
	default:
		i.reaches()
	}
}

// interlock is one interlock lead.
type interlock struct {
	pass           *rule.Pass
	wire           *wiring.Wire
	device, landed *wiring.End
	need           interlockNeed
	states         []string // in which it does not reach what it must; none: in all
}

func nowhere(ends ...*wiring.End) string {
	for _, e := range ends {
		if e.Terminal == nil && e.Capped {
			return "capped"
		}
	}
	return "loose"
}

// open judges a lead that must stay open: a contact that closes while a plug is in would
// otherwise stop the cart for ever.
func (i *interlock) open() {
	if i.landed.Terminal != nil && i.device.Terminal != nil {
		i.report(diag.Error, fmt.Sprintf("the interlock lead %s must stay open and lands on %s", i.wire.Name(), i.landed.Terminal.Ref()),
			"This cart's interlock stops it while the lead is joined to anything.")
	}
}

// reaches judges the way of the lead in every state in which the cart should move.
func (i *interlock) reaches() {
	from := i.device.Terminal.Node
	failed := movingStates(i.pass, func(s path.Setting) bool {
		r := i.pass.Graph.From(i.need.clean(s), from)
		return i.need.met(r) || i.need.kind == wiring.InterlockFeed && i.joined(r)
	})
	if len(failed) == 0 {
		return
	}
	i.states = stateNames(failed)
	byHand := true
	for _, setting := range failed {
		through := path.Through{Sorts: path.Conductors | path.Fuse | path.Switch | path.Driver, Setting: setting.closed}
		through = through.Only(func(e *path.Edge) bool { return e.Sort != path.Driver || lockout(e) })
		byHand = byHand && i.need.met(i.pass.Graph.From(through, from))
	}
	if byHand {
		i.report(diag.Warning, fmt.Sprintf("the interlock lead %s gets %s only while a hand switch is closed", i.wire.Name(), i.need.what), i.how(from))
		return
	}
	i.report(diag.Error, fmt.Sprintf("the interlock lead %s on %s does not reach %s", i.wire.Name(), i.landed.Terminal.Ref(), i.need.what), i.how(from)+i.masked(from, failed))
}

// joined reports whether the leads of an interlock in a feed are joined with each other.
func (i *interlock) joined(r *path.Reach) bool {
	own := i.pass.Harness.Interlock.Terminals
	for _, t := range own {
		if !r.Has(t.Node) {
			return false
		}
	}
	return len(own) > 1
}

// how tells what the lead does reach, and through what.
func (i *interlock) how(from wiring.NodeID) string {
	way, ok := i.wayFrom(from)
	if !ok {
		return fmt.Sprintf("From %s nothing leads to %s.", i.pass.Graph.Name(from), i.need.what)
	}
	odd := oddOnTheWay(way)
	if len(odd) == 0 {
		return fmt.Sprintf("The way is %s; a lockout contact on it is open in a state in which the cart should move.", way)
	}
	return fmt.Sprintf("The only way is %s, through %s; conductors, fuses and lockout contacts are all that it may pass.", way, list(odd))
}

// masked says that the cart drives all the same, where it does: a sense does not know by
// which way its voltage comes.
func (i *interlock) masked(from wiring.NodeID, failed []moving) string {
	for _, s := range failed {
		if s.at != nil && s.at.Traction() {
			return fmt.Sprintf(" In the state %s %s reads %s and the cart drives all the same: the mistake shows only when that way opens.",
				s.name, i.pass.Graph.Name(from), volts(s.at.Reading(from)))
		}
	}
	return ""
}

// wayFrom finds a way to what is needed, over more and more of what it should not pass.
func (i *interlock) wayFrom(from wiring.NodeID) (path.Path, bool) {
	for _, sorts := range []path.Sort{path.Metal | path.Driver, path.Conducting | path.Resistor, path.Conducting | path.Resistor | path.Consumers} {
		through := path.Through{Sorts: sorts, Against: true}
		if !i.pass.Negative(from) && i.need.kind != wiring.InterlockReturn {
			through = through.Until(i.pass.Negative)
		}
		reach := i.pass.Graph.From(through, from)
		if end, ok := reach.First(func(n wiring.NodeID) bool { return has(i.need.nodes, n) }); ok {
			return reach.To(end)
		}
	}
	return path.Path{}, false
}

// oddOnTheWay names what an interlock lead must not pass.
func oddOnTheWay(way path.Path) []string {
	var odd []string
	for _, s := range way.Steps {
		if s.Edge.Sort&(path.Conductors|path.Fuse) == 0 && !lockout(s.Edge) && !isolator(s.Edge) {
			odd = append(odd, s.Edge.Part().Designation)
		}
	}
	return once(odd)
}

func (i *interlock) report(level diag.Level, message, detail string) {
	names := []string{i.wire.Name()}
	for _, e := range []*wiring.End{i.landed, i.device} {
		if e.Terminal != nil {
			names = append(names, e.Terminal.Ref(), e.Terminal.Part.Designation)
		}
	}
	i.pass.Report(diag.Finding{
		Level: level, Message: message, Detail: detail, Advice: i.advice(),
		At: endSpan(i.wire, i.landed), Related: defined(i.wire.Name(), i.wire.At), Subjects: subjects(names), States: i.states,
	})
}

// advice names the terminal: where the layers put the lead, if a later one took it away
// from there; else one of the potential that is needed.
func (i *interlock) advice() string {
	if len(i.need.nodes) == 0 {
		return fmt.Sprintf("Cap %s.", i.wire.Name())
	}
	if t, ok := pointTerminal(i.pass.Harness, "interlock"); ok && t != i.landed.Terminal {
		return fmt.Sprintf("Land %s on %s, this cart's place for it.", i.wire.Name(), t.Ref())
	}
	return fmt.Sprintf("Land %s on %s (%s), through its own small fuse.", i.wire.Name(), i.pass.Graph.Name(i.need.nodes[0]), i.need.what)
}
