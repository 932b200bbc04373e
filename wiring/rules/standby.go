package rules

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// drained is the battery that gives most in an operating point, and what it gives; nil
// without a battery.
func drained(p *rule.Pass, at *settle.Point) (*wiring.Source, quantity.Ampere) {
	var worst *wiring.Source
	most := quantity.Ampere(0)
	for _, s := range p.Supplies() {
		source, ok := s.Element.(*wiring.Source)
		if !ok {
			continue
		}
		if amps := -at.ElementAmps(source); worst == nil || amps > most {
			worst, most = source, amps
		}
	}
	return worst, most
}

// reserve is the state of charge from which the days of a parked cart are counted.
const reserve = 0.8

// daysLeft is how long a battery lasts from 80 % to its floor; false if nobody can say. The
// current is followed as the battery falls, where that is the cart's main battery; of another
// one its current now counts.
func (o *off) daysLeft(battery *wiring.Source, amps quantity.Ampere) (float64, bool) {
	if battery == nil || amps <= 0 || battery.Capacity <= 0 {
		return 0, false
	}
	l, err := o.pass.Figures().Lasting(o.pass.Context(), o.at.State, reserve, 0)
	if err == nil && l.Pack == battery && len(l.StoppedBy) == 0 && !math.IsInf(float64(l.Lasts), 0) {
		return l.Days(), true
	}
	return float64(battery.Capacity) * reserve / float64(amps) / 24, true
}

// fewDays is how long a parked cart should last. Common practice, no published source.
const fewDays = 60

// standby lists what draws current with the key off, as a note; a warning where the cart
// may not stand for long, or the accessories draw more than the job's limit.
func (o *off) standby() {
	battery, total := drained(o.pass, o.at)
	if battery == nil || total < 1e-4 {
		return
	}
	part := battery.Part
	draws, beyondPack := o.draws(part)
	f := diag.Finding{
		Level:    diag.Note,
		Message:  fmt.Sprintf("with the key off %s gives %v", part.Designation, total),
		Detail:   fmt.Sprintf("Each part's share, at pack voltage: %s.", draws),
		Advice:   "Switch the pack off when the cart is put away for longer.",
		At:       part.At,
		Subjects: []string{part.Designation},
		States:   []string{keyOff},
	}
	days, known := o.daysLeft(battery, total)
	if known {
		f.Message += fmt.Sprintf(": from %v to the floor in %.0f days", quantity.Ratio(reserve), days)
	} else {
		o.pass.NotChecked(part.Designation, "it has no capacity, so nobody can say how long the cart may stand", part.At)
	}
	limit := o.pass.Harness.Limits.KeyOff
	if len(o.named) == 0 && (known && days < fewDays || beyondPack > limit) {
		f.Level = diag.Warning
		f.Detail += fmt.Sprintf(" Limits: %d days; %v beside the pack's own electronics.", fewDays, limit)
	}
	o.pass.Report(f)
}

// draws lists each part's share of the battery's current, by the power that it uses, the
// largest first; and sums up what is not inside the pack itself.
func (o *off) draws(pack *wiring.Part) (text string, beyondPack quantity.Ampere) {
	type draw struct {
		part *wiring.Part
		amps float64
	}
	var all []draw
	at := highest(o.pass)
	across := float64(o.at.Across(at.Plus, at.Bottom))
	for _, part := range o.pass.Harness.Parts {
		watts := 0.0
		for _, el := range part.Elements {
			if _, source := el.(*wiring.Source); !source {
				watts += math.Max(0, float64(o.at.Watts(el)))
			}
		}
		if amps := watts / across; across > 0 && amps >= 5e-5 {
			all = append(all, draw{part, amps})
			if part != pack && part.AlwaysOn == "" {
				beyondPack += quantity.Ampere(amps)
			}
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].amps > all[j].amps })
	words := make([]string, len(all))
	for i, d := range all {
		words[i] = fmt.Sprintf("%s %v", d.part.Designation, quantity.Ampere(d.amps))
		if d.part.AlwaysOn != "" {
			words[i] += " (always on: " + d.part.AlwaysOn + ")"
		}
	}
	return strings.Join(words, ", "), beyondPack
}
