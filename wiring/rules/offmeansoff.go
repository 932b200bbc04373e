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

func offMeansOff() *rule.Rule {
	return &rule.Rule{
		ID:    "off-means-off",
		Title: "with the key off nothing that the key should switch is alive, and what still draws current is listed",
		Level: diag.Error,
		Why: "A reducer whose enable lead sits on a point that is always live runs day and night: 60 mA idle and whatever its accessories draw. " +
			"With 0.2 A in all, 80 % of 110 Ah is gone in 18 days, and a pack that stands at its floor is damaged. The battery side of " +
			"the solenoid is always live; so is the controller side, where a pre-charge resistor lies across the contact (50.2 V behind 470 ohm). " +
			"15 to 40 mA with the key off is normal.",
		Do: "Move the lead to the platform's switched point (live-when-on): pack voltage if and only if the cart is switched on. Where the key " +
			"carries pack voltage, its output is right on every variant. What is meant to run all the time says so: `always-on: \"reason\"`.",
		Source: "Common practice, no published source.",
		Wrong:  "W62: {to: K1.in}     # the enable lead on the battery side of the solenoid",
		Right:  "W62: {to: K1.out}    # pack voltage only while the cart is on",
		Run:    runOffMeansOff,
	}
}

const keyOff = "key off"

// standing is the current above which a load that has no switch of its own in the way is
// not standby: normal standby of a whole cart is 15 to 40 mA. Common practice, no
// published source.
const standing = quantity.Ampere(0.04)

func runOffMeansOff(p *rule.Pass) {
	s := p.Harness.State(keyOff)
	if s == nil {
		return // nothing on this cart is switched by a key
	}
	at := p.Point(s, rule.Middle)
	if at == nil {
		return
	}
	o := off{pass: p, at: at, named: map[*wiring.Part]bool{}}
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			o.judge(part, el)
		}
	}
	o.leftOn(s)
	o.standby()
}

type off struct {
	pass  *rule.Pass
	at    *settle.Point
	named map[*wiring.Part]bool // parts that were reported
}

func (o *off) judge(part *wiring.Part, el wiring.Element) {
	if part.AlwaysOn != "" {
		return
	}
	switch el := el.(type) {
	case *wiring.Converter:
		if el.When != nil && watched(el.When) && o.at.Holds(el) {
			o.converter(part, el)
		}
	case *wiring.Coil:
		if o.at.Holds(el) {
			o.report(part, fmt.Sprintf("the coil of %s is energised with the key off", titled(part)), el.A, diag.Error, el)
		}
	case *wiring.Load:
		if o.at.Holds(el) && o.amps(el) > standing && !o.fedByAlwaysOn(el) {
			o.report(part, fmt.Sprintf("%s is on with the key off", titled(part)), el.A, diag.Error, el)
		}
	}
}

// leftOn warns of loads that can be left on with the key off: their own switch is all
// that stands between them and the battery.
func (o *off) leftOn(parked *wiring.State) {
	all := &wiring.State{Name: "key off, every accessory switch on", SOC: parked.SOC, At: parked.At, Set: map[*wiring.Control]string{}}
	for c, position := range parked.Set {
		all.Set[c] = position
	}
	for _, part := range o.pass.Harness.Parts {
		for _, c := range part.Controls {
			if c.Name == "switch" && len(c.Positions) > 1 {
				all.Set[c] = c.Positions[1]
			}
		}
	}
	at := o.pass.Point(all, rule.Middle)
	if at == nil || len(all.Set) == len(parked.Set) {
		return
	}
	left := off{pass: o.pass, at: at, named: o.named}
	for _, c := range consumers(o.pass.Graph) {
		l, ok := c.edge.Element.(*wiring.Load)
		if !ok || c.part.AlwaysOn != "" || o.named[c.part] || o.at.Holds(l) {
			continue
		}
		if at.Holds(l) && left.amps(l) > standing && !left.fedByAlwaysOn(l) {
			left.report(c.part, fmt.Sprintf("%s can be left on with the key off", titled(c.part)), l.A, diag.Warning, l)
		}
	}
}

// watched reports whether a condition depends on anything that wiring decides.
func watched(c *wiring.Condition) bool {
	if _, ok := c.Element.(*wiring.Sense); ok {
		return true
	}
	for _, each := range c.Of {
		if watched(each) {
			return true
		}
	}
	return false
}

func (o *off) amps(el wiring.Element) quantity.Ampere {
	return quantity.Ampere(math.Abs(float64(o.at.ElementAmps(el))))
}

// fedByAlwaysOn reports whether a load hangs on a supply that is itself declared always
// on, or reported already: one cause is told once.
func (o *off) fedByAlwaysOn(l *wiring.Load) bool {
	for _, s := range o.pass.Supplies() {
		part := s.Element.Base().Part
		if part.AlwaysOn == "" && !o.named[part] {
			continue
		}
		if o.pass.Graph.From(o.through(), s.Plus).Has(l.A) {
			return true
		}
	}
	return false
}

