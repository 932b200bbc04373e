package rules

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
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
			"on a full 16S pack sees 58.4 V: more than four times its voltage, and a filament some twenty times its power. " +
			"Between the 48 V and the 12 V positive stand some 40 V, which no eye would expect. " +
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
		Run:    runBusVoltage,
		Proves: []*position.Property{withinMaximum()},
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
	pressAnywhere(p, things)
	for _, t := range things {
		t.report(p, things)
	}
}

// pressedThings lists loads, converter inputs and senses that have limits.
func pressedThings(p *rule.Pass) []*pressed { return pressedIn(p.Harness) }

func pressedIn(h *wiring.Harness) []*pressed {
	var all []*pressed
	for _, part := range h.Parts {
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
	full := rested + quantity.Volt(slope)*(top.Full-top.Rested)
	return min(full, max(rested, top.Full))
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
