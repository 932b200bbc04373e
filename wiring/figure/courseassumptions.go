package figure

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// courseAssumptions lists what a transient takes for granted.
func (c *Cart) courseAssumptions(k course) []Assumption {
	all := []Assumption{
		{"everything but the capacitor is quicker than it: contacts and electronics act at once", circuits},
		{fmt.Sprintf("in a stage with a time constant under %v nothing acts, for no contact moves in so little time", quantity.Second(quickTau)), memory},
		{"fuses and the pack's protection stay closed", practice},
		{"the capacitor holds what it states, and other capacitors are left out", ownChoice},
		conductors(c.harness),
	}
	if k.full {
		return append(all, Assumption{"sources stand at their end-of-charge voltage", "the cell voltages of the handbook"})
	}
	if k.charge == 0 {
		k.charge = k.state.SOC
	}
	if k.charge == 0 {
		k.charge = c.harness.Assume.SOC
	}
	return append(all, charged(k.charge))
}
