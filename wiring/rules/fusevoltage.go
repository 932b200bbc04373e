package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fuseVoltage() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-voltage",
		Title: "fuses, breakers, switches and contacts are rated for the voltage that they open against",
		Level: diag.Error,
		Why: "A blade fuse is rated 32 V. On a 16S pack (54.4 V rested full, 58.4 V at the end of charge) its element melts and the arc does not go out: " +
			"the holder burns, and the current flows on. Direct current has no zero crossing, so 20 V too much is not a small excess. " +
			"A relay contact or rocker made for 14 V welds or burns the same way when it switches 48 V.",
		Do: "At pack voltage use fuses made for it: 10 x 38 mm (1000 V DC), class T (125 V DC), strip fuses of 70 V or more; switch pack voltage " +
			"with contacts rated for it, and accessories on the 12 V side.",
		Source: "33 CFR 183.455(d), from memory; rated voltages: ISO 8820 parts 3 to 6, UL 248-15, IEC 60269-6. Below rested full is our error level, below full charge our warning.",
		Wrong: `parts:
  F3: {kind: fuse-blade, replaces: fuse-10x38, rating: 15 A}   # 32 V, in front of the reducer
`,
		Right: `parts:
  F3: {rating: 15 A}                                           # stays a fuse-10x38, 1000 V
`,
		Run: runFuseVoltage,
	}
}

// opener is something that must open a circuit, with the voltage that it is made for.
type opener struct {
	element wiring.Element
	nodes   []wiring.NodeID
	rated   quantity.Volt
	what    string // "fuse", "switch"
	must    bool   // say so where it has no mark
}

// carBus is the voltage up to which a switch or contact without a mark is let pass: what
// any automotive part is made for. Our own choice.
const carBus = quantity.Volt(16)

func runFuseVoltage(p *rule.Pass) {
	f := newFacing(p)
	for _, o := range openers(p.Harness) {
		s := f.highest(o)
		if s == nil {
			continue
		}
		switch top := s.Top(); {
		case o.rated == 0:
			if o.must && top.Full > carBus {
				p.NotChecked(o.element.Base().Ref(), "it has no rated voltage", o.element.Base().Part.At)
			}
		case o.rated < top.Rested:
			o.report(p, s, diag.Error)
		case o.rated < top.Full:
			o.report(p, s, diag.Warning)
		}
	}
}

// openers lists fitted fuses and breakers, hand switches, contacts and drivers.
func openers(h *wiring.Harness) []opener {
	var all []opener
	for _, part := range h.Parts {
		for _, el := range part.Elements {
			switch el := el.(type) {
			case *wiring.Fuse:
				if el.Fitted {
					all = append(all, opener{el, []wiring.NodeID{el.A, el.B}, el.Volts, fuseWord(el), true})
				}
			case *wiring.Switch:
				all = append(all, opener{el, switchNodes(el), el.Rated.Volts, "switch", len(el.Control.Positions) > 1 && !isPlug(el)})
			case *wiring.Contact:
				all = append(all, opener{el, []wiring.NodeID{el.A, el.B}, el.Rated.Volts, "contact", true})
			case *wiring.Driver:
				all = append(all, opener{el, []wiring.NodeID{el.A, el.B}, el.Rated.Volts, "electronic switch", false})
			}
		}
	}
	return all
}

// isPlug reports whether a switch is a connector, which is not meant to break a current.
func isPlug(s *wiring.Switch) bool { return s.Control.Name == "mated" || s.Control.Name == "plug" }

func fuseWord(f *wiring.Fuse) string {
	switch f.Style {
	case "":
		return "fuse"
	case "breaker":
		return "breaker"
	}
	return f.Style + " fuse"
}

func switchNodes(s *wiring.Switch) []wiring.NodeID {
	var nodes []wiring.NodeID
	for _, position := range s.Control.Positions {
		for _, group := range s.Closes[position] {
			nodes = append(nodes, group...)
		}
	}
	return nodes
}

// facing tells which supply can stand on an opener: it reaches it by anything that carries
// current, a load on the way counted, before the negative side.
type facing struct {
	pass    *rule.Pass
	reach   []*path.Reach // by supply
	charges []bool        // by supply: it is a charger whose battery holds the voltage down
}

