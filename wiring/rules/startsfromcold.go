package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func startsFromCold() *rule.Rule {
	return &rule.Rule{
		ID:    "starts-from-cold",
		Title: "from all contacts open the cart comes up by itself: nothing waits for what it alone would make",
		Level: diag.Error,
		Why: "A reducer whose enable lead hangs on its own 12 V never starts. A 12 V coil behind a reducer that is fed from the controller side of " +
			"that very contactor is dead for ever; so is a controller that waits for 36 V of pre-charge where nothing pre-charges. " +
			"Each part is whole, every wire is in place, and a jumper makes it run once, which hides the mistake.",
		Do:     "Take the feed from a point that is live before the thing closes: the battery side of the contactor, or the key's output.",
		Source: "Common practice, no published source. Settled from cold, and again with the thing held closed.",
		Wrong: `wires:
  W69: {to: A1.4}            # the enable lead of the reducer on its own 12 V
parts:
  A1: {fuses: {4: 2 A}}
`,
		Right: `wires:
  W69: {to: X13}             # on the key's output
`,
		Run: runStartsFromCold,
	}
}

func runStartsFromCold(p *rule.Pass) {
	driving := firstMoving(p.Harness)
	if driving == nil {
		return
	}
	var network *settle.Network
	for _, el := range idleEverywhere(p) {
		if network == nil {
			network = settle.Compile(p.Harness)
		}
		forced, err := network.With(settle.Stuck(el, true)).Settle(p.Context(), driving, settle.Options{})
		if err != nil {
			return
		}
		if forced.Outcome == settle.Settled && wouldHold(forced, el) {
			reportCircle(p, el, driving, forced)
		}
	}
}

// firstMoving is the first state in which the cart should move; nil if none does.
func firstMoving(h *wiring.Harness) *wiring.State {
	for _, s := range h.States {
		if s.Moves() > 0 {
			return s
		}
	}
	return nil
}

// idleEverywhere lists the coils, and the converters that are told to run, that hold in no
// state at all from cold.
func idleEverywhere(p *rule.Pass) []wiring.Element {
	held := map[wiring.Element]bool{}
	var starters []wiring.Element
	for _, c := range elementsOf[*wiring.Coil](p.Harness) {
		starters = append(starters, c)
	}
	for _, c := range elementsOf[*wiring.Converter](p.Harness) {
		if watching(c.When) != nil {
			starters = append(starters, c)
		}
	}
	p.Sweep(func(_ *wiring.State, _ rule.Charge, at *settle.Point) {
		for _, el := range starters {
			held[el] = held[el] || at.Holds(el)
		}
	})
	var idle []wiring.Element
	for _, el := range starters {
		if !held[el] {
			idle = append(idle, el)
		}
	}
	return idle
}

// watching is the first sense of a condition that watches a DC voltage; nil if it has none.
func watching(c *wiring.Condition) *wiring.Sense {
	if c == nil {
		return nil
	}
	if s, ok := c.Element.(*wiring.Sense); ok && !s.AC {
		return s
	}
	for _, each := range c.Of {
		if s := watching(each); s != nil {
			return s
		}
	}
	return nil
}

// wouldHold reports whether something that is held closed would stay so by itself.
func wouldHold(at *settle.Point, el wiring.Element) bool {
	switch el := el.(type) {
	case *wiring.Coil:
		return math.Abs(float64(at.ElementVolts(el))) >= float64(el.PullIn)
	case *wiring.Converter:
		return at.Holding(el.When) && at.ElementVolts(el) >= el.Starts
	}
	return false
}

func reportCircle(p *rule.Pass, el wiring.Element, s *wiring.State, forced *settle.Point) {
	part := el.Base().Part
	f := diag.Finding{
		Message:  fmt.Sprintf("%s never comes up: it waits for what it alone would make", titled(part)),
		Detail:   fmt.Sprintf("No state energises %s from cold; held closed in the state %s it would stay.", el.Base().Ref(), s.Name),
		Advice:   "Feed it, or what tells it to close, from a point that is live before: the battery side of the contactor, or the key's output.",
		At:       part.At,
		Subjects: []string{part.Designation, el.Base().Ref()},
		States:   []string{s.Name},
	}
	cold := p.Point(s, rule.Middle)
	if cold == nil {
		return
	}
	if n, says := missing(p, el, cold, forced); says != "" {
		f.Detail += " " + says
		circleWire(p, &f, n, cold, forced)
	}
	p.Report(f)
}

// missing is the node that lacks its voltage from cold and has it once the thing is held
// closed, and the words for it.
func missing(p *rule.Pass, el wiring.Element, cold, forced *settle.Point) (wiring.NodeID, string) {
	at := func(n wiring.NodeID) string {
		return fmt.Sprintf("%s reads %s from cold, and %s then.", p.Graph.Name(n), volts(cold.Reading(n)), volts(forced.Reading(n)))
	}
	switch el := el.(type) {
	case *wiring.Converter:
		if s := watching(el.When); s != nil {
			return s.At, at(s.At)
		}
	case *wiring.Coil:
		for _, sheet := range []wiring.NodeID{el.A, el.B} {
			if forced.Reading(sheet)-cold.Reading(sheet) > el.PullIn/2 {
				return sheet, at(sheet)
			}
		}
		for _, s := range elementsOf[*wiring.Sense](p.Harness) {
			if !s.AC && forced.Holds(s) && !cold.Holds(s) {
				return s.At, at(s.At)
			}
		}
	}
	return wiring.NoNode, ""
}

// circleWire points the finding at the wire by which the voltage comes once it is there:
// where a converter makes it that is dead from cold itself, at the one that feeds that.
func circleWire(p *rule.Pass, f *diag.Finding, n wiring.NodeID, cold, forced *settle.Point) {
	for range p.Supplies() {
		s, way := feederAt(p, n, forced)
		if s == nil {
			return
		}
		if c, ok := s.Element.(*wiring.Converter); ok && !cold.Holds(c) && watching(c.When) == nil {
			n = c.InA
			continue
		}
		if w, landed := tap(p.Harness, way); w != nil {
			f.At, f.Related = landing(w, landed), defined(w.Name(), w.At)
			f.Subjects = subjects(f.Subjects, []string{w.Name(), p.Graph.Name(landed)})
		}
		return
	}
}

// feederAt is the first supply that gives at a point and reaches a node, and how; nil if
// none does.
func feederAt(p *rule.Pass, n wiring.NodeID, at *settle.Point) (*path.Supply, path.Path) {
	through := path.Through{Sorts: path.Conducting | path.Resistor, Setting: path.InState(at.State, at.Holds)}.Until(p.Negative)
	for _, s := range p.Supplies() {
		if way, ok := p.Graph.From(through, s.Plus).To(n); ok && at.Holds(s.Element) {
			return s, way
		}
	}
	return nil, path.Path{}
}
