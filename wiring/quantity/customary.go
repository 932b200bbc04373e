package quantity

import "math"

// in converts a value of a dimension to one of its units.
func in(value float64, d Dimension, unit string) float64 {
	u := d.facts().exactly(unit)
	factor, _ := ratio(u.factor).Float64()
	if u.zero == "" {
		return value / factor
	}
	zero, _ := ratio(u.zero).Float64()
	return value/factor + zero
}

// inchPoundsUpTo is the torque up to which the trade speaks of inch pounds: our own choice
// at about 20 ft lb.
const inchPoundsUpTo = 27.0 // N m

// In prints a torque: "9 Nm", or "79.7 in lb" and "36.9 ft lb" in the inch system.
func (t NewtonMetre) In(s System) string {
	unit := "ft lb"
	switch {
	case s != Inch:
		return t.String()
	case math.Abs(float64(t)) <= inchPoundsUpTo:
		unit = "in lb"
	}
	return rounded(in(float64(t), Torque, unit), digits) + " " + unit
}

// In prints a mass: "36 kg", or "79.4 lb" in the inch system.
func (m Kilogram) In(s System) string {
	if s != Inch {
		return m.String()
	}
	return rounded(in(float64(m), Mass, "lb"), digits) + " lb"
}

// In prints a temperature: "40 C", or "104 F" in the inch system.
func (c Celsius) In(s System) string {
	if s != Inch {
		return c.String()
	}
	return tenths(in(float64(c), Temperature, "F")) + " F"
}
