package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func chatter() *rule.Rule {
	return &rule.Rule{
		ID:    "chatter",
		Title: "every state settles: nothing opens and closes without end",
		Level: diag.Error,
		Why: "A relay whose coil hangs behind its own opening contact buzzes some 50 times a second and burns its contact within the hour. A reducer that is supplied through " +
			"a 470 ohm pre-charge resistor starts at 50 V, draws 60 mA, pulls the point to 23.5 V, drops out, recovers, and so on for ever. " +
			"A supply of 25 A that is asked for 40 A goes the same way.",
		Do:     "Feed what switches from a point that does not move when it acts: a coil from ahead of its own contact, a reducer from the battery side of every resistor.",
		Source: "Common practice, no published source; every state is settled at the floor, half full and full, and every position of the switches full.",
		Wrong: `parts:
  K2: {kind: relay, coil-ohms: 1500 ohm, pull-in: 30 V, drop-out: 10 V, contact: 5 A at 60 V, place: dash}
  V3: {kind: diode, place: dash}
wires:
  W101: {from: X13, to: K2.30, colour: PK, size: 16 AWG, length: 2 ft}
  W102: {from: K2.87a, to: K2.86, colour: PK, size: 16 AWG, length: 6 in}   # its own contact at rest feeds its coil
  W103: {from: K2.85, to: X3.5, colour: BK, size: 16 AWG, length: 2 ft}
  V3.k: {to: K2.86}
  V3.a: {to: K2.85}
`,
		Right: `parts:
  K2: {kind: relay, coil-ohms: 1500 ohm, pull-in: 30 V, drop-out: 10 V, contact: 5 A at 60 V, place: dash}
  V3: {kind: diode, place: dash}
wires:
  W101: {from: X13, to: K2.30, colour: PK, size: 16 AWG, length: 2 ft}
  W102: {from: K2.30, to: K2.86, colour: PK, size: 16 AWG, length: 6 in}
  W103: {from: K2.85, to: X3.5, colour: BK, size: 16 AWG, length: 2 ft}
  V3.k: {to: K2.86}
  V3.a: {to: K2.85}
`,
		Run:    runChatter,
		Proves: []*position.Property{position.SettlesEverywhere()},
	}
}

func runChatter(p *rule.Pass) {
	c := chattering{pass: p, told: map[wiring.Element]bool{}}
	for _, s := range p.Harness.States {
		for _, charge := range rule.Charges() {
			if at := p.Settled(s, charge); at != nil {
				c.state(at, fmt.Sprintf("In the state %s, %v.", s.Name, charge))
			}
		}
	}
	for _, r := range p.Proofs() {
		for _, x := range r.Counterexamples {
			if !batteryIn(p, x.Point) {
				continue // a charger alone, with the pack off, is asked for more than it has
			}
			c.state(x.Point, fmt.Sprintf("Found with %s.", positionWords(x.State)))
		}
	}
}

// batteryIn reports whether a battery is in circuit.
func batteryIn(p *rule.Pass, at *settle.Point) bool {
	for _, s := range p.Supplies() {
		if s.Battery() && at.Holds(s.Element) {
			return true
		}
	}
	return false
}

// chattering tells what does not settle, once for each thing that does not.
type chattering struct {
	pass   *rule.Pass
	told   map[wiring.Element]bool
	noCure bool // a state without any answer was told
}

func (c *chattering) state(at *settle.Point, where string) {
	switch {
	case at.Outcome == settle.Settled:
	case len(at.Cycle) > 0:
		if !c.told[at.Cycle[0]] {
			c.cycle(at, where)
		}
	case !c.noCure:
		c.noCure = true
		c.pass.Report(diag.Finding{
			Message:  fmt.Sprintf("the state %s has no operating point", at.State.Name),
			Detail:   sentenceOf(at.Why) + " " + where,
			Advice:   "Look at what the sentence names: a loop without resistance, or a supply that is asked for more than it has.",
			At:       placeOfState(c.pass, at.State),
			Subjects: subjects(movedParts(c.pass, at.State), batteryNames(c.pass)),
			States:   []string{at.State.Name},
		})
	}
}

// cycle reports what alternates: an error if a contact is among it.
func (c *chattering) cycle(at *settle.Point, where string) {
	level, refs := diag.Warning, []string(nil)
	for _, e := range at.Cycle {
		c.told[e] = true
		refs = append(refs, e.Base().Part.Designation, e.Base().Ref())
		if _, coil := e.(*wiring.Coil); coil {
			level = diag.Error
		}
	}
	part := at.Cycle[0].Base().Part
	c.pass.Report(diag.Finding{
		Level:    level,
		Message:  fmt.Sprintf("%s goes on and off without end", titled(part)),
		Detail:   fmt.Sprintf("%s%s %s", cycleWords(at), swings(at), where),
		Advice:   fmt.Sprintf("Feed %s from a point that does not move when it acts.", at.Cycle[0].Base().Ref()),
		At:       fedAt(c.pass, at.Cycle[0], part),
		Related:  defined(part.Designation, part.At),
		Subjects: subjects(refs),
		States:   []string{at.State.Name},
	})
}

// cycleWords names what goes round, with the threshold of each coil.
func cycleWords(at *settle.Point) string {
	var words []string
	for _, e := range at.Cycle {
		word := e.Base().Ref()
		if coil, ok := e.(*wiring.Coil); ok && coil.PullIn > 0 {
			word += fmt.Sprintf(" (pulls in at %v, drops out at %v)", coil.PullIn, coil.DropOut)
		}
		words = append(words, word)
	}
	return upper(fmt.Sprintf("%s cannot come to rest.", list(words)))
}

// swings says between which voltages the things of a cycle go to and fro.
func swings(at *settle.Point) string {
	text := ""
	for _, s := range at.Swings {
		text += fmt.Sprintf(" %s sees %s and %s in turn.", s.Element.Base().Ref(), volts(s.Low), volts(s.High))
	}
	return text
}

// fedAt is the newest wire at the positive side of an element, else its part.
func fedAt(p *rule.Pass, e wiring.Element, part *wiring.Part) diag.Span {
	n := wiring.NoNode
	switch e := e.(type) {
	case *wiring.Coil:
		n = e.A
	case *wiring.Converter:
		n = e.InA
	case *wiring.Sense:
		n = e.At
	}
	at, best := part.At, -1
	for _, edge := range p.Graph.At(n) {
		if edge.Wire != nil && latest(p.Harness, edge.Wire) > best {
			at, best = landing(edge.Wire, n), latest(p.Harness, edge.Wire)
		}
	}
	return at
}

// sentenceOf makes a sentence of the reason that a point gives.
func sentenceOf(why string) string {
	if why == "" {
		return "It has no operating point."
	}
	return upper(why) + "."
}
