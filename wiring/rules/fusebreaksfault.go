package rules

import (
	"errors"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fuseBreaksFault() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-breaks-fault",
		Title: "each fuse can interrupt the fault current at its place, or a current-limiting one in series backs it up",
		Level: diag.Error,
		Why: "A pack of 58.4 V behind 10 mohm drives 5.8 kA into a short at its posts. A strip fuse that breaks 2 kA melts in that fault, draws an arc, and bursts; the fault " +
			"flows on through plasma. A few feet of 16 AWG take the same fault down to some hundred amperes, so the place counts as much as the fuse.",
		Do: "Fit a class T (20 kA) or 10 x 38 mm gPV fuse (about 30 kA) nearest to the pack; behind a class T fuse of the main line, smaller ones are backed up.",
		Source: "Interrupting ratings: scope texts of ISO 8820, UL 248-15 and IEC 60269-6; fault current by Ohm's law over pack and path, the pack's electronics ignored; a pack " +
			"whose resistance nobody states is taken as 10 mohm.",
		Wrong: `parts:
  F1: {kind: fuse-sf51, replaces: fuse-class-t, rating: 200 A}   # 70 V, breaks 2 kA
`,
		Right: `parts:
  F1: {rating: 200 A}                                            # stays a class T: 125 V, 20 kA
`,
		Run: runFuseBreaksFault,
	}
}

func runFuseBreaksFault(p *rule.Pass) {
	s := mostClosed(p.Harness)
	if s == nil || len(fittedFuses(p.Harness)) == 0 {
		return
	}
	faults, err := p.Figures().FuseFaults(p.Context(), s, 0)
	var unsettled *figure.Unsettled
	if errors.As(err, &unsettled) {
		p.NotChecked("fault currents", err.Error(), s.At)
	}
	for _, f := range faults {
		judgeFault(p, f)
	}
}

// mostClosed is the state in which most hand switches are away from rest while no plug is
// in: there the most fuses can see a fault. nil without states.
func mostClosed(h *wiring.Harness) *wiring.State {
	var found *wiring.State
	for _, s := range h.States {
		if pluggedIn(s) {
			continue
		}
		if found == nil || len(s.Set) > len(found.Set) {
			found = s
		}
	}
	return found
}

func pluggedIn(s *wiring.State) bool {
	for c, position := range s.Set {
		if c.Name == "plug" && position != c.Positions[0] {
			return true
		}
	}
	return false
}

func judgeFault(p *rule.Pass, f figure.FuseFault) {
	breaks, basis := breaking(p, f.Fuse, f.Short.Volts)
	switch {
	case f.Through <= 0 || p.Blamed(f.Fuse.Ref()): // a fuse of the wrong voltage goes anyway
	case breaks <= 0:
		p.NotChecked(fuseName(f.Fuse), "nobody says which current it can interrupt", fuseSpan(f.Fuse))
	case float64(f.Through) > rounded*float64(breaks):
		reportFault(p, f, breaks, basis)
	}
}

// breaking is the interrupting rating of a fuse: its own, else that of its class.
func breaking(p *rule.Pass, f *wiring.Fuse, at quantity.Volt) (quantity.Ampere, string) {
	if f.Breaks > 0 {
		return f.Breaks, "its own rating"
	}
	amps, _, ok := p.Handbook.Breaking(f.Style, at)
	if !ok {
		return 0, ""
	}
	return amps, "the rating of its class"
}

func reportFault(p *rule.Pass, f figure.FuseFault, breaks quantity.Ampere, basis string) {
	part := f.Fuse.Part
	finding := diag.Finding{
		Message: fmt.Sprintf("%s can interrupt %v, and a short right behind it draws %v", fuseName(f.Fuse), breaks, f.Through),
		Detail: fmt.Sprintf("%s is %s; the fault is %s behind %.3g ohm, full, to pack negative at %s.", breaks, basis, volts(f.Short.Volts), float64(f.Short.Ohms),
			p.Graph.Name(f.Short.At)),
		Advice:   "Fit a fuse that breaks the fault, class T or 10 x 38 mm, or put a class T fuse in front of it.",
		At:       fuseSpan(f.Fuse),
		Related:  defined(part.Designation, part.At),
		Subjects: subjects([]string{part.Designation, f.Fuse.Ref()}, deliverers(f)),
	}
	if by := backing(p, f); by != nil {
		finding.Level = diag.Note
		finding.Detail += fmt.Sprintf(" %s in series limits and breaks it.", fuseName(by))
		finding.Advice = fmt.Sprintf("Keep %s in place.", fuseName(by))
	} else if unstatedOhms(f) {
		finding.Level = diag.Warning
		finding.Detail += " The pack's resistance is not stated; 10 mohm is assumed."
	}
	p.Report(finding)
}

// backing is a current-limiting fuse in series that breaks the fault; nil if there is none.
func backing(p *rule.Pass, f figure.FuseFault) *wiring.Fuse {
	for _, by := range f.Behind {
		breaks, _ := breaking(p, by, f.Short.Volts)
		if (by.Style == "class T" || by.Style == "10x38") && breaks >= f.Through {
			return by
		}
	}
	return nil
}

func deliverers(f figure.FuseFault) []string {
	var names []string
	for _, d := range f.Short.From {
		names = append(names, d.Source.Part.Designation)
	}
	return names
}

func unstatedOhms(f figure.FuseFault) bool {
	for _, d := range f.Short.From {
		if d.Source.Ohms <= 0 {
			return true
		}
	}
	return false
}
