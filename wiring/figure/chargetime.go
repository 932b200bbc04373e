package figure

import (
	"context"
	"fmt"
	"math"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// ChargeTime is how long a pack takes to charge: at constant current to the knee, and from
// there at the end-of-charge voltage with a current that tapers off.
//
// In the taper the current is taken to fall in proportion to what is missing, from the
// constant current at the knee to the end current at full, which makes it an exponential
// in time: t = Q / (I - Iend) × ln(i / Iend), Q the charge between knee and full, i the
// current with which the taper begins.
type ChargeTime struct {
	State    *wiring.State
	Pack     *wiring.Source
	From     quantity.Ratio
	Amps     quantity.Ampere     // into the pack at constant current, what the cart takes meanwhile deducted
	Missing  quantity.AmpereHour // to full, with what the pack does not give back
	Taper    Taper
	Constant quantity.Second // at constant current
	Tapering quantity.Second
	Limit    quantity.Ampere // most that the pack may be charged with; 0: not stated
	Assumes  []Assumption
}

// Total is the whole time.
func (t ChargeTime) Total() quantity.Second { return t.Constant + t.Tapering }

// Taper is how the charge of a chemistry ends.
type Taper struct {
	Chemistry string
	Knee      quantity.Ratio // state of charge at which the end-of-charge voltage is reached
	End       quantity.Ratio // current at which it counts as full, amperes an ampere-hour of capacity
	Return    quantity.Ratio // ampere-hours in for each one out
}

// tapers is from memory: LFP takes its full current almost to the end and counts as full at
// a twentieth of its capacity, lead-acid gasses from four fifths on, counts as full at a
// fiftieth and wants a seventh more than it gave.
var tapers = [...]Taper{
	{"LFP", 0.95, 0.05, 1},
	{"lead-acid", 0.80, 0.02, 1.15},
}

// TaperOf is how the charge of a chemistry ends; false if nobody here knows.
func TaperOf(chemistry string) (Taper, bool) {
	for _, t := range tapers {
		if strings.EqualFold(t.Chemistry, chemistry) {
			return t, true
		}
	}
	return Taper{}, false
}

// ChargeTime computes how long the pack takes from a state of charge to full in a state in
// which something charges it. The error is [Unknown] for what is not stated or if nothing
// charges it, [Unsettled], or that of ctx.
func (c *Cart) ChargeTime(ctx context.Context, s *wiring.State, from quantity.Ratio) (ChargeTime, error) {
	if err := isState(s); err != nil {
		return ChargeTime{}, err
	}
	if !(0 <= from && from <= 1) {
		return ChargeTime{}, &Unknown{What: s.Name, Why: fmt.Sprintf("%v is no state of charge", from)}
	}
	pack, err := c.packWithCapacity()
	if err != nil {
		return ChargeTime{}, err
	}
	taper, ok := TaperOf(pack.Chemistry)
	if !ok {
		return ChargeTime{}, &Unknown{What: pack.Part.Designation, Why: "no chemistry whose end of charge is known"}
	}
	p, err := c.point(ctx, s, max(from, emptied))
	if err != nil {
		return ChargeTime{}, err
	}
	amps := p.ElementAmps(pack)
	if amps < negligible {
		return ChargeTime{}, &Unknown{What: pack.Part.Designation, Why: fmt.Sprintf("nothing charges it in the state %q", s.Name)}
	}
	t := ChargeTime{State: s, Pack: pack, From: from, Amps: amps, Taper: taper, Limit: pack.Charge, Assumes: taperAssumptions(taper)}
	t.reckon()
	return t, nil
}

// reckon fills in charge and times.
func (t *ChargeTime) reckon() {
	capacity := t.Pack.Capacity * quantity.AmpereHour(t.Taper.Return)
	t.Missing = capacity * quantity.AmpereHour(1-t.From)
	end := quantity.Ampere(float64(t.Pack.Capacity) * float64(t.Taper.End))
	if t.Amps <= end { // never so much that it has to taper
		t.Constant = hours(t.Missing, t.Amps)
		return
	}
	knee := max(t.From, t.Taper.Knee)
	t.Constant = hours(capacity*quantity.AmpereHour(knee-t.From), t.Amps)
	whole := capacity * quantity.AmpereHour(1-t.Taper.Knee)
	left := float64(capacity) * float64(1-knee) / float64(whole)
	begins := end + (t.Amps-end)*quantity.Ampere(left)
	t.Tapering = hours(whole, t.Amps-end) * quantity.Second(math.Log(float64(begins/end)))
}

// hours is the time in which a current carries a charge.
func hours(charge quantity.AmpereHour, amps quantity.Ampere) quantity.Second {
	return quantity.Second(3600 * float64(charge) / float64(amps))
}

func taperAssumptions(t Taper) []Assumption {
	return []Assumption{
		{fmt.Sprintf("%s takes the full current to %v; from there the current falls to %v A an Ah of capacity, in proportion to what is missing", t.Chemistry, t.Knee, float64(t.End)), memory},
		{fmt.Sprintf("%.2f Ah are charged for each one taken", float64(t.Return)), memory},
		{"the charger gives its rated current, warm or cold, and the pack takes it", practice},
	}
}
