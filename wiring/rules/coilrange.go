package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func coilRange() *rule.Rule {
	return &rule.Rule{
		ID:    "coil-range",
		Title: "each coil pulls in hot and at the pack's floor, and stands the full pack for long",
		Level: diag.Warning,
		Why: "A winding at 85 C has 1.26 times its resistance when cold, and needs 1.26 times the voltage to pull in: a coil that closes from 30 V in the " +
			"morning asks for 37.7 V after an hour of driving, and the floor of a 16S pack is 40 V. At full charge a 48 V coil sees 58.4 V, 122 %, " +
			"and 1.5 times its heat, which it stands; a 36 V coil there sees 162 % and 2.6 times its heat, and burns.",
		Do: "Take a contactor with the coil of the pack's voltage, or one with an economiser; a coil of the old voltage through a resistor is a " +
			"heater that drops out first.",
		Source: "Copper: IEC 28, +0.393 % a kelvin. 125 % as the lasting limit and 150 % as the end: common practice, no published source.",
		Wrong: `parts:
  K1: {coil: 36 V, coil-ohms: 85 ohm, pull-in: 22.5 V, drop-out: 7.5 V}   # on 16S
`,
		Right: `parts:
  K1: {coil: 48 V, coil-ohms: 150 ohm, pull-in: 30 V, drop-out: 10 V}
`,
		Run: runCoilRange,
	}
}

// hotCoil is the temperature of a winding after long work. Common practice, no published
// source.
const hotCoil = 85

// Shares of its nominal voltage that a coil stands for long, and at all.
const (
	coilLasting = 1.25
	coilMost    = 1.5
)

// worked is what a coil sees over all states in which it is energised.
type worked struct {
	coil        *wiring.Coil
	low, high   quantity.Volt
	lowState    string
	highState   string
	middle      quantity.Volt
	starved     bool   // at the floor of the state at hand: it gets voltage, and too little
	lostAtFloor string // the state in which it is energised half full, and not at the floor
}

func runCoilRange(p *rule.Pass) {
	var all []*worked
	for _, c := range elementsOf[*wiring.Coil](p.Harness) {
		all = append(all, &worked{coil: c})
	}
	p.Sweep(func(s *wiring.State, charge rule.Charge, at *settle.Point) {
		for _, w := range all {
			w.note(p, s, charge, at)
		}
	})
	for _, w := range all {
		w.judge(p)
	}
}

// note takes the points of a state in the order of charge, from the floor up.
func (w *worked) note(p *rule.Pass, s *wiring.State, charge rule.Charge, at *settle.Point) {
	v := quantity.Volt(math.Abs(float64(at.ElementVolts(w.coil))))
	holds := at.Holds(w.coil)
	switch charge {
	case rule.Floor:
		w.starved = !holds && float64(v) > starved*float64(w.coil.PullIn)
		if holds && (w.low == 0 || v < w.low) {
			w.low, w.lowState = v, s.Name
		}
	case rule.Middle:
		w.middle = v
		if holds && w.starved && w.lostAtFloor == "" {
			w.lostAtFloor = s.Name
		}
	case rule.Full:
		if v = atFullCharge(p, w.middle, v); holds && v > w.high {
			w.high, w.highState = v, s.Name
		}
	}
}

func (w *worked) judge(p *rule.Pass) {
	c := w.coil
	hot := c.PullIn * quantity.Volt(handbook.Linear(1, handbook.CopperAlpha, hotCoil))
	switch {
	case w.lostAtFloor != "":
		w.report(p, diag.Error, w.lostAtFloor, fmt.Sprintf("the coil of %s pulls in half full and no longer at the pack's floor", titled(c.Part)),
			fmt.Sprintf("It pulls in from %v.", c.PullIn))
	case w.low > 0 && w.low < hot:
		w.report(p, diag.Warning, w.lowState, fmt.Sprintf("the coil of %s gets %s at the pack's floor, and needs %s when it is hot", titled(c.Part), volts(w.low), volts(hot)),
			fmt.Sprintf("It pulls in from %v cold; at %d C its winding has 1.26 times the resistance.", c.PullIn, hotCoil))
	}
	switch {
	case w.high == 0:
	case c.Nominal == 0:
		p.NotChecked(c.Ref(), "its nominal voltage is not stated, so nobody can say whether it stands the full pack", c.Part.At)
	case c.Nominal <= c.PullIn:
		p.NotChecked(c.Ref(), fmt.Sprintf("it is named for %v and pulls in from %v: one of the two is wrong", c.Nominal, c.PullIn), c.Part.At)
	case w.high > coilLasting*c.Nominal:
		level := diag.Warning
		if w.high > coilMost*c.Nominal {
			level = diag.Error
		}
		share := float64(w.high / c.Nominal)
		w.report(p, level, w.highState, fmt.Sprintf("the coil of %s, made for %v, sees %s at full charge: %.0f %%", titled(c.Part), c.Nominal, volts(w.high), 100*share),
			fmt.Sprintf("It makes %.1f times its heat; 125 %% is the most for long, 150 %% the end.", share*share))
	}
}

func (w *worked) report(p *rule.Pass, level diag.Level, state, message, detail string) {
	part := w.coil.Part
	at := part.At
	for _, key := range []string{"coil", "pull-in", "kind"} {
		if span, ok := part.Where[key]; ok {
			at = span
			break
		}
	}
	p.Report(diag.Finding{
		Level: level, Message: message, Detail: detail, At: at, Related: defined(part.Designation, part.At),
		Advice:   "Take a contactor whose coil is made for this pack's voltage.",
		Subjects: []string{part.Designation, w.coil.Ref()}, States: []string{state},
	})
}
