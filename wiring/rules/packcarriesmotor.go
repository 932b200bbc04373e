package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func packCarriesMotor() *rule.Rule {
	return &rule.Rule{
		ID:    "pack-carries-motor",
		Title: "pack, main fuse and main contact stand what the controller takes, for long and for its peak time",
		Level: diag.Warning,
		Why: "Lead-acid batteries give 500 A when asked; a lithium pack opens at its limit, and on a hill the cart loses drive, lights and brake release at once. A controller that takes " +
			"220 A for 30 s wants a pack that gives them for as long, a fuse that does not open in that time, and a contact rated for them.",
		Do: "Take a pack with a higher limit, or set the controller's current limit below the pack's. Fit the main fuse above the peak and below what the cable stands.",
		Source: "Common practice, no published source. Battery current is taken as no more than motor current: the controller is a step-down converter. Time gates of fuses: " +
			"UL 248-15, from memory.",
		Wrong: `parts:
  G1: {discharge: 100 A, peak: 150 A for 10 s, trips: 180 A}
`,
		Right: `parts:
  G1: {discharge: 150 A, peak: 300 A for 60 s, trips: 350 A}
`,
		Run: runPackCarriesMotor,
	}
}

func runPackCarriesMotor(p *rule.Pass) {
	for _, m := range motorPeaks(p) {
		steady, at := motorSteady(p, m)
		if at == nil {
			continue // the cart does not move, which other rules tell
		}
		for _, s := range p.Supplies() {
			if source, ok := s.Element.(*wiring.Source); ok && at.Holds(source) && carriesIt(at.ElementAmps(source), m.taken(at)) {
				packAgainst(p, source, m, steady)
			}
		}
		for _, part := range p.Harness.Parts {
			for _, el := range part.Elements {
				if el := inLine(el); el != nil && carriesIt(at.ElementAmps(el), m.taken(at)) {
					againstLine(p, el, m, steady)
				}
			}
		}
	}
}

// motorSteady is the most that a motor takes for long, at the charge at which it takes most.
func motorSteady(p *rule.Pass, m motorPeak) (steady carried, at *settle.Point) {
	p.SweepSteady(func(s *wiring.State, c rule.Charge, point *settle.Point) {
		if taken := m.taken(point); s.Moves() > 0 && float64(taken) > rounded*float64(steady.amps) {
			steady.note(taken, s, c)
			at = point
		}
	})
	return steady, at
}

// carriesIt reports whether a current is that of the motor, give or take what else flows.
func carriesIt(amps, taken quantity.Ampere) bool {
	return taken > 0 && (float64(amps) >= 0.8*float64(taken) || float64(-amps) >= 0.8*float64(taken))
}

// inLine keeps what opens the main line: fuses and contacts.
func inLine(el wiring.Element) wiring.Element {
	switch el.(type) {
	case *wiring.Fuse, *wiring.Contact:
		return el
	}
	return nil
}

// shortfall is one limit of a pack that the motor goes beyond, and the rating that sets it.
func shortfall(s *wiring.Source, m motorPeak, steady carried) (says, rating string) {
	switch {
	case s.Trips > 0 && m.amps > s.Trips:
		return fmt.Sprintf("opens above %v", s.Trips), "trips"
	case s.Peak.Amps > 0 && m.amps > s.Peak.Amps:
		return fmt.Sprintf("gives %v at most", s.Peak.Amps), "peak"
	case s.Peak.For > 0 && m.amps > s.Discharge && m.lasts > s.Peak.For:
		return fmt.Sprintf("gives more than %v for %v only", s.Discharge, s.Peak.For), "peak"
	case s.Discharge > 0 && steady.amps > s.Discharge:
		return fmt.Sprintf("gives %v for long", s.Discharge), "discharge"
	}
	return "", ""
}

func packAgainst(p *rule.Pass, s *wiring.Source, m motorPeak, steady carried) {
	if s.Discharge <= 0 && s.Peak.Amps <= 0 && s.Trips <= 0 {
		if s.Chemistry != leadAcid {
			p.NotChecked(s.Part.Designation, "it states no limit of current", s.Part.At)
		}
		return
	}
	short, rating := shortfall(s, m, steady)
	if short == "" {
		return
	}
	who := asking(m)
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s takes up to %v for %v, and %s %s", who, m.amps, m.lasts, titled(s.Part), short),
		Detail:   fmt.Sprintf("For long it takes %s, most %s. What the pack's electronics do then takes drive, lights and brake release with it.", tenth(steady.amps), steady.where),
		Advice:   fmt.Sprintf("Take a pack with a higher limit, or set the current limit of %s below it.", who),
		At:       s.Part.Span(rating),
		Related:  defined(m.motor.Designation, m.motor.At),
		Subjects: subjects([]string{s.Part.Designation, m.motor.Designation, who}),
		States:   []string{steady.state},
	})
}

// leadAcid is the chemistry that gives whatever is asked of it.
const leadAcid = "lead-acid"

// asking is the part that decides how much is taken.
func asking(m motorPeak) string {
	if m.controller != nil {
		return m.controller.Designation
	}
	return m.motor.Designation
}

// againstLine judges a fuse or contact in the main line.
func againstLine(p *rule.Pass, el wiring.Element, m motorPeak, steady carried) {
	text, advice := "", ""
	switch el := el.(type) {
	case *wiring.Fuse:
		o := p.Figures().FuseOpening(el, m.amps)
		if o.Class != figure.OpeningUnknown && o.Opens > 0 && o.Opens <= m.lasts {
			text = fmt.Sprintf("%s of %v %v at %v, which %s takes for %v", fuseName(el), el.Rating, o.Class, m.amps, asking(m), m.lasts)
			advice = "Fit a larger fuse that the cable still allows, or lower the controller's current limit."
		}
	case *wiring.Contact:
		if el.Rated.Amps > 0 && (steady.amps > el.Rated.Amps || float64(m.amps) > contactPeak*float64(el.Rated.Amps)) {
			text = fmt.Sprintf("the contact of %s is rated %v, and %s takes %s for long and %v for %v", titled(el.Part), el.Rated.Amps, asking(m),
				tenth(steady.amps), m.amps, m.lasts)
			advice = "Fit a contactor of a higher rating."
		}
	}
	if text == "" {
		return
	}
	part := el.Base().Part
	p.Report(diag.Finding{Message: text, Detail: fmt.Sprintf("It lies in the main line of %s; for long it carries most %s.", m.motor.Designation, steady.where), Advice: advice,
		At: lineSpan(el), Related: defined(part.Designation, part.At), Subjects: subjects([]string{part.Designation, el.Base().Ref(), m.motor.Designation}), States: []string{steady.state}})
}

// lineSpan is where the rating of a fuse or contact was written.
func lineSpan(el wiring.Element) diag.Span {
	if f, ok := el.(*wiring.Fuse); ok {
		return fuseSpan(f)
	}
	return el.Base().Part.Span("contact")
}

// contactPeak is how many times its rating a main contact carries for a minute. Common
// practice, no published source.
const contactPeak = 2
