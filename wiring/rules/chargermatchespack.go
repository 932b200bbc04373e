package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func chargerMatchesPack() *rule.Rule {
	return &rule.Rule{
		ID:    "charger-matches-pack",
		Title: "each charger suits the chemistry, the voltage and the current of what it charges, and its cord and circuit carry it",
		Level: diag.Error,
		Why: "The lead-acid charger that came with the cart ends at 58.8 V or, in equalise mode, at 62 V and more: on a 16S pack of 58.4 V the protection opens at full current, every night, " +
			"and one day it does not. One that ends below 3.45 V a cell never fills the pack nor balances it. An 18 A charger takes 10 A from a 120 V outlet, for hours.",
		Do:     "Take the charger that the pack's maker names: constant current, then 3.60 to 3.65 V a cell, no equalise mode, no temperature compensation.",
		Source: "Cell voltages by public charts: 3.65 V an LFP cell at most, from 3.45 V it fills. Continuous load on an AC circuit 80 %: NEC 210.20(A), from memory. Cord ampacity: NEC table 400.5(A)(1).",
		Wrong: `parts:
  T1: {end: 58.8 V, profile: lead-acid}
`,
		Right: `parts:
  T1: {end: 58.4 V, profile: LFP}
`,
		Run: runChargerMatchesPack,
	}
}

func runChargerMatchesPack(p *rule.Pass) {
	for _, s := range p.Supplies() {
		charger, ok := s.Element.(*wiring.Charger)
		if !ok {
			continue
		}
		for _, battery := range p.Supplies() {
			if battery.Battery() && charges(p, s, battery) {
				(&charging{pass: p, charger: charger, battery: battery}).judge()
				break
			}
		}
		mainsCarry(p, charger)
	}
}

// charges reports whether a charger's positive reaches the top of a string.
func charges(p *rule.Pass, charger, battery *path.Supply) bool {
	for _, s := range p.Supplies() {
		if s.Battery() && under(s, battery) {
			return false // another one stands on it
		}
	}
	return p.Graph.From(carrying().Until(p.Negative), charger.Plus).Has(battery.Plus)
}

func under(s, other *path.Supply) bool {
	for _, u := range s.Under {
		if u == other {
			return true
		}
	}
	return false
}

// charging is one charger and the string of batteries that it charges.
type charging struct {
	pass    *rule.Pass
	charger *wiring.Charger
	battery *path.Supply
}

func (c *charging) judge() {
	source := c.battery.Element.(*wiring.Source)
	if c.charger.Profile != "" && source.Chemistry != "" && wiring.Fold(c.charger.Profile) != wiring.Fold(source.Chemistry) {
		c.report(diag.Error, "profile", fmt.Sprintf("%s charges %s and %s is %s", titled(c.charger.Part), c.charger.Profile, source.Part.Designation, source.Chemistry),
			"Its voltage, its equalise mode and its temperature compensation are those of another chemistry.", "Take a charger for this chemistry.")
		return
	}
	c.voltage(source)
	c.current(source)
}

// cells counts the cells of the string.
func (c *charging) cells() int {
	n := c.battery.Element.(*wiring.Source).Cells
	for _, u := range c.battery.Under {
		n += u.Element.(*wiring.Source).Cells
	}
	return n
}

// fills is the voltage of an LFP cell from which a charger fills and balances it: public
// charts.
const fills = quantity.Volt(3.45)

func (c *charging) voltage(source *wiring.Source) {
	most := c.battery.Top().Full
	if source.High > 0 && len(c.battery.Under) == 0 {
		most = min(most, source.High)
	}
	switch end := c.charger.End; {
	case end <= 0 || most <= 0:
		c.pass.NotChecked(c.charger.Part.Designation, "its voltage at the end of charge, or that of the batteries, is not stated", c.charger.Part.At)
	case float64(end) > rounded*float64(most):
		c.report(diag.Error, "end", fmt.Sprintf("%s charges up to %v and %s stands %s", titled(c.charger.Part), end, source.Part.Designation, volts(most)),
			fmt.Sprintf("%d cells of %s.", c.cells(), source.Chemistry), "Set it to the pack's voltage, or take another.")
	case source.Chemistry == "LFP" && end < quantity.Volt(float64(fills)*float64(c.cells())):
		c.report(diag.Note, "end", fmt.Sprintf("%s charges up to %v, and does not fill %s", titled(c.charger.Part), end, source.Part.Designation),
			fmt.Sprintf("%d cells at %v want %s; below that they are not balanced either.", c.cells(), fills, volts(quantity.Volt(float64(fills)*float64(c.cells())))),
			"Set it to 3.60 V a cell.")
	}
}

