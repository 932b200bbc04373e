package rules

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func packTrips() *rule.Rule {
	return &rule.Rule{
		ID:    "pack-trips",
		Title: "it is known what goes dead when the pack switches itself off",
		Level: diag.Note,
		Why: "An LFP pack opens its own switch within milliseconds: at its cut-off (40 V for 16S), above its trip current, when a cell or its electronics get too hot. " +
			"Old batteries only got weak. With the reducer on the same pack, head lamps, brake lamps and horn go out together with the drive, on " +
			"the slope where the current was highest, and an electric brake loses its release and grips.",
		Do: "Say so at hand-over, and what to do then: brake by foot, stand, switch off and on. Where lamps and horn must stay, give the 12 V side " +
			"a small battery of its own, with its fuse at its post and nothing flowing back into the reducer.",
		Source: "Common practice, no published source. What goes dead is solved, in each state with and without the pack.",
		Wrong: `parts:
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
wires:
  W74: {from: A1.2, to: P3.+, colour: BN, size: 14 AWG, length: 4 ft}
  W75: {from: P3.-, to: S7.in, colour: BK/BN, size: 14 AWG, length: 4 ft}
  W76: {from: S7.out, to: A1.n, colour: BK, size: 14 AWG, length: 18 in}
`,
		Right: `parts:
  T2: {shares: yes}
  G2: {kind: battery-auxiliary, place: seat box}
  F6: {kind: fuse-sf30, rating: 30 A, title: 12 V battery, place: seat box}
  V3: {kind: diode-inline, title: keeps the reducer from charging the battery, place: seat box}
  P3: {kind: horn, place: front}
  S7: {kind: push-button, title: horn, place: dash}
wires:
  W101: {from: G2.+, to: F6.in, colour: RD, size: 10 AWG, length: 6 in}
  W104: {from: F6.out, to: V3.a, colour: RD, size: 10 AWG, length: 1 ft}
  W102: {from: V3.k, to: A1.+, colour: RD, size: 10 AWG, length: 3 ft}
  W103: {from: G2.-, to: X3.5, colour: BK, size: 10 AWG, length: 3 ft}
  W74: {from: A1.2, to: P3.+, colour: BN, size: 14 AWG, length: 4 ft}
  W75: {from: P3.-, to: S7.in, colour: BK/BN, size: 14 AWG, length: 4 ft}
  W76: {from: S7.out, to: A1.n, colour: BK, size: 14 AWG, length: 18 in}
`,
		Run: runPackTrips,
	}
}

func runPackTrips(p *rule.Pass) {
	packs := guarded(p)
	if len(packs) == 0 || !drives(p.Harness) {
		return
	}
	dead := map[*wiring.Part]bool{}
	for _, name := range []string{"everything on", "braking"} {
		if s := p.Harness.State(name); s != nil && !loseAll(p, packs, s, dead) {
			return
		}
	}
	if names := inOrderOfNeed(p, dead); len(names) > 0 {
		reportTrip(p, packs, names)
	}
}

// loseAll notes what is on in a state and off once all packs have switched themselves off;
// false if the context has ended.
func loseAll(p *rule.Pass, packs []*path.Supply, s *wiring.State, dead map[*wiring.Part]bool) bool {
	before := p.Point(s, rule.Middle)
	if before == nil {
		return true
	}
	var open []settle.Defect
	for _, pack := range packs {
		open = append(open, settle.OpenElement(pack.Element))
	}
	after, err := settle.Compile(p.Harness).With(open...).Settle(p.Context(), s, settle.Options{})
	if err != nil {
		return false
	}
	for _, part := range p.Harness.Parts {
		if before.On(part) && !after.On(part) {
			dead[part] = true
		}
	}
	return true
}

// inOrderOfNeed lists the consumers among some parts, those first that are missed at once:
// electric brakes, horns and buzzers, lamps. What drives the cart goes without saying.
func inOrderOfNeed(p *rule.Pass, dead map[*wiring.Part]bool) []string {
	var by [4][]string
	for _, part := range p.Harness.Parts {
		_, consumer := settle.WhatTurnsOn(part).(*wiring.Load)
		if !dead[part] || !consumer || part.Kind.Traction || p.Controller(part) || part.Kind.Symbol == "meter" || isSource(part) {
			continue
		}
		need := 3
		switch symbol := part.Kind.Symbol; {
		case part.Kind.Letter == "Y":
			need = 0
		case symbol == "horn" || symbol == "buzzer":
			need = 1
		case strings.HasPrefix(symbol, "lamp"):
			need = 2
		}
		by[need] = append(by[need], part.Designation)
	}
	var names []string
	for _, each := range by {
		names = append(names, each...)
	}
	return names
}

func isSource(part *wiring.Part) bool {
	for _, el := range part.Elements {
		if _, ok := el.(*wiring.Source); ok {
			return true
		}
	}
	return false
}

func reportTrip(p *rule.Pass, packs []*path.Supply, names []string) {
	pack := packs[0].Element.Base().Part
	grips := ""
	for _, name := range names {
		if part := p.Harness.Part(name); part.Kind.Letter == "Y" {
			grips = fmt.Sprintf(" %s loses its release and brakes at once.", name)
		}
	}
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("when %s switches itself off, %s go dead with the drive, at any speed", pack.Designation, list(names)),
		Detail:   "It does so at its cut-off, above its trip current and on a fault of a cell." + grips,
		Advice:   "Say so at hand-over: brake by foot, stand, switch off and on.",
		At:       pack.Span("trips"),
		Subjects: subjects([]string{pack.Designation}, names),
	})
}
