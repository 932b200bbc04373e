package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func referenceFloating() *rule.Rule {
	return &rule.Rule{
		ID:    "reference-floating",
		Title: "every converter output and every input that watches a voltage has a defined negative",
		Level: diag.Warning,
		Why: "An isolated reducer whose output negative lands nowhere gives 12.5 V between its own two leads and nothing to the cart. A meter or input whose reference is open " +
			"reads whatever leaks into it, between 0 V and 58 V: it works on the bench and fails in the rain. That the 12 V side floats against the pack is no fault: an isolated reducer is made for that.",
		Do:     "Land the negative of each output where its loads return, and the reference of each input on the negative of what it watches.",
		Source: "Common practice, no published source.",
		Wrong: `parts:
  F6: {kind: fuse-10x38, rating: 15 A, title: second reducer, place: seat box}
  F7: {kind: fuse-blade, rating: 10 A, title: bed, place: seat box}
  T3: {kind: reducer-isolated, place: seat box}
  X15: {kind: splice, place: seat box}
wires:
  W101: {from: K1.in, to: F6.in}
  W102: {from: F6.out, to: T3.in+}
  W103: {from: T3.in-, to: X3.5}
  W104: {from: T3.enable, to: X13}
  W105: {from: T3.out+, to: F7.in}
  W106: {from: F7.out, to: X15}
  T3.out-: {to: capped}
`,
		Right: `parts:
  F6: {kind: fuse-10x38, rating: 15 A, title: second reducer, place: seat box}
  F7: {kind: fuse-blade, rating: 10 A, title: bed, place: seat box}
  T3: {kind: reducer-isolated, place: seat box}
  E1: {kind: light-bar, power: 36 W, place: front}
wires:
  W101: {from: K1.in, to: F6.in}
  W102: {from: F6.out, to: T3.in+}
  W103: {from: T3.in-, to: X3.5}
  W104: {from: T3.enable, to: X13}
  W105: {from: T3.out+, to: F7.in}
  W106: {from: F7.out, to: E1.+}
  W107: {from: E1.-, to: T3.out-}
`,
		Run: runReferenceFloating,
	}
}

func runReferenceFloating(p *rule.Pass) {
	for _, s := range p.Supplies() {
		if c, ok := s.Element.(*wiring.Converter); ok && landedOn(p, s.Plus) && !p.Reported("return-complete", c.Part.Designation) && !leavesDevice(p, c.OutB) {
			reportFloating(p, c, c.OutA, c.OutB, fmt.Sprintf("the output of %s has no negative", titled(c.Part)),
				fmt.Sprintf("%s is wired, and from %s no wire leads anywhere.", p.Graph.Name(c.OutA), p.Graph.Name(c.OutB)))
		}
	}
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			if sense, ok := el.(*wiring.Sense); ok && !sense.AC && sense.At != sense.To {
				watches(p, sense)
			}
		}
	}
}

// leavesDevice reports whether copper inside a part and a wire lead on from a node: an output
// may share a negative that lands.
func leavesDevice(p *rule.Pass, n wiring.NodeID) bool {
	for _, m := range p.Graph.From(path.Through{Sorts: path.Link}, n).Nodes() {
		if landedOn(p, m) {
			return true
		}
	}
	return false
}

// watches reports an input whose reference reaches no negative by conductors in any position,
// while some supply's positive reaches what it watches. Both ends of a sense may be live, as
// across a motor field: then the element that it lies across defines it.
func watches(p *rule.Pass, s *wiring.Sense) {
	to := p.Graph.From(returning(), s.To)
	fed := false
	for _, supply := range p.Supplies() {
		if to.Has(supply.Minus) || to.Has(supply.Bottom) || to.Has(supply.Plus) {
			return
		}
		fed = fed || p.Graph.From(carrying().Until(p.Negative), supply.Plus).Has(s.At)
	}
	if !fed || acrossElement(p, s) {
		return
	}
	reportFloating(p, s, s.At, s.To, fmt.Sprintf("the input %s has no reference", s.Ref()),
		fmt.Sprintf("It watches %s against %s, and from there no way leads to any negative.", p.Graph.Name(s.At), p.Graph.Name(s.To)))
}

// acrossElement reports whether a load or resistor of the same part joins what a sense
// watches.
func acrossElement(p *rule.Pass, s *wiring.Sense) bool {
	for _, e := range p.Graph.At(s.To) {
		if e.Sort&(path.Load|path.Resistor|path.Coil) != 0 && e.Other(s.To) == s.At {
			return true
		}
	}
	return false
}

func reportFloating(p *rule.Pass, el wiring.Element, plus, minus wiring.NodeID, message, detail string) {
	part := el.Base().Part
	f := diag.Finding{
		Message: message, Detail: detail, At: part.At, Related: defined(part.Designation, part.At),
		Advice:   fmt.Sprintf("Land %s on the negative of what hangs on %s.", p.Graph.Name(minus), p.Graph.Name(plus)),
		Subjects: subjects([]string{part.Designation, el.Base().Ref()}, wiresAt(p, minus), wiresAt(p, plus)),
	}
	for _, n := range []wiring.NodeID{plus, minus} {
		for _, name := range wiresAt(p, n) {
			if w := p.Harness.Wire(name); w != nil {
				f.At = w.At
			}
		}
	}
	p.Report(f)
}
