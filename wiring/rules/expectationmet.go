package rules

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func expectationMet() *rule.Rule {
	return &rule.Rule{
		ID:    "expectation-met",
		Title: "the cart does in each state what is expected of it: it moves where it should, and nowhere else",
		Level: diag.Error,
		Why: "A plan can pass every other rule and describe a cart that stands: an input that needs 24 V and sees 0 V, a key that feeds the wrong splice. On paper that costs " +
			"a minute; on the lift, with 60 wires laid, half a day.",
		Do:     "Follow the chain that the finding tells, from what should be on back to the first thing that gets nothing.",
		Source: "The job's own expectations, and those of the built-in states: the cart moves in driving and reversing, and nowhere else.",
		Wrong: `wires:
  W31: {to: capped}         # the pedal's signal never reaches the controller
  W30: {from: X13}
`,
		Right: `wires:
  W31: {to: U1.pedal}
`,
		Run: runExpectationMet,
	}
}

func runExpectationMet(p *rule.Pass) {
	told := map[string]bool{}
	for _, s := range p.Harness.States {
		for _, e := range s.Expect {
			expect{pass: p, state: s, want: e, told: told}.judge()
		}
	}
}

// expect is one expectation of one state. What is told of one part is not told again of the
// same part in another state.
type expect struct {
	pass  *rule.Pass
	state *wiring.State
	want  wiring.Expectation
	told  map[string]bool
}

// judge looks half full and full. At the floor a pack may be too low to do anything; what a
// state needs there, the rules on coils and voltages tell.
func (e expect) judge() {
	if e.want.Part == nil && !drives(e.pass.Harness) {
		return
	}
	for _, charge := range []rule.Charge{rule.Middle, rule.Full} {
		at := e.pass.Point(e.state, charge)
		if at == nil || e.holds(at) {
			continue
		}
		e.report(at)
		return
	}
}

func (e expect) holds(at *settle.Point) bool {
	if e.want.Part == nil {
		return at.Traction() == e.want.On
	}
	return at.On(e.want.Part) == e.want.On
}

// subject is the part that should be on or off: of traction the first that moves the cart.
func (e expect) subject() *wiring.Part {
	if e.want.Part != nil {
		return e.want.Part
	}
	for _, part := range e.pass.Harness.Parts {
		if part.Kind.Traction {
			return part
		}
	}
	return nil
}

func (e expect) report(at *settle.Point) {
	part := e.subject()
	key := fmt.Sprint(part.Designation, e.want.On)
	if e.told[key] || !e.want.On && pluggedIn(e.state) && e.want.Part == nil {
		return // driving with the plug in is a rule of its own
	}
	chain, names := e.chain(at, part)
	if e.pass.Blamed(append(names, part.Designation)...) {
		return
	}
	e.told[key] = true
	f := diag.Finding{
		Message: e.message(part), Detail: chain, States: []string{e.state.Name}, At: e.place(),
		Subjects: knownSubjects(e.pass, subjects([]string{part.Designation}, names)),
		Advice:   "Mend the first link of this chain that gets nothing.",
	}
	if !e.want.On {
		f.Advice = "Find what feeds it here, or correct what the state expects."
	}
	f.Related = defined(part.Designation, part.At)
	e.pass.Report(f)
}

func (e expect) message(part *wiring.Part) string {
	what := titled(part) + " is"
	if e.want.Part == nil {
		what = "the cart"
	}
	switch {
	case e.want.Part == nil && e.want.On:
		return fmt.Sprintf("%s does not move in the state %s, where it should", what, e.state.Name)
	case e.want.Part == nil:
		return fmt.Sprintf("%s moves in the state %s, where it should not", what, e.state.Name)
	case e.want.On:
		return fmt.Sprintf("%s off in the state %s, where it should be on", what, e.state.Name)
	}
	return fmt.Sprintf("%s on in the state %s, where it should be off", what, e.state.Name)
}

func (e expect) place() diag.Span {
	if e.want.At.Known() && !e.state.Stock {
		return e.want.At
	}
	return placeOfState(e.pass, e.state)
}

// chain tells why a part is off or on, and names what it tells of.
func (e expect) chain(at *settle.Point, part *wiring.Part) (string, []string) {
	sheet, err := e.pass.Bench().Settle(e.pass.Context(), e.state)
	el := settle.WhatTurnsOn(part)
	if err != nil || el == nil {
		return "Nothing inside it turns it on.", nil
	}
	t := teller{pass: e.pass, at: at, sheet: sheet, seen: map[wiring.Element]bool{}}
	t.element(el)
	if !e.want.On {
		t.feeds(el)
	}
	return strings.Join(t.text, " "), once(t.names)
}

// teller tells the chain from a part back to the first thing that gets nothing.
type teller struct {
	pass  *rule.Pass
	at    *settle.Point
	sheet *meter.Sheet
	seen  map[wiring.Element]bool
	text  []string
	names []string
}