func (o *off) through() path.Through {
	return path.Through{Sorts: path.Conducting | path.Resistor, Setting: path.InState(o.at.State, o.at.Holds)}.Until(o.pass.Negative)
}

// converter reports a converter that runs, at the lead that tells it to.
func (o *off) converter(part *wiring.Part, el *wiring.Converter) {
	sense := o.sense(el.When)
	if sense == nil {
		o.report(part, fmt.Sprintf("%s runs with the key off", titled(part)), el.InA, diag.Error, el)
		return
	}
	o.report(part, fmt.Sprintf("the %s lead of %s is always live", sense.Name, titled(part)), sense.At, diag.Error, sense)
}

// sense is the first sense of a condition that is true.
func (o *off) sense(c *wiring.Condition) *wiring.Sense {
	if s, ok := c.Element.(*wiring.Sense); ok && !s.AC && o.at.Holds(s) {
		return s
	}
	for _, each := range c.Of {
		if s := o.sense(each); s != nil {
			return s
		}
	}
	return nil
}

// report reports something that is alive, which a node makes so through an element.
func (o *off) report(part *wiring.Part, message string, n wiring.NodeID, level diag.Level, el wiring.Element) {
	o.named[part] = true
	f := diag.Finding{
		Level:    level,
		Message:  message,
		Detail:   fmt.Sprintf("With the key off %s reads %s; %s", o.pass.Graph.Name(n), volts(o.at.Reading(n)), o.cost()),
		Advice:   "Feed it from a point that the key switches, or declare always-on with the reason.",
		At:       part.At,
		Related:  defined(part.Designation, part.At),
		Subjects: subjects([]string{part.Designation, o.pass.Graph.Name(n)}),
		States:   []string{keyOff},
	}
	if way, ok := o.source(n); ok {
		f.Detail += fmt.Sprintf(" It is live by %s.", way)
		f.Subjects = subjects(f.Subjects, pathSubjects(way))
		o.blame(&f, way, el)
	}
	o.pass.Report(f)
}

// cost says what it draws and how long the pack lasts.
func (o *off) cost() string {
	total := packAmps(o.pass, o.at)
	text := fmt.Sprintf("the battery gives %v", total)
	if days, ok := daysLeft(o.pass, total); ok {
		text += fmt.Sprintf(", and is at its floor after %.0f days", days)
	}
	return text + "."
}

// source is how a battery makes a node live in this state.
func (o *off) source(n wiring.NodeID) (path.Path, bool) {
	for _, s := range o.pass.Supplies() {
		if s.Battery() {
			if way, ok := o.pass.Graph.From(o.through(), s.Plus).To(n); ok {
				return way, true
			}
		}
	}
	for _, s := range o.pass.Supplies() {
		if way, ok := o.pass.Graph.From(o.through(), s.Plus).To(n); ok {
			return way, true
		}
	}
	return path.Path{}, false
}

// blame points at the wire to move: the last one before the device, or before the inline
// fuse in front of it.
func (o *off) blame(f *diag.Finding, way path.Path, el wiring.Element) {
	last, landed := tap(o.pass.Harness, way)
	if last == nil {
		return
	}
	f.At = landing(last, landed)
	f.Subjects = subjects([]string{last.Name(), o.pass.Graph.Name(landed)}, f.Subjects)
	t, ok := pointTerminal(o.pass.Harness, "live-when-on")
	_, tells := el.(*wiring.Sense)
	switch {
	case !ok || !tells: // a load does not belong behind a pre-charge resistor
	case o.pass.Graph.SameCopper(t.Node, landed):
		f.Advice = fmt.Sprintf("%s is called live-when-on here, and is live with the key off: correct the point, then move %s there.", t.Ref(), last.Name())
	default:
		f.Advice = fmt.Sprintf("Move %s from %s to this platform's switched point, %s.", last.Name(), o.pass.Graph.Name(landed), t.Ref())
	}
}

// tap is the wire by which a way leaves the last thing on it that is more than an inline
// fuse, and the node that it leaves; nil if the way has no wire.
func tap(h *wiring.Harness, way path.Path) (*wiring.Wire, wiring.NodeID) {
	var wire *wiring.Wire
	at := way.Begin
	for i := len(way.Steps) - 1; i >= 0; i-- {
		s := way.Steps[i]
		if s.Edge.Wire == nil {
			continue
		}
		wire, at = s.Edge.Wire, s.From
		if !inlineFuse(h.Nodes[s.From].Part) {
			break
		}
	}
	return wire, at
}

func inlineFuse(p *wiring.Part) bool {
	if p == nil || len(p.Elements) != 1 {
		return false
	}
	_, ok := p.Elements[0].(*wiring.Fuse)
	return ok
}
