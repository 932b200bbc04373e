package figure

import "strconv"

// Joule is an energy in joules, of pulses that last a few seconds; what a pack holds is
// counted in [github.com/lugwright/lugwright/wiring/quantity.WattHour], of 3600 J each.
type Joule float64

// String prints an energy with at most three digits: "6.55 J".
func (j Joule) String() string {
	value, err := strconv.ParseFloat(strconv.FormatFloat(float64(j), 'e', 2, 64), 64)
	if err != nil {
		value = float64(j)
	}
	return strconv.FormatFloat(value, 'f', -1, 64) + " J"
}
