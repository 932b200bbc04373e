package handbook

import "github.com/lugwright/lugwright/wiring/quantity"

// ConverterInput returns the current that a converter draws to give an output, by the
// balance of power; efficiency is above 0 and at most 1, and idle current is not counted.
func ConverterInput(out quantity.Volt, amps quantity.Ampere, efficiency quantity.Ratio, in quantity.Volt) quantity.Ampere {
	return quantity.Ampere(float64(out) * float64(amps) / float64(efficiency) / float64(in))
}
