package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func busVoltage() *rule.Rule {
	return &rule.Rule{
		ID:    "bus-voltage",
		Title: "no consumer ever sees more than it stands, and each that is on sees its working voltage",
		Level: diag.Error,
		Why: "After the conversion there is no 12 V on the cart but what a reducer makes. A 12 V lamp with a maximum of 16 V " +
			"on a full 16S pack sees 58.4 V: more than three times its voltage, some ten times its power. " +
			"Between the 48 V and the 12 V positive stand 36 to 46 V, which no eye would expect. " +
			"A logic input made for 30 V is destroyed by pack voltage in an instant.",
		Do: "Move the wire to the bus that the device is made for: a 12 V device to a channel of the 12 V fuse block, with its " +
			"negative on the negative of that block. What is to hang on the pack must stand its full-charge voltage, better 5 % more.",
		Source: "The ratings of the devices themselves; cell voltages by public charts (3.65 V an LFP cell at end of charge). Common practice, no published source.",
		Wrong: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: X13, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}   # fused, but 48 V
  W73: {from: E1.-, to: X3.5, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runBusVoltage,
	}
}

// pressed is one thing that stands between two nodes and has limits of voltage.
type pressed struct {
	element   wiring.Element
	a, b      wiring.NodeID
	most      quantity.Volt // 0: none
	works     wiring.Band
	when      *wiring.Condition
	converter bool

	worst   quantity.Volt
	over    []string // states in which it is over most
	overAt  *settle.Point
	low     quantity.Volt
	under   []string
	lowName string
}

func runBusVoltage(p *rule.Pass) {
	things := pressedThings(p)
	before := make([]quantity.Volt, len(things)) // volts at half charge in the state before
	p.Sweep(func(s *wiring.State, c rule.Charge, at *settle.Point) {
		for i, t := range things {
			v := quantity.Volt(math.Abs(float64(at.Across(t.a, t.b))))
			if c == rule.Middle {
				before[i] = v
			}
			if c == rule.Full {
				v = atFullCharge(p, before[i], v)
			}
			t.note(s, c, at, v)
		}
	})
	for _, t := range things {
		t.report(p)
	}
}

// pressedThings lists loads, converter inputs and senses that have limits.
func pressedThings(p *rule.Pass) []*pressed {
	var all []*pressed
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			switch el := el.(type) {
			case *wiring.Load:
				all = append(all, &pressed{element: el, a: el.A, b: el.B, most: orHigh(el.Most, el.Works), works: el.Works, when: el.When})
			case *wiring.Converter:
				all = append(all, &pressed{element: el, a: el.InA, b: el.InB, most: el.Works.High, works: el.Works, when: el.When, converter: true})
			case *wiring.Sense:
				if !el.AC && el.Most > 0 {
					all = append(all, &pressed{element: el, a: el.At, b: el.To, most: el.Most})
				}
			}
		}
	}
	return all
}

func orHigh(most quantity.Volt, works wiring.Band) quantity.Volt {
	if most > 0 {
		return most
	}
	return works.High
}

// atFullCharge takes a voltage from the rested full pack on to the end of charge, along
// the line through half charge: what hangs on the pack rises with it, what is regulated
// does not.
func atFullCharge(p *rule.Pass, middle, rested quantity.Volt) quantity.Volt {
	pack := highest(p)
	if pack == nil {
		return rested
	}
	top := pack.Top()
	if top.Rested <= top.Middle {
		return rested
	}
	slope := float64(rested-middle) / float64(top.Rested-top.Middle)
	if slope < 0.05 || slope > 1.2 { // regulated, or another regime than at half charge
		return rested
	}
	return rested + quantity.Volt(slope)*(top.Full-top.Rested)
}

// highest is the battery at the top of the highest string.
func highest(p *rule.Pass) *path.Supply {
	var found *path.Supply
	for _, s := range p.Supplies() {
		if s.Battery() && (found == nil || s.Top().Full > found.Top().Full) {
			found = s
		}
	}
	return found
}

// starved is the share of its lowest working voltage from which a consumer counts as
// switched on and starved, not as switched off. Our own choice.
const starved = 0.3

