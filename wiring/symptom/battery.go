package symptom

import (
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func doesNotCharge() *Symptom {
	return &Symptom{
		ID: "does-not-charge", Severity: Loss, Says: "it does not charge",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				return pluggedIn(now.State) && was.Charging > 0.1 && now.Charging < was.Charging/2
			})
		},
	}
}

// week is how long a cart may be left without a second thought.
const week = 7 * 24

func flatSoon() *Symptom {
	return &Symptom{
		ID: "flat-soon", Severity: Stop, Says: "it was flat after a week",
		Find: func(v *View) []Complaint {
			capacity := v.capacity()
			if capacity == 0 {
				return nil
			}
			return v.whole(func(was, now *fault.Seen) bool {
				return atRest(now.State) && hours(capacity, now.Pack) < week && hours(capacity, was.Pack) >= week
			})
		},
	}
}

// hours is how long four fifths of a capacity last.
func hours(capacity quantity.AmpereHour, amps quantity.Ampere) float64 {
	if amps <= 0 {
		return math.Inf(1)
	}
	return 0.8 * float64(capacity) / float64(amps)
}

// atRest reports whether a state is one in which a cart is left.
func atRest(s *wiring.State) bool { return slices.Contains(meter.OffStates(), s.Name) }

func (v *View) capacity() quantity.AmpereHour {
	for _, p := range v.Cart.Harness.Parts {
		for _, e := range p.Elements {
			if s, ok := e.(*wiring.Source); ok && s.Capacity > 0 {
				return s.Capacity
			}
		}
	}
	return 0
}
