package handbook

import (
	"math"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Facts of a conductor that heats up.
const (
	copperHeat     = 3.45e6 // J/(m3 K), volumetric heat of copper; IEC 60949, from memory
	heatingCelsius = 105.0  // insulation whose table current is the reference
)

// HeatingTime returns the time constant with which a conductor warms up: the heat that its
// copper alone takes over the rise from 30 C to 105 C, against the loss at the table
// current of 105 C insulation. Insulation also takes heat, so real wires are slower.
//
// The error is that of [Tables.Ampacity]. Computed.
func (t *Tables) HeatingTime(size quantity.Size) (quantity.Second, error) {
	c, err := t.Ampacity(size, heatingCelsius)
	if err != nil {
		return 0, err
	}
	area, err := t.Area(c.Row)
	if err != nil {
		return 0, err
	}
	heat := copperHeat * float64(area) * 1e-6 * (heatingCelsius - tableAmbient) // J/m
	loss := math.Pow(float64(c.Amps), 2) * float64(CopperPerMetre(area, heatingCelsius))
	return quantity.Second(heat / loss), nil
}

// ShortTime returns the current that a conductor may carry for a time from cold, if it may
// carry one for ever and warms up with a time constant: I / sqrt(1 - exp(-t/tau)).
func ShortTime(lasting quantity.Ampere, tau, time quantity.Second) quantity.Ampere {
	share := -math.Expm1(-float64(time) / float64(tau))
	return quantity.Ampere(float64(lasting) / math.Sqrt(share))
}

// PVCCopper is the factor k of copper in PVC, in A s^0.5 / mm2. Source: IEC 60364-5-54,
// from memory.
const PVCCopper = 115.0

// AdiabaticTime returns how long a conductor stands a fault current before its insulation
// suffers, no heat escaping: (k S / I)^2. Source: IEC 60364-5-54; valid up to about 5 s.
func AdiabaticTime(k float64, area quantity.SquareMillimetre, fault quantity.Ampere) quantity.Second {
	return quantity.Second(math.Pow(k*float64(area)/float64(fault), 2))
}