func (t *pressed) note(s *wiring.State, c rule.Charge, at *settle.Point, v quantity.Volt) {
	if v > t.worst {
		t.worst, t.overAt = v, at
	}
	if t.most > 0 && v > t.most {
		t.over = append(t.over, s.Name)
	}
	if t.works.Low <= 0 || v >= t.works.Low || float64(v) < starved*float64(t.works.Low) {
		return
	}
	if !at.Joined(t.a, t.b) || !at.Holding(t.when) {
		return
	}
	if t.low == 0 || v < t.low {
		t.low, t.lowName = v, s.Name+", "+c.String()
	}
	t.under = append(t.under, s.Name)
}

func (t *pressed) name() string { return t.element.Base().Ref() }

func (t *pressed) report(p *rule.Pass) {
	switch {
	case len(t.over) > 0:
		t.reportOver(p)
	case t.most > 0 && t.worst > 0 && float64(t.most) < 1.05*float64(t.worst) && risesWithPack(p, t):
		t.reportNarrow(p)
	}
	if len(t.under) > 0 {
		t.reportUnder(p)
	}
}

// risesWithPack reports whether the worst voltage is that of the pack at end of charge.
func risesWithPack(p *rule.Pass, t *pressed) bool {
	pack := highest(p)
	return pack != nil && float64(t.worst) > 0.95*float64(pack.Top().Full)
}

func (t *pressed) reportOver(p *rule.Pass) {
	part := t.element.Base().Part
	way, ok := wayIn(p, t)
	f := diag.Finding{
		Message:  fmt.Sprintf("%s sees %s, and stands %v", titled(part), volts(t.worst), t.most),
		Detail:   fmt.Sprintf("Across %s to %s.", p.Graph.Name(t.a), p.Graph.Name(t.b)),
		Advice:   "Move it to the bus that it is made for.",
		At:       part.At,
		Subjects: []string{part.Designation},
		States:   once(t.over),
	}
	if ok {
		f.Detail += fmt.Sprintf(" The voltage comes by %s.", way)
		f.Subjects = subjects(f.Subjects, pathSubjects(way))
		if w, at := newest(p.Harness, way); w != nil {
			f.Message = fmt.Sprintf("%s puts %s on %s, which stands %v", w.Name(), volts(t.worst), titled(part), t.most)
			f.At, f.Related = landing(w, at), defined(part.Designation, part.At)
			f.Subjects = subjects([]string{w.Name(), p.Graph.Name(at)}, f.Subjects)
			if channel := freeChannel(p, t.a); channel != "" {
				f.Advice = fmt.Sprintf("Move %s to a free channel of the right bus, %s.", w.Name(), channel)
			}
		}
	}
	p.Report(f)
}

// wayIn is how the highest supply that can reaches the thing's positive side, in the state
// in which it saw most.
func wayIn(p *rule.Pass, t *pressed) (path.Path, bool) {
	through := path.Through{Sorts: path.Conducting | path.Resistor, Setting: path.InState(t.overAt.State, t.overAt.Holds)}
	var best path.Path
	top, found := quantity.Volt(0), false
	for _, s := range p.Supplies() {
		reach := p.Graph.From(through.Until(p.Negative), s.Plus)
		for _, n := range []wiring.NodeID{t.a, t.b} {
			if way, ok := reach.To(n); ok && !p.Negative(n) && s.Top().Full > top {
				best, top, found = way, s.Top().Full, true
			}
		}
	}
	return best, found
}

func (t *pressed) reportNarrow(p *rule.Pass) {
	part := t.element.Base().Part
	p.Report(diag.Finding{
		Level:    diag.Note,
		Message:  fmt.Sprintf("%s stands %v, less than 5 %% above the full pack", t.name(), t.most),
		Detail:   fmt.Sprintf("At the end of charge it sees %s; braking lifts the pack further.", volts(t.worst)),
		Advice:   "Set the controller's upper voltage limit below it.",
		At:       part.At,
		Subjects: []string{part.Designation, t.name()},
	})
}

func (t *pressed) reportUnder(p *rule.Pass) {
	part := t.element.Base().Part
	p.Report(diag.Finding{
		Level:    diag.Warning,
		Message:  fmt.Sprintf("%s is switched on and sees %s, below the %v that it needs", t.name(), volts(t.low), t.works.Low),
		Detail:   fmt.Sprintf("Worst in the state %s.", t.lowName),
		Advice:   "Feed it from the bus that it is made for, by wire large enough.",
		At:       part.At,
		Subjects: []string{part.Designation, t.name()},
		States:   once(t.under),
	})
}

// once drops doubles and keeps the order.
func once(names []string) []string { return subjects(names) }
