package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func busesApart() *rule.Rule {
	return &rule.Rule{
		ID:    "buses-apart",
		Title: "positives of different voltage are never joined, in any position of any switch",
		Level: diag.Error,
		Why: "One switch position that joins 48 V and 12 V puts up to 58.4 V on every 12 V device at once, and pack voltage on the output of " +
			"a reducer that is made for 16 V at most. It need not be a position that anyone uses: a changeover switch, a relay " +
			"contact, a plug that fits both buses is enough.",
		Do:     "Take the wire off that joins them. Where one device is to be fed from either bus, give it a reducer, not a switch.",
		Source: "Common practice, no published source.",
		Wrong: `wires:
  W101: {from: X13, to: A1.2, colour: PK, size: 18 AWG, length: 2 ft}   # 48 V on a 12 V channel
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W101: {from: A1.2, to: E1.+, colour: PK, size: 18 AWG, length: 2 ft}
  W102: {from: E1.-, to: A1.n, colour: BK, size: 18 AWG, length: 2 ft}
`,
		Run: runBusesApart,
	}
}

// joining is a resistance through which two positives count as joined.
const joining = quantity.Ohm(1000)

// apart is how much two voltages must differ to be two buses.
const apart = 1.25

func runBusesApart(p *rule.Pass) {
	through := path.Through{Sorts: path.Conducting | path.Resistor, Ohms: joining}.Until(p.Negative)
	var positives []*path.Supply
	for _, s := range p.Supplies() {
		if _, charger := s.Element.(*wiring.Charger); !charger && s.Top().Middle > 0 {
			positives = append(positives, s)
		}
	}
	seen := map[*wiring.Wire]bool{}
	for _, high := range positives {
		reach := p.Graph.From(through, high.Plus)
		for _, low := range positives {
			if !reach.Has(low.Plus) || !otherBus(high, low) {
				continue
			}
			if way, ok := p.Graph.Joined(through, high.Plus, low.Plus); ok {
				reportJoined(p, high, low, way, seen)
			}
		}
	}
}

// otherBus reports whether low is a bus of clearly lower voltage. Two batteries of one
// string are not two buses; a pack and an auxiliary battery on one negative are.
func otherBus(high, low *path.Supply) bool {
	if under(high, low) || under(low, high) {
		return false
	}
	return high.Top().Middle > apart*low.Top().Middle
}

// reportJoined says once for each wire that it joins two buses.
func reportJoined(p *rule.Pass, high, low *path.Supply, way path.Path, seen map[*wiring.Wire]bool) {
	w, n := newest(p.Harness, way)
	part := low.Element.Base().Part
	f := diag.Finding{
		Message:  fmt.Sprintf("%s (%s) and %s (%s) are joined", p.Graph.Name(high.Plus), volts(high.Top().Middle), p.Graph.Name(low.Plus), volts(low.Top().Middle)),
		Detail:   fmt.Sprintf("By %s%s.", way, positionsOf(way)),
		Advice:   "Take the way apart.",
		At:       part.At,
		Subjects: subjects(waySubjects(p.Graph, way), []string{high.Element.Base().Part.Designation, part.Designation}),
	}
	if w != nil {
		if seen[w] {
			return
		}
		seen[w] = true
		f.Message = fmt.Sprintf("%s joins %s (%s) and %s (%s)", w.Name(), p.Graph.Name(high.Plus), volts(high.Top().Middle),
			p.Graph.Name(low.Plus), volts(low.Top().Middle))
		f.Advice = fmt.Sprintf("Take %s off %s.", w.Name(), p.Graph.Name(n))
		f.At, f.Related = landing(w, n), defined(w.Name(), w.At)
		f.Subjects = subjects([]string{w.Name(), p.Graph.Name(n), w.From.String(), w.To.String()}, f.Subjects)
	}
	p.Report(f)
}

// positionsOf tells the switch positions that a way needs: ", while S1 is on and K1 is
// energised".
func positionsOf(way path.Path) string {
	var said []string
	for _, s := range way.Steps {
		switch el := s.Edge.Element.(type) {
		case *wiring.Switch:
			for _, position := range el.Control.Positions {
				if s.Edge.ClosedIn(position) {
					said = append(said, fmt.Sprintf("%s is %s", el.Part.Designation, position))
					break
				}
			}
		case *wiring.Contact:
			word := "energised"
			if el.RestClosed {
				word = "at rest"
			}
			said = append(said, fmt.Sprintf("%s is %s", el.Part.Designation, word))
		case *wiring.Driver:
			said = append(said, el.Ref()+" is closed")
		}
	}
	if len(said) == 0 {
		return ""
	}
	return ", while " + list(once(said))
}
