package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func flasherLoad() *rule.Rule {
	return &rule.Rule{
		ID:    "flasher-load",
		Title: "a flasher that watches its load gets the load that it is made for, on each side",
		Level: diag.Warning,
		Why: "A thermal or load-sensing flasher is made for two filament lamps of 21 W, 3.4 A. With LED lamps of 3 W it sees a broken lamp and flashes " +
			"at double rate, or does not start at all. With one LED among filament lamps the two sides flash unlike each other.",
		Do:     "Fit an electronic flasher that does not watch its load (it needs a negative of its own), or give all lamps of a side their filament back.",
		Source: "Common practice, no published source; field cases of owners.",
		Wrong:  flasherLines("{kind: lamp-led, power: 3 W, place: front}"),
		Right:  flasherLines("{kind: lamp, power: 21 W at 12.8 V, inrush: 8 A for 50 ms, place: front}"),
		Run:    runFlasherLoad,
	}
}

// flasherLines is a turn signal with four lamps of some kind.
func flasherLines(lamp string) string {
	return `parts:
  A4: {kind: flasher-load, place: dash}
  S9: {kind: turn-switch, place: dash}
  E11..E14: ` + lamp + `
wires:
  W101: {from: A1.1, to: A4.49, colour: PK, size: 16 AWG, length: 18 in}
  W102: {from: A4.31, to: A1.n, colour: BK, size: 16 AWG, length: 18 in}
  W103: {from: A4.49a, to: S9.in, colour: VT, size: 16 AWG, length: 18 in}
  W104..W105: {from: S9.left, to: E11..E12.+, colour: WH, size: 16 AWG, length: 4 ft}
  W106..W107: {from: S9.right, to: E13..E14.+, colour: TQ, size: 16 AWG, length: 4 ft}
  W108..W111: {from: E11..E14.-, to: A1.n, colour: BK, size: 16 AWG, length: 4 ft}
`
}

func runFlasherLoad(p *rule.Pass) {
	for _, d := range elementsOf[*wiring.Driver](p.Harness) {
		if d.Least > 0 {
			for _, s := range signalStates(p, d) {
				if at := p.Point(s, rule.Middle); at != nil {
					judgeFlasher(p, d, at)
				}
			}
		}
	}
}

// signalStates are the positions of each switch behind a flasher, the cart being ready.
func signalStates(p *rule.Pass, d *wiring.Driver) []*wiring.State {
	ready := p.Harness.State("ready")
	if ready == nil {
		ready = &wiring.State{Name: "at rest"}
	}
	reach := p.Graph.From(path.Through{Sorts: path.Metal}.Without(d).Until(p.Negative), d.B)
	var states []*wiring.State
	for _, part := range p.Harness.Parts {
		for _, c := range part.Controls {
			if !switchesAt(part, c, reach) {
				continue
			}
			for _, position := range c.Positions[1:] {
				states = append(states, moved(ready, c, position))
			}
		}
	}
	return states
}

func switchesAt(part *wiring.Part, c *wiring.Control, reach *path.Reach) bool {
	for _, el := range part.Elements {
		if s, ok := el.(*wiring.Switch); ok && s.Control == c {
			for _, n := range switchNodes(s) {
				if reach.Has(n) {
					return true
				}
			}
		}
	}
	return false
}

// moved is a state with one more control away from rest.
func moved(s *wiring.State, c *wiring.Control, position string) *wiring.State {
	set := map[*wiring.Control]string{c: position}
	for each, stands := range s.Set {
		if each != c {
			set[each] = stands
		}
	}
	return &wiring.State{Name: fmt.Sprintf("%s, %s %s", s.Name, c.Part.Designation, position), Set: set, SOC: s.SOC, At: s.At}
}

func judgeFlasher(p *rule.Pass, d *wiring.Driver, at *settle.Point) {
	flow := absolute(at.ElementAmps(d))
	f := diag.Finding{
		At:       d.Part.At,
		Subjects: subjects([]string{d.Part.Designation, d.Ref()}, litBy(p, d, at)),
		States:   []string{at.State.Name},
		Detail:   fmt.Sprintf("It feeds %s.", list(litBy(p, d, at))),
	}
	switch {
	case flow < quantity.Ampere(0.01): // nothing hangs there
		return
	case flow < d.Least:
		f.Message = fmt.Sprintf("%s feeds %s in the state %s and needs %v: it flashes fast, or not at all", titled(d.Part), amps(flow), at.State.Name, d.Least)
		f.Advice = "Fit an electronic flasher that does not watch its load."
	case d.Rated.Amps > 0 && flow > d.Rated.Amps:
		f.Message = fmt.Sprintf("%s feeds %s in the state %s and is rated %v", titled(d.Part), amps(flow), at.State.Name, d.Rated.Amps)
		f.Advice = "Take a flasher for more lamps."
	default:
		return
	}
	p.Report(f)
}

// litBy lists the parts that are on behind an electronic switch at a point.
func litBy(p *rule.Pass, d *wiring.Driver, at *settle.Point) []string {
	through := path.Through{Sorts: path.Metal, Setting: path.InState(at.State, at.Holds)}.Without(d).Until(p.Negative)
	reach := p.Graph.From(through, d.B)
	var names []string
	for _, c := range consumers(p.Graph) {
		if reach.Has(c.plus) && at.On(c.part) {
			names = append(names, c.part.Designation)
		}
	}
	return natural(names)
}
