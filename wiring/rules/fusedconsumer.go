package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fusedConsumer() *rule.Rule {
	return &rule.Rule{
		ID:    "fused-consumer",
		Title: "every ungrounded conductor passes a fuse or breaker",
		Level: diag.Error,
		Why: "A 16S pack drives about 5 kA into a short at its posts; its own electronics are no fuse. " +
			"16 AWG wire with that current is at its insulation's limit in about a millisecond, and burning a moment later. " +
			"A reducer of 25 A is gentler, and still heats 18 AWG beyond what it may carry. " +
			"It is not only loads that count: an interlock lead, a meter lead or a coil lead chafes through just as well.",
		Do: "Take the wire from a fused channel, or put a fuse into it as near to the source as can be, within 7 in. " +
			"Where a source cannot give more than its smallest wire may carry (a memory lead of 1 A), no fuse is needed.",
		Source: "33 CFR 183.455(a) and (b); 46 CFR 183.380(c) for control, interlock and indicator leads. Boat law: a yardstick for a cart.",
		Wrong: `parts:
  P1: {kind: buzzer}
wires:
  W72: {from: G1.+, to: P1.+, colour: OG, size: 16 AWG, length: 4 ft}
  W73: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Right: `parts:
  P1: {kind: buzzer}
wires:
  W72: {from: X13, to: P1.+, colour: OG, size: 16 AWG, length: 4 ft}   # behind the 5 A fuse of the key circuit
  W73: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Run: runFusedConsumer,
	}
}

func runFusedConsumer(p *rule.Pass) {
	for _, s := range p.Supplies() {
		if p.Context().Err() != nil {
			return
		}
		u := newUnfused(p, s)
		for _, f := range u.faults {
			u.report(f)
		}
		if !s.Battery() {
			u.thin()
		}
	}
}

// accessoryFuse is the largest supply behind which nothing asks for a fuse as long as its
// wires stand it. Our own choice: the usual fuse of a small accessory.
const accessoryFuse = quantity.Ampere(5)

// judge says how bad it is that the supply feeds something over a way without a fuse;
// level 0: not at all.
func (u *unfused) judge(way path.Path, wires []*wiring.Wire, traction bool) (diag.Level, string) {
	if u.supply.Battery() {
		return u.judgeBattery(way, traction)
	}
	if name, carries, weak := weakest(u.pass, wires, u.supply.Limit); weak {
		return diag.Error, fmt.Sprintf("%s gives up to %v, and %s may carry %v.", u.name(), u.supply.Limit, name, carries)
	}
	if u.supply.Limit > accessoryFuse {
		return diag.Warning, fmt.Sprintf("%s gives up to %v: the wires stand that, a device that fails may not.", u.name(), u.supply.Limit)
	}
	return 0, ""
}

// judgeBattery lets the fuse that a pack declares inside itself count for traction cable,
// as a warning: it is large, and nobody reaches it.
func (u *unfused) judgeBattery(way path.Path, traction bool) (diag.Level, string) {
	fuses := way.Elements(path.Fuse)
	if len(fuses) == 0 {
		return diag.Error, u.faultCurrent()
	}
	inside := fmt.Sprintf("Only the fuse inside %s, of %v, opens if it chafes through.", u.name(), fuses[0].(*wiring.Fuse).Rating)
	if traction {
		return diag.Warning, inside
	}
	return diag.Error, inside
}

// faultCurrent says what the battery, with those that it stands on, drives into a short.
func (u *unfused) faultCurrent() string {
	ohms, known := quantity.Ohm(0), true
	for _, s := range append([]*path.Supply{u.supply}, u.supply.Under...) {
		inside := s.Element.(*wiring.Source).Ohms
		ohms += inside
		known = known && inside > 0
	}
	full := u.supply.Top().Full
	if !known || full <= 0 {
		return "Nothing opens if it chafes through; a pack's own electronics are no fuse."
	}
	return fmt.Sprintf("Nothing opens if it chafes through: %s drives up to %v into a short (%s behind %v), and its own electronics are no fuse.",
		u.name(), over(full, ohms), volts(full), ohms)
}

func (u *unfused) name() string { return u.supply.Element.Base().Part.Designation }

func (u *unfused) report(f unfusedFault) {
	g := u.pass.Graph
	feeds := natural(f.feeds)
	u.pass.Report(diag.Finding{
		Level:    f.level,
		Message:  fmt.Sprintf("%s leaves %s without a fuse and feeds %s", f.wire.Name(), g.Name(f.at), list(feeds)),
		Detail:   fmt.Sprintf("%s: no fuse on this way. %s", f.way, f.why),
		Advice:   u.advice(f),
		At:       landing(f.wire, f.at),
		Related:  defined(u.name(), u.supply.Element.Base().Part.At),
		Subjects: subjects([]string{f.wire.Name(), g.Name(f.at)}, waySubjects(u.pass.Graph, f.way), partNames(u.pass, feeds)),
	})
}

// partNames keeps the names that are parts.
func partNames(p *rule.Pass, names []string) []string {
	var parts []string
	for _, n := range names {
		if p.Harness.Part(n) != nil {
			parts = append(parts, n)
		}
	}
	return parts
}

func (u *unfused) advice(f unfusedFault) string {
	fuse := fmt.Sprintf("ut a fuse into it within %s of %s.", u.pass.Harness.Limits.FuseDistance.In(quantity.Inch), u.pass.Graph.Name(f.at))
	if channel := freeChannel(u.pass, f.way.End); channel != "" {
		return fmt.Sprintf("Move %s to a free fused channel, %s, or p%s", f.wire.Name(), channel, fuse)
	}
	return "P" + fuse
}
