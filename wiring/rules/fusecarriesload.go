package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func fuseCarriesLoad() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-carries-load",
		Title: "what a fuse carries for long is at most 80 % of its rating, and switching on does not open it",
		Level: diag.Warning,
		Why: "A fuse at its rating runs hot and opens some day in summer, miles from the shop. The supply of a reducer that gives 25 A at 12.5 V takes 6.6 A from a pack at " +
			"52.8 V and 8.7 A at the floor, 40 V: the current rises as the pack falls. In a box of 50 C every fuse is worth a tenth less.",
		Do: "Fit the next larger rating that the wire still allows, or divide the load between two channels.",
		Source: "Common practice, no published source: 80 %, 72 % above 45 C, for what flows longer than ten minutes, at the floor of the pack. Time gates: ISO 8820-3 and " +
			"UL 248-15, from memory.",
		Wrong: `parts:
  A1: {fuses: {3: 3 A}}
  X5: {kind: usb-outlet, place: dash}       # 36 W: 2.9 A at 12.5 V
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 16 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 16 AWG, length: 2 ft}
`,
		Right: `parts:
  A1: {fuses: {3: 5 A}}
  X5: {kind: usb-outlet, place: dash}
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 16 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 16 AWG, length: 2 ft}
`,
		Run: runFuseCarriesLoad,
	}
}

func runFuseCarriesLoad(p *rule.Pass) {
	fuses := fittedFuses(p.Harness)
	loads := make([]carried, len(fuses))
	p.SweepSteady(func(s *wiring.State, c rule.Charge, at *settle.Point) {
		for i, f := range fuses {
			loads[i].note(at.ElementAmps(f), s, c)
		}
	})
	for i, f := range fuses {
		if f.Rating <= 0 {
			if !f.Auto {
				p.NotChecked(fuseName(f), "it has no rating", fuseSpan(f))
			}
			continue
		}
		if most := p.Handbook.LargestContinuous(f.Rating, placeAmbient(p.Harness, f.Part)); float64(loads[i].amps) > rounded*float64(most) {
			reportLoadedFuse(p, f, loads[i], most)
			continue
		}
		surge(p, f, loads[i].amps)
	}
}

// fittedFuses lists fuses and breakers, without empty channels.
func fittedFuses(h *wiring.Harness) []*wiring.Fuse {
	var all []*wiring.Fuse
	for _, part := range h.Parts {
		for _, el := range part.Elements {
			if f, ok := el.(*wiring.Fuse); ok && f.Fitted {
				all = append(all, f)
			}
		}
	}
	return all
}

func reportLoadedFuse(p *rule.Pass, f *wiring.Fuse, load carried, most quantity.Ampere) {
	part := f.Part
	advice := "Fit a larger one that its wire still allows, or divide the load."
	if series, ok := p.Handbook.FuseSeries(f.Style); ok {
		ambient := placeAmbient(p.Harness, part)
		for next, ok := series.AtLeast(load.amps); ok; next, ok = series.AtLeast(next * rounded) {
			if p.Handbook.LargestContinuous(next, ambient)*rounded >= load.amps {
				advice = fmt.Sprintf("Fit %v if its wire allows that, or divide the load.", next)
				break
			}
		}
	}
	p.Report(diag.Finding{
		Message: fmt.Sprintf("%s of %v carries %s for long, %.0f %% of its rating", fuseName(f), f.Rating, tenth(load.amps), 100*float64(load.amps)/float64(f.Rating)),
		Detail: fmt.Sprintf("%s at most, %.0f %% of the rating where it is %v; worst %s.", tenth(most), 100*float64(most)/float64(f.Rating),
			placeAmbient(p.Harness, part), load.where),
		Advice: advice, At: fuseSpan(f), Related: defined(part.Designation, part.At),
		Subjects: subjects([]string{part.Designation, f.Ref()}), States: []string{load.state},
	})
}

// surge notes a fuse that the switching on of what hangs behind it may open. An inrush dies
// away: its pulse is half of what its first value would make in its time.
func surge(p *rule.Pass, f *wiring.Fuse, steady quantity.Ampere) {
	amps, lasts := inrushBehind(p, f)
	if amps <= 0 {
		return
	}
	o := p.Figures().FuseOpening(f, amps)
	if o.Class == figure.OpeningUnknown || o.Class == figure.Holds || o.Holds >= lasts {
		return
	}
	pulse, stands := float64(amps*amps)*float64(lasts)/2, meltsFrom(p, f, o.Multiple)
	if pulse <= stands {
		return
	}
	p.Report(diag.Finding{
		Level:    diag.Note,
		Message:  fmt.Sprintf("switching on may open %s of %v", fuseName(f), f.Rating),
		Detail:   fmt.Sprintf("What hangs behind it takes %v for %v, and %s for long. That is a pulse of %.0f A2s; a fuse of this sort and size is sure to stand %.0f A2s.", amps, lasts, tenth(steady), pulse, stands),
		Advice:   "Divide the lamps between two channels or switches.",
		At:       fuseSpan(f),
		Related:  defined(f.Part.Designation, f.Part.At),
		Subjects: subjects([]string{f.Part.Designation, f.Ref()}),
	})
}

// meltsFrom is the pulse, as the square of current times seconds, that a fuse is sure to
// stand at a multiple of its rating: that of the nearest time gate below. What is shorter than
// the gates heats the element without loss, so that only this product counts.
func meltsFrom(p *rule.Pass, f *wiring.Fuse, multiple float64) float64 {
	for ; multiple >= 1; multiple -= 0.05 {
		if holds, ok := p.Handbook.FuseHolds(f.Style, multiple); ok && holds > 0 {
			amps := multiple * float64(f.Rating)
			return amps * amps * float64(holds)
		}
	}
	return 0
}

// inrushBehind adds up what the loads behind a fuse take when they are switched on together,
// and how long the longest lasts.
func inrushBehind(p *rule.Pass, f *wiring.Fuse) (amps quantity.Ampere, lasts quantity.Second) {
	reach := p.Graph.From(path.Through{Sorts: path.Conducting}.Until(p.Negative).Without(f), f.B)
	for _, c := range consumers(p.Graph) {
		l, ok := c.edge.Element.(*wiring.Load)
		if ok && l.Inrush.Amps > 0 && reach.Has(l.A) && !p.Negative(l.A) {
			amps += l.Inrush.Amps
			lasts = max(lasts, l.Inrush.For)
		}
	}
	return amps, lasts
}
