package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// carried is the largest current that something carries for long, and when.
type carried struct {
	amps  quantity.Ampere
	state string
	where string // "at the floor"
}

// note keeps the larger current; of states that are alike in it the first.
func (c *carried) note(amps quantity.Ampere, s *wiring.State, charge rule.Charge) {
	if amps = quantity.Ampere(math.Abs(float64(amps))); float64(amps) > rounded*float64(c.amps) {
		*c = carried{amps, s.Name, charge.String()}
	}
}

// placeAmbient is the temperature where a part is, as far as the job says.
func placeAmbient(h *wiring.Harness, part *wiring.Part) quantity.Celsius {
	if place := h.Place(part.Place); place != nil && place.Ambient != 0 {
		return place.Ambient
	}
	return h.Assume.Ambient
}

// rounded is what rounding of ratings and currents may hide: one part in a thousand.
const rounded = 1.001

// tenth prints a current to a tenth of an ampere, or as it is where that says nothing.
func tenth(a quantity.Ampere) string {
	if a < 1 {
		return a.String()
	}
	return fmt.Sprintf("%.1f A", float64(a))
}
