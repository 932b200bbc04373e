package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func precharge() *rule.Rule {
	return &rule.Rule{
		ID:    "precharge",
		Title: "capacitors behind the main contact are charged through a resistor before it closes, and the resistor stands it",
		Level: diag.Warning,
		Why: "4.7 mF without pre-charge take 3.1 kA at 52.8 V through the closing contact: it pits a little each time and welds some day, with the key off and the motor fed. " +
			"A resistor of 470 ohm brings them to 95 % in 6.6 s. If the controller is shorted the same resistor takes 58.4 V for ever, 7.3 W: one of 5 W glows.",
		Do: "Lead the pre-charge across the last contact that closes before the capacitors, through 250 to 1000 ohm that stand the pack's full voltage for ever; " +
			"from the key with a diode, so that the controller side cannot feed the key circuit.",
		Source: "R C charging law; resistors of 250 ohm (36 V) to 1000 ohm (72 V), 10 W, as controller makers ask for. Under 1 mF, as in old series controllers, nothing is asked: common practice, no published source.",
		Wrong: `parts:
  R1: {heat: 5 W}           # 7.3 W if the controller is shorted
`,
		Right: `parts:
  R1: {heat: 10 W}
`,
		Run: runPrecharge,
	}
}

// smallCapacity is what a contact closes on without harm. Common practice, no published
// source.
const smallCapacity = quantity.Farad(1e-3)

func runPrecharge(p *rule.Pass) {
	all, err := p.Figures().Precharges(p.Context())
	if err != nil && p.Context().Err() == nil {
		p.NotChecked("pre-charge", err.Error(), p.Harness.Identity.At)
	}
	for _, c := range all {
		if c.Capacitor.Farads >= smallCapacity && sourced(c) {
			judgePrecharge(p, c)
		}
	}
}

// sourced reports whether the capacitor comes to the voltage of a battery.
func sourced(c figure.Precharge) bool {
	return c.Ending != figure.Undecided && max(c.Reaches, c.Final, c.High) > 0
}

// judgePrecharge tells how a capacitor is charged. A resistor inside the same device is its
// maker's affair, who times it out.
func judgePrecharge(p *rule.Pass, c figure.Precharge) {
	part := c.Capacitor.Part
	f := diag.Finding{At: part.At, Subjects: subjects([]string{part.Designation}, elementParts(c.Through)), States: []string{c.State.Name}}
	if c.None {
		f.Message = fmt.Sprintf("%s has %v and no pre-charge", titled(part), c.Capacitor.Farads)
		f.Detail = fmt.Sprintf("In the state %s the empty capacitors take %v at once.", c.State.Name, c.Most())
		f.Advice = "Lay a resistor of 250 to 1000 ohm across the last contact that closes before it."
		if w := mainContactWire(p, c); w != nil {
			f.Subjects = append(f.Subjects, w.Name())
			f.At, f.Related = landing(w, c.Capacitor.A), defined(part.Designation, part.At)
		}
		p.Report(f)
		return
	}
	for _, h := range c.Heats {
		if h.Resistor.Part != part && h.Rated > 0 && float64(h.Fault) > rounded*float64(h.Rated) {
			reportHeat(p, c, h)
		}
	}
	f.Level = diag.Note
	f.Message = fmt.Sprintf("%s is pre-charged by way of %s: 95 %% of %s after %s", part.Designation, list(elementParts(resistorsOf(c))), volts(c.Reaches), seconds(c.To95))
	f.Detail = fmt.Sprintf("%v, time constant %s, first current %v.%s%s", c.Capacitor.Farads, seconds(c.Tau), c.First, heatWords(c), closingWords(c))
	f.Advice = "Nothing need be done; what else is hung on this point slows it."
	p.Report(f)
}

// resistorsOf keeps the resistors of the way; the part itself where they are inside it.
func resistorsOf(c figure.Precharge) []wiring.Element {
	var rs []wiring.Element
	for _, h := range c.Heats {
		rs = append(rs, h.Resistor)
	}
	if len(rs) == 0 {
		rs = append(rs, c.Capacitor)
	}
	return rs
}

func elementParts(els []wiring.Element) []string {
	var names []string
	for _, el := range els {
		names = append(names, el.Base().Part.Designation)
	}
	return once(names)
}

func heatWords(c figure.Precharge) string {
	text := ""
	for _, h := range c.Heats {
		text += fmt.Sprintf(" %s takes %v at first and %v in all", h.Resistor.Part.Designation, h.First, h.Energy)
		if h.Fault > 0 {
			text += fmt.Sprintf(", %.1f W for ever if the capacitors are shorted", float64(h.Fault))
		}
		text += "."
	}
	return text
}

func closingWords(c figure.Precharge) string {
	if c.Closes == nil {
		return ""
	}
	return fmt.Sprintf(" %s closes after %s at %s, with %v through it.", c.Closes.Contact.Base().Part.Designation, seconds(c.Closes.After), volts(c.Closes.At), c.Closes.Step)
}

func reportHeat(p *rule.Pass, c figure.Precharge, h figure.Heat) {
	part := h.Resistor.Part
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s may get rid of %v, and takes %.1f W if the capacitors of %s are shorted", titled(part), h.Rated, float64(h.Fault), c.Capacitor.Part.Designation),
		Detail:   fmt.Sprintf("Full pack voltage stands across %v then, for ever.", h.Resistor.Ohms),
		Advice:   "Take one that stands it, on metal and away from wires.",
		At:       part.Span("heat"),
		Related:  defined(part.Designation, part.At),
		Subjects: []string{part.Designation, h.Resistor.Ref(), c.Capacitor.Part.Designation},
	})
}

// mainContactWire is the wire on the capacitors that the latest layer laid.
func mainContactWire(p *rule.Pass, c figure.Precharge) *wiring.Wire {
	var found *wiring.Wire
	for _, e := range p.Graph.At(c.Capacitor.A) {
		if e.Wire != nil && (found == nil || latest(p.Harness, e.Wire) > latest(p.Harness, found)) {
			found = e.Wire
		}
	}
	return found
}

// seconds prints a time to two digits.
func seconds(s quantity.Second) string {
	if s < 0.1 {
		return s.String()
	}
	digits := 1
	if s >= 10 {
		digits = 0
	}
	return fmt.Sprintf("%.*f s", digits, math.Round(float64(s)*10)/10)
}
