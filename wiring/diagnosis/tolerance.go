package diagnosis

import (
	"math"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Tolerance of readings: a handheld meter is good to a percent, but nobody knows to a few
// percent how full the pack is or how warm the copper. Our own figures.
const (
	readingFloor = 0.3 // volts
	readingShare = 0.05
	dropFloor    = 0.1
	dropShare    = 0.3
	nearZero     = 1 // volts: a reading on a negative is a loss, too
)

// tolerance is how far a reading may be from what is expected.
func (m Measurement) tolerance(v float64) float64 {
	if m.Drop() || math.Abs(v) < nearZero {
		return max(dropFloor, dropShare*math.Abs(v))
	}
	return max(readingFloor, readingShare*math.Abs(v))
}

// Agrees reports whether a reading agrees with what is expected.
func (m Measurement) Agrees(expected, read quantity.Volt) bool {
	e, r := float64(expected), float64(read)
	return math.Abs(e-r) <= max(m.tolerance(e), m.tolerance(r))
}
