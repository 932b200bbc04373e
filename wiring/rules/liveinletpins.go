package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func liveInletPins() *rule.Rule {
	return &rule.Rule{
		ID:    "live-inlet-pins",
		Title: "the pins of a charge inlet cannot be touched while they are live",
		Level: diag.Warning,
		Why: "The pins of a DC inlet are on the pack day and night: 54.4 V on a full 16S pack, behind a fuse of 25 A that a key ring or a wet hand does " +
			"not open. From 50 V live parts have to be guarded; below, a bridged pin still burns.",
		Do: "Take an inlet whose pins stand in shrouds or behind a lid that closes by itself (`pins: shrouded`), or lead it over a contact that closes " +
			"with the plug.",
		Source: "29 CFR 1910.303(g): live parts of 50 V and more are guarded. A yardstick: it does not bind a cart.",
		Wrong: `parts:
  F6: {kind: fuse-10x38, rating: 25 A, title: second inlet, place: seat box}
  X9: {kind: inlet-dc-reed, end: 58.4 V, profile: LFP, pins: bare, place: seat box}
wires:
  W101: {from: K1.in, to: F6.in}
  W102: {from: F6.out, to: X9.+, colour: RD, size: 10 AWG, length: 3 ft}
  W103: {from: X9.-, to: X3.5, colour: BK, size: 10 AWG, length: 3 ft}
  W57: {to: X9.lock-a}
  W104: {from: X9.lock-b, to: T1.lock-a}
`,
		Right: `parts:
  F6: {kind: fuse-10x38, rating: 25 A, title: second inlet, place: seat box}
  X9: {kind: inlet-dc-reed, end: 58.4 V, profile: LFP, pins: shrouded, place: seat box}
wires:
  W101: {from: K1.in, to: F6.in}
  W102: {from: F6.out, to: X9.+, colour: RD, size: 10 AWG, length: 3 ft}
  W103: {from: X9.-, to: X3.5, colour: BK, size: 10 AWG, length: 3 ft}
  W57: {to: X9.lock-a}
  W104: {from: X9.lock-b, to: T1.lock-a}
`,
		Run: runLiveInletPins,
	}
}

func runLiveInletPins(p *rule.Pass) {
	for _, c := range elementsOf[*wiring.Charger](p.Harness) {
		if c.L != wiring.NoNode || !hasControl(c.Part, "plug") || c.Pins == "shrouded" {
			continue
		}
		at := p.Point(&wiring.State{Name: "nothing plugged in", At: c.Part.At}, rule.Full)
		if at == nil {
			continue
		}
		v := quantity.Volt(math.Abs(float64(at.Across(c.A, c.B))))
		switch {
		case v < 1: // nothing there
		case c.Pins == "":
			p.NotChecked(c.Part.Designation, fmt.Sprintf("it does not say whether its pins, live at %s, can be touched", volts(v)), c.Part.At)
		default:
			reportPins(p, c, v)
		}
	}
}

func hasControl(part *wiring.Part, name string) bool {
	for _, c := range part.Controls {
		if c.Name == name {
			return true
		}
	}
	return false
}

func reportPins(p *rule.Pass, c *wiring.Charger, v quantity.Volt) {
	f := diag.Finding{
		Message:  fmt.Sprintf("the bare pins of %s are live at %s with nothing plugged in", titled(c.Part), volts(v)),
		Advice:   "Take an inlet with shrouded pins or a lid that closes by itself, or lead it over a contact that closes with the plug.",
		At:       c.Part.Span("pins"),
		Subjects: []string{c.Part.Designation, p.Graph.Name(c.A)},
	}
	if limit, ok := p.Handbook.Limit("guard-line"); ok {
		f.Detail = fmt.Sprintf("From %s live parts are guarded (%s).", limit, limit.Section)
		if float64(v) < limit.Amount.Value {
			f.Level = diag.Note
			f.Detail = fmt.Sprintf("That is below the %s from which live parts are guarded (%s); a bridged pin burns all the same.", limit, limit.Section)
		}
	}
	p.Report(f)
}