// feeds tells by which way something that is on gets its voltage.
func (t *teller) feeds(el wiring.Element) {
	if n, ok := positiveOf(el); ok {
		if trace := t.sheet.Trace(n); trace.Verdict == meter.Fed {
			t.say("%s reads %v, by %s.", t.pass.Graph.Name(n), trace.Reading, trace.Feed)
			t.names = append(t.names, waySubjects(t.pass.Graph, trace.Feed)...)
		}
	}
}

func (t *teller) say(format string, args ...any) {
	t.text = append(t.text, fmt.Sprintf(format, args...))
}

// element tells why one thing does not hold: where the ways to its two ends are cut, or what
// it waits for.
func (t *teller) element(el wiring.Element) {
	if el == nil || t.seen[el] || len(t.text) >= longest {
		return
	}
	t.seen[el] = true
	t.names = append(t.names, el.Base().Part.Designation, el.Base().Ref())
	for _, n := range endsOf(el) {
		if trace := t.sheet.Trace(n); trace.Verdict == meter.Dead && trace.Break != nil {
			t.cut(n, trace.Break)
		} else if trace.Verdict == meter.Nowhere {
			t.say("Nothing leads to %s.", t.pass.Graph.Name(n))
			t.names = append(t.names, t.pass.Graph.Name(n))
			t.names = append(t.names, wiresAt(t.pass, n)...)
		}
	}
	for _, u := range t.at.Waits(el) {
		t.unmet(el, u)
	}
}

// longest is how many sentences a chain is told in.
const longest = 6

// cut tells where the way to a node is open.
func (t *teller) cut(n wiring.NodeID, b *meter.Break) {
	part := b.Element.Base().Part
	t.names = append(t.names, part.Designation, t.pass.Graph.Name(b.Before), t.pass.Graph.Name(n))
	if b.Control != nil {
		t.say("%s gets nothing: %s stands at %s, and %s reads %v.", t.pass.Graph.Name(n), part.Designation, b.Stands, t.pass.Graph.Name(b.Before), b.Reads)
		return
	}
	t.say("%s gets nothing: %s is open, and %s before it reads %v.", t.pass.Graph.Name(n), b.Element.Base().Ref(), t.pass.Graph.Name(b.Before), b.Reads)
	for _, w := range b.Wants {
		t.want(w)
	}
}

// want tells one condition that is not as it is needed.
func (t *teller) want(w meter.Want) {
	if len(t.text) >= longest {
		return
	}
	t.names = append(t.names, strings.SplitN(w.Name, ".", 2)[0], w.Name)
	switch {
	case w.Control != nil:
		t.say("It waits for %s at %s, which stands at %s.", w.Name, w.Needs, w.Stands)
	case w.Above > 0:
		t.say("It waits for %s, which sees %s and needs %v.", w.Name, volts(w.Sees), w.Above)
	default:
		t.say("It waits for %s, which sees %s.", w.Name, volts(w.Sees))
	}
	if w.At != wiring.NoNode && w.Break == nil && w.Must {
		if trace := t.sheet.Trace(w.At); trace.Verdict == meter.Nowhere {
			t.say("Nothing leads to %s.", t.pass.Graph.Name(w.At))
			t.names = append(t.names, wiresAt(t.pass, w.At)...)
		}
	}
	for _, b := range []*meter.Break{w.Break, w.Return} {
		if b != nil {
			t.cut(w.At, b)
		}
	}
}

// unmet tells what an element itself waits for.
func (t *teller) unmet(el wiring.Element, u settle.Unmet) {
	if u.Control != nil {
		t.say("%s waits for %s at %s.", el.Base().Ref(), u.Name, u.Needs)
		t.names = append(t.names, u.Control.Part.Designation)
		return
	}
	if u.Element == nil || t.seen[u.Element] {
		return
	}
	if s, ok := u.Element.(*wiring.Sense); ok {
		t.say("%s waits for %s, which sees %s and needs %v.", el.Base().Ref(), u.Name, volts(u.Volts), s.Above)
	}
	t.element(u.Element)
}

// endsOf lists the nodes of what a part is turned on by.
func endsOf(el wiring.Element) []wiring.NodeID {
	switch el := el.(type) {
	case *wiring.Load:
		return []wiring.NodeID{el.A, el.B}
	case *wiring.Coil:
		return []wiring.NodeID{el.A, el.B}
	case *wiring.Converter:
		return []wiring.NodeID{el.InA, el.InB}
	case *wiring.Sense:
		return []wiring.NodeID{el.At}
	}
	return nil
}

func positiveOf(el wiring.Element) (wiring.NodeID, bool) {
	if ends := endsOf(el); len(ends) > 0 {
		return ends[0], true
	}
	return wiring.NoNode, false
}
