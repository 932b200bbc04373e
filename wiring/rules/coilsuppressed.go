package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func coilSuppressed() *rule.Rule {
	return &rule.Rule{
		ID:    "coil-suppressed",
		Title: "something takes up the current of each coil when it is switched off",
		Level: diag.Warning,
		Why: "A solenoid coil of 150 ohm carries 0.35 A; when its switch opens, that current goes on and drives its end to several hundred volts, into an arc at the key " +
			"switch and through the driver of a controller that stands 63 V. A diode of 3 A across the coil takes it up.",
		Do: "Lay a diode across the coil, its cathode (the band) on the coil's positive; where the contact must open fast, a TVS or a resistor of some five times the coil's. " +
			"A controller with a clamp of its own between driver and key input does it too, if the coil's positive is on that very point.",
		Source: "Common practice, no published source.",
		Wrong: `remove: [V1]
`,
		Right: `parts:
  V1: {kind: diode, replaces: diode, amps: 6 A}
`,
		Run: runCoilSuppressed,
	}
}

// damping is how many times the coil's resistance a resistor across it may be: the voltage
// rises to as many times that of the coil. Common practice, no published source.
const damping = 10

func runCoilSuppressed(p *rule.Pass) {
	for _, e := range p.Graph.Edges() {
		coil, ok := e.Element.(*wiring.Coil)
		if !ok || coil.Suppressed || !landedOn(p, coil.A) || !landedOn(p, coil.B) || suppressed(p, e, coil) {
			continue
		}
		part := coil.Part
		f := diag.Finding{
			Message:  fmt.Sprintf("nothing takes up the current of the coil of %s when it is switched off", titled(part)),
			Detail:   fmt.Sprintf("It is %v between %s and %s: no diode, resistor or clamp joins the two.%s", coil.Ohms, p.Graph.Name(coil.A), p.Graph.Name(coil.B), switchedBy(p, coil)),
			Advice:   fmt.Sprintf("Lay a diode from %s (anode) to %s (cathode, the band).", p.Graph.Name(coil.B), p.Graph.Name(coil.A)),
			At:       part.At,
			Subjects: subjects([]string{part.Designation, coil.Ref()}, wiresAt(p, coil.A), wiresAt(p, coil.B)),
		}
		p.Report(f)
	}
}

// suppressed reports whether a diode, either way round (a wrong one shorts the supply, which
// is told as that), or a resistor lies across a coil.
func suppressed(p *rule.Pass, coil *path.Edge, of *wiring.Coil) bool {
	same := p.Graph.SameCopper
	for _, e := range p.Graph.Edges() {
		across := same(e.A, coil.A) && same(e.B, coil.B) || same(e.A, coil.B) && same(e.B, coil.A)
		if !across || e == coil {
			continue
		}
		switch el := e.Element.(type) {
		case *wiring.Diode:
			return true
		case *wiring.Resistor:
			if el.Ohms <= damping*of.Ohms {
				return true
			}
		}
	}
	return false
}

// switchedBy says which driver switches a coil, and what it stands.
func switchedBy(p *rule.Pass, coil *wiring.Coil) string {
	for _, e := range p.Graph.Edges() {
		d, ok := e.Element.(*wiring.Driver)
		if !ok {
			continue
		}
		for _, end := range []wiring.NodeID{d.A, d.B} {
			if p.Negative(end) || !p.Graph.SameCopper(end, coil.A) && !p.Graph.SameCopper(end, coil.B) {
				continue
			}
			return fmt.Sprintf(" It is switched by %s%s.", d.Ref(), stands(d.Rated.Volts))
		}
	}
	return ""
}

func stands(v quantity.Volt) string {
	if v <= 0 {
		return ""
	}
	return fmt.Sprintf(", which stands %v", v)
}