// current compares with what the pack takes, at the port that the charger lands on.
func (c *charging) current(source *wiring.Source) {
	if source.Charge > 0 && c.charger.Amps > source.Charge {
		c.report(diag.Error, "amps", fmt.Sprintf("%s gives %v and %s may be charged with %v", titled(c.charger.Part), c.charger.Amps, source.Part.Designation, source.Charge),
			"Its protection opens at once, or its cells age fast.", "Set it lower, or take a smaller one.")
	}
	if way, ok := c.pass.Graph.From(carrying().Until(c.pass.Negative), c.charger.A).To(c.battery.Plus); ok {
		at := c.pass.Harness.Nodes[way.End].Terminal
		if at != nil && at.Rated > 0 && c.charger.Amps > at.Rated {
			c.report(diag.Error, "amps", fmt.Sprintf("%s gives %v into %s, which may carry %v", titled(c.charger.Part), c.charger.Amps, at.Ref(), at.Rated),
				"The port is smaller than the posts.", "Land it on the posts, behind a fuse of its own.")
		}
	}
}

func (c *charging) report(level diag.Level, key, message, detail, advice string) {
	part := c.charger.Part
	c.pass.Report(diag.Finding{Level: level, Message: message, Detail: detail, Advice: advice, At: part.Span(key), Related: defined(part.Designation, part.At),
		Subjects: subjects([]string{part.Designation, c.battery.Element.Base().Part.Designation})})
}

// acShare is what may flow for hours of what a circuit is made for. NEC 210.20(A), from
// memory.
const acShare = 0.8

// mainsCarry compares what a charger takes from the mains with circuit and cord.
func mainsCarry(p *rule.Pass, charger *wiring.Charger) {
	if charger.L == wiring.NoNode || charger.Takes <= 0 {
		return
	}
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			m, ok := el.(*wiring.Mains)
			if !ok || m.Volts <= 0 {
				continue
			}
			way, reaches := p.Graph.From(path.Through{Sorts: path.Conductors}, m.L).To(charger.L)
			if !reaches {
				continue
			}
			amps := handbook.InputCurrent(charger.Takes, m.Volts)
			circuit(p, charger, m, amps)
			for _, w := range way.Wires() {
				acCord(p, charger, w, amps)
			}
		}
	}
}

func circuit(p *rule.Pass, charger *wiring.Charger, m *wiring.Mains, amps quantity.Ampere) {
	if m.Amps <= 0 || float64(amps) <= acShare*rounded*float64(m.Amps) {
		return
	}
	p.Report(diag.Finding{
		Level:    diag.Warning,
		Message:  fmt.Sprintf("%s takes %s from a circuit of %v", titled(charger.Part), tenth(amps), m.Amps),
		Detail:   fmt.Sprintf("%v at %v; for hours it should be %s at most, 80 %%.", charger.Takes, m.Volts, tenth(quantity.Ampere(acShare*float64(m.Amps)))),
		Advice:   "Take a smaller charger, or an outlet on a larger circuit.",
		At:       charger.Part.Span("takes"),
		Related:  defined(m.Part.Designation, m.Part.At),
		Subjects: []string{charger.Part.Designation, m.Part.Designation},
	})
}

func acCord(p *rule.Pass, charger *wiring.Charger, w *wiring.Wire, amps quantity.Ampere) {
	for _, piece := range w.Pieces {
		if !piece.Size.Known() {
			p.NotChecked(w.Name(), "it has no size, so nobody can say whether it carries the charger", w.Span("size"))
			continue
		}
		may, err := p.Handbook.FlexibleCord(piece.Size, 2)
		if err != nil {
			p.NotChecked(w.Name(), err.Error(), pieceSpan(w, piece))
			continue
		}
		if amps > may && !math.IsInf(float64(amps), 0) {
			p.Report(diag.Finding{
				Level:    diag.Warning,
				Message:  fmt.Sprintf("the cord %s of %v may carry %v, and %s takes %s", w.Name(), piece.Size, may, titled(charger.Part), tenth(amps)),
				Detail:   "A cord with two loaded conductors, NEC table 400.5(A)(1).",
				Advice:   "Take a thicker cord.",
				At:       w.Span("size"),
				Subjects: []string{w.Name(), charger.Part.Designation},
			})
		}
	}
}