func newFacing(p *rule.Pass) facing {
	f := facing{pass: p}
	for _, s := range p.Supplies() {
		f.reach = append(f.reach, p.Graph.From(facingThrough(p.Negative), s.Plus))
		f.charges = append(f.charges, chargesSomething(p, s))
	}
	return f
}

func facingThrough(negative func(wiring.NodeID) bool) path.Through {
	return path.Through{Sorts: path.Conducting | path.Resistor | path.Load | path.Coil, Ohms: joining}.Until(negative)
}

// highest is the supply of the highest voltage that can stand on the opener; nil if none.
// Where the opener itself makes the negative side, it counts as open.
func (f facing) highest(o opener) *path.Supply {
	p, negative, reach := f.pass, f.pass.Negative, func(i int) *path.Reach { return f.reach[i] }
	for _, n := range o.nodes {
		if p.Negative(n) {
			negative = negativeWithout(p, o.element)
			reach = func(i int) *path.Reach {
				return p.Graph.From(facingThrough(negative).Without(o.element), p.Supplies()[i].Plus)
			}
			break
		}
	}
	var found *path.Supply
	for i, s := range p.Supplies() {
		if f.charges[i] {
			continue
		}
		if (found == nil || s.Top().Full > found.Top().Full) && f.stands(o, s, reach(i), negative) {
			found = s
		}
	}
	return found
}

// chargesSomething reports whether a supply is a charger at a battery, to which its voltage
// belongs; one that is too high for the battery is told as that.
func chargesSomething(p *rule.Pass, s *path.Supply) bool {
	if _, ok := s.Element.(*wiring.Charger); !ok {
		return false
	}
	for _, battery := range p.Supplies() {
		if battery.Battery() && charges(p, s, battery) {
			return true
		}
	}
	return false
}

// stands reports whether a supply reaches one of the opener's nodes in one position of all
// switches, without going through the opener.
func (f facing) stands(o opener, s *path.Supply, reach *path.Reach, negative func(wiring.NodeID) bool) bool {
	for _, n := range o.nodes {
		way, ok := reach.To(n)
		if !ok || negative(n) {
			continue
		}
		if way.Agrees() {
			return true
		}
		if _, ok := f.pass.Graph.Joined(facingThrough(negative).Without(o.element), s.Plus, n); ok {
			return true
		}
	}
	return false
}

// negativeWithout is the negative side with one element open.
func negativeWithout(p *rule.Pass, el wiring.Element) func(wiring.NodeID) bool {
	var bottoms []wiring.NodeID
	for _, s := range p.Supplies() {
		bottoms = append(bottoms, s.Bottom)
	}
	through := path.Through{Sorts: path.Conductors | path.Fuse | path.Switch, Setting: path.Parked}.Without(el)
	return p.Graph.From(through, bottoms...).Has
}

func (o opener) report(p *rule.Pass, s *path.Supply, level diag.Level) {
	base := o.element.Base()
	top := s.Top()
	at := base.Part.At
	for _, key := range []string{"kind", "rating", "volts", "contact"} {
		if span, ok := base.Part.Where[key]; ok {
			at = span
			break
		}
	}
	source := s.Element.Base().Part.Designation
	against, limit := top.Rested, "rested full"
	if level == diag.Warning {
		against, limit = top.Full, "at the end of charge"
	}
	p.Report(diag.Finding{
		Level:    level,
		Message:  fmt.Sprintf("the %s %s is rated %v and opens against %s", o.what, openerName(o.element), o.rated, volts(against)),
		Detail:   fmt.Sprintf("%s has %s rested full and %s at the end of charge; %s is above the rating.", source, volts(top.Rested), volts(top.Full), limit),
		Advice:   o.advice(top),
		At:       at,
		Related:  defined(base.Part.Designation, base.Part.At),
		Subjects: subjects([]string{base.Part.Designation, base.Ref(), source}),
	})
}

func openerName(el wiring.Element) string {
	if len(el.Base().Part.Elements) == 1 {
		return el.Base().Part.Designation
	}
	return el.Base().Ref()
}

func (o opener) advice(top path.Volts) string {
	if _, ok := o.element.(*wiring.Fuse); ok {
		return fmt.Sprintf("Fit a fuse rated for %s or more, such as 10 x 38 mm (up to 32 A) or class T.", volts(top.Full))
	}
	return fmt.Sprintf("Use one rated for %s or more on direct current, or move it to the 12 V side.", volts(top.Full))
}
