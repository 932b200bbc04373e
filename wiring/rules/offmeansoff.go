package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/position"
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
		Wrong: `wires:
  W69: {to: K1.in}          # the enable lead on the battery side of the solenoid
`,
		Right: `wires:
  W69: {to: X13}            # on the key's output: pack voltage only while the key is on
`,
		Run:    runOffMeansOff,
		Proves: []*position.Property{position.OffMeansOff()},
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
	o := off{pass: p, at: at, when: "with the key off", named: map[*wiring.Part]bool{}}
	o.look()
	if left := allSwitchesOn(p.Harness, s); left != nil {
		if at := p.Point(left, rule.Middle); at != nil {
			parked := o.at
			o.at = at
			o.loads("can be left on with the key off", diag.Warning, func(l *wiring.Load) bool { return !parked.Holds(l) })
			o.at = parked
		}
	}
	o.elsewhere(s)
	o.anywhere()
	o.at, o.when = at, "with the key off"
	o.standby()
}

// look reports what is alive at the point.
func (o *off) look() {
	for _, part := range o.pass.Harness.Parts {
		for _, el := range part.Elements {
			if part.AlwaysOn == "" && !o.named[part] && o.at.Holds(el) {
				o.controls(part, el)
			}
		}
	}
	o.loads(o.when, diag.Error, func(l *wiring.Load) bool { return true })
}

// elsewhere looks at the other states in which the cart should be off: in tow, while it
// charges, and after a drive, when a contact that holds itself may have stayed in. What was
// told already is not told again.
func (o *off) elsewhere(keyOff *wiring.State) {
	for _, other := range []struct{ state, when string }{{"tow", "in tow"}, {"charging", "while the cart charges, its key off"}} {
		s := o.pass.Harness.State(other.state)
		if s == nil {
			continue
		}
		if at := o.pass.Point(s, rule.Middle); at != nil {
			o.at, o.when = at, other.when
			o.look()
		}
	}
	driving := o.pass.Harness.State("driving")
	if driving == nil {
		return
	}
	if at := o.pass.After(driving, keyOff, rule.Middle); at != nil {
		o.at, o.when = at, "after a drive, its key turned off"
		o.look()
	}
}

// anywhere reports what is alive in some other position of the switches with the key off.
func (o *off) anywhere() {
	for _, r := range o.pass.Proofs() {
		for _, x := range r.Counterexamples {
			part := x.Element.Base().Part
			if o.named[part] {
				continue
			}
			o.named[part] = true
			f := counterexample(o.pass, x)
			f.Level = diag.Warning
			f.Message = fmt.Sprintf("%s can be alive with the key off", titled(part))
			f.Advice = "Feed it from a point that the key switches, or declare always-on with the reason."
			o.pass.Report(f)
		}
	}
}

// off is the cart with its key off.
type off struct {
	pass  *rule.Pass
	at    *settle.Point
	when  string                // "with the key off"
	named map[*wiring.Part]bool // parts that were reported
}

// controls reports a converter that is told to run, and a coil that is energised.
func (o *off) controls(part *wiring.Part, el wiring.Element) {
	switch el := el.(type) {
	case *wiring.Converter:
		if sense := o.told(el.When); sense != nil {
			how := "always live"
			if pulledLow(sense) {
				how = "low " + o.when + ", which tells it to run"
			}
			o.report(alive{parts: []*wiring.Part{part}, element: sense, at: sense.At, level: diag.Error,
				message: fmt.Sprintf("the %s lead of %s is %s", sense.Name, titled(part), how)})
		}
	case *wiring.Coil:
		o.report(alive{parts: []*wiring.Part{part}, element: el, at: el.A, level: diag.Error,
			message: fmt.Sprintf("the coil of %s is energised %s", titled(part), o.when)})
	}
}

// told is the first sense of a condition that is true: what tells a converter to run. nil
// for a converter that runs by itself, such as a memory supply.
func (o *off) told(c *wiring.Condition) *wiring.Sense {
	if c == nil {
		return nil
	}
	if s, ok := c.Element.(*wiring.Sense); ok && !s.AC && o.at.Holds(s) {
		return s
	}
	for _, each := range c.Of {
		if s := o.told(each); s != nil {
			return s
		}
	}
	return nil
}

// loads reports the loads that are on, those on one wire of a supply together.
func (o *off) loads(how string, level diag.Level, counts func(*wiring.Load) bool) {
	var groups []alive
	for _, c := range consumers(o.pass.Graph) {
		l, ok := c.edge.Element.(*wiring.Load)
		if !ok || c.part.AlwaysOn != "" || o.named[c.part] || !o.at.Holds(l) || !counts(l) {
			continue
		}
		if o.amps(l) <= standing || o.fedByAlwaysOn(l) {
			continue
		}
		groups = o.group(groups, c, l)
	}
	for _, g := range groups {
		g.level = level
		g.message = fmt.Sprintf("%s %s", aliveNames(g.parts), how)
		if level == diag.Error {
			g.message = fmt.Sprintf("%s %s on %s", aliveNames(g.parts), isOrAre(g.parts), how)
		}
		o.report(g)
	}
}

func (o *off) amps(el wiring.Element) quantity.Ampere {
	return quantity.Ampere(math.Abs(float64(o.at.ElementAmps(el))))
}

// allSwitchesOn is a state with every accessory switch on that has one; nil if the cart
// has none.
func allSwitchesOn(h *wiring.Harness, s *wiring.State) *wiring.State {
	all := &wiring.State{Name: s.Name + ", every accessory switch on", SOC: s.SOC, At: s.At, Set: map[*wiring.Control]string{}}
	for c, position := range s.Set {
		all.Set[c] = position
	}
	for _, part := range h.Parts {
		for _, c := range part.Controls {
			if c.Name == "switch" && len(c.Positions) > 1 {
				all.Set[c] = c.Positions[1]
			}
		}
	}
	if len(all.Set) == len(s.Set) {
		return nil
	}
	return all
}
