package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func polarity() *rule.Rule {
	return &rule.Rule{
		ID:    "polarity",
		Title: "no polarised device, diode, converter, charger or battery is the wrong way round",
		Level: diag.Error,
		Why: "A reversed LED lamp stays dark; a reversed reducer or charger conducts through its own protection and blows its fuse, if it " +
			"has one. The suppression diode of the main coil the wrong way round shorts the coil's supply: 48 V through 0.7 V of " +
			"diode and some 0.5 ohm of driver, and the control fuse opens at the first key-on, or the driver dies. One 8 V " +
			"battery turned round in a string of six takes 16 V off the pack.",
		Do:     "Change the two leads of the device over: + or cathode (the band) to the positive side.",
		Source: "Common practice, no published source.",
		Wrong: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.-, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.+, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runPolarity,
	}
}

func runPolarity(p *rule.Pass) {
	for _, e := range p.Graph.Edges() {
		switch el := e.Element.(type) {
		case *wiring.Load:
			if el.Polarised {
				turned(p, e, "is the wrong way round")
			}
		case *wiring.Coil:
			if el.Polarised {
				turned(p, e, "has its coil the wrong way round")
			}
		case *wiring.Converter:
			if e.Sort == path.Input {
				turned(p, e, "has its supply the wrong way round")
			}
		case *wiring.Charger:
			turned(p, e, "has its output the wrong way round")
		case *wiring.Diode:
			shorting(p, e)
		case *wiring.Source:
			turnedInString(p, el)
		}
	}
}

// turned reports a device whose A should be positive, if A comes back to the negative of a
// supply whose positive feeds B, and no supply sees it the right way round. Ways through
// diodes are asked only where there is no other: a diode that is itself turned round would
// join everything to everything.
func turned(p *rule.Pass, e *path.Edge, how string) {
	for _, diodes := range []bool{false, true} {
		right, wrong := seenBy(p, e, diodes)
		if right {
			return
		}
		if wrong != nil {
			part := e.Part()
			plus, minus := p.Graph.Name(e.A), p.Graph.Name(e.B)
			reportTurnedDevice(p, e, wrong, fmt.Sprintf("%s %s", titled(part), how),
				fmt.Sprintf("%s is on the negative of %s, %s on its positive.", plus, wrong.Element.Base().Part.Designation, minus),
				fmt.Sprintf("Change the wires on %s and %s over.", plus, minus))
			return
		}
	}
}

// seenBy reports whether a supply sees a device the right way round, and the first that
// sees it the wrong way round.
func seenBy(p *rule.Pass, e *path.Edge, diodes bool) (right bool, wrong *path.Supply) {
	through := carrying().Without(e.Element)
	if !diodes {
		through.Sorts &^= path.Diode
	}
	for _, s := range steadySupplies(p) {
		if s.Element == e.Element {
			continue
		}
		if between(p, s, through, e.A, e.B) {
			return true, nil
		}
		if wrong == nil && between(p, s, through, e.B, e.A) {
			wrong = s
		}
	}
	return false, wrong
}

// steadySupplies lists the supplies that tell which side is positive. A charger does not:
// it is judged against the battery.
func steadySupplies(p *rule.Pass) []*path.Supply {
	var steady []*path.Supply
	for _, s := range p.Supplies() {
		if _, charger := s.Element.(*wiring.Charger); !charger {
			steady = append(steady, s)
		}
	}
	return steady
}

// between reports whether a supply's positive feeds one node and its negative takes back
// from another.
func between(p *rule.Pass, s *path.Supply, through path.Through, plus, minus wiring.NodeID) bool {
	if !p.Graph.From(through, s.Plus).Has(plus) {
		return false
	}
	if _, ok := p.Graph.Joined(through, s.Plus, plus); !ok {
		return false
	}
	_, ok := p.Graph.Joined(through, minus, s.Minus)
	return ok
}

// shorting reports a diode that lies forward across a supply: one across a coil, the
// wrong way round.
func shorting(p *rule.Pass, e *path.Edge) {
	for _, s := range steadySupplies(p) {
		through := carrying().Without(e.Element)
		if !between(p, s, through, e.A, e.B) || p.Graph.From(through.Until(p.Negative), s.Plus).Has(e.B) {
			continue // a positive that reaches its cathode too stands on its right side
		}
		across := ""
		if coil := coilAcross(p.Graph, e); coil != "" {
			across = " across the coil of " + coil
		}
		way, _ := p.Graph.From(through, s.Plus).To(e.A)
		reportTurnedDevice(p, e, s, fmt.Sprintf("the diode %s%s is the wrong way round", e.Part().Designation, across),
			fmt.Sprintf("Its anode %s is on the positive of %s and its cathode %s on the negative: it shorts the supply.",
				p.Graph.Name(e.A), s.Element.Base().Part.Designation, p.Graph.Name(e.B)),
			"Turn it round: the cathode (the band) to the positive side.", waySubjects(p.Graph, way)...)
		return
	}
}

// coilAcross is the part whose coil lies between the same copper as a diode.
func coilAcross(g *path.Graph, diode *path.Edge) string {
	for _, e := range g.Edges() {
		if e.Sort != path.Coil {
			continue
		}
		if g.SameCopper(e.A, diode.A) && g.SameCopper(e.B, diode.B) || g.SameCopper(e.A, diode.B) && g.SameCopper(e.B, diode.A) {
			return e.Part().Designation
		}
	}
	return ""
}

// reportTurnedDevice reports a device that is the wrong way round, at the wire on its positive.
func reportTurnedDevice(p *rule.Pass, e *path.Edge, s *path.Supply, message, detail, advice string, others ...string) {
	part := e.Part()
	at := part.At
	var names []string
	for _, n := range []wiring.NodeID{e.B, e.A} {
		for _, at2 := range p.Graph.At(n) {
			if at2.Wire != nil {
				names = append(names, at2.Wire.Name())
				at = landing(at2.Wire, n)
			}
		}
	}
	p.Report(diag.Finding{
		Message: message, Detail: detail, Advice: advice, At: at,
		Related:  defined(part.Designation, part.At),
		Subjects: subjects([]string{part.Designation}, names, []string{p.Graph.Name(e.A), p.Graph.Name(e.B), s.Element.Base().Part.Designation}, others),
	})
}
