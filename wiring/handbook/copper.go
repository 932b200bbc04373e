package handbook

import "github.com/lugwright/lugwright/wiring/quantity"

// Annealed copper of 100 % IACS. Source: IEC 28 (1925), NBS Handbook 100 (1966); read. The
// pure copper of physics textbooks (10.09 ohm cmil/ft, 0.004041 a kelvin) is 2.7 % better:
// the two are never mixed.
const (
	CopperResistivity = 1.0 / 58 // ohm mm2 / m at 20 C
	CopperAlpha       = 0.00393  // per kelvin, referred to 20 C
	referenceCelsius  = 20.0
)

// OhmPerMetre is the resistance of a conductor for each metre of its length.
type OhmPerMetre float64

// Of returns the resistance of a length.
func (r OhmPerMetre) Of(length quantity.Metre) quantity.Ohm {
	return quantity.Ohm(float64(r) * float64(length))
}

// Linear returns a resistance at a temperature, given that at 20 C and the coefficient at
// 20 C: R20 (1 + alpha (T - 20)).
func Linear(at20 quantity.Ohm, alpha float64, conductor quantity.Celsius) quantity.Ohm {
	return quantity.Ohm(float64(at20) * (1 + alpha*(float64(conductor)-referenceCelsius)))
}

// CopperPerMetre returns the resistance of a copper conductor for each metre: 1/58 ohm
// mm2/m at 20 C, rising by 0.00393 a kelvin. Stranding is not counted (up to 2 % more).
func CopperPerMetre(area quantity.SquareMillimetre, conductor quantity.Celsius) OhmPerMetre {
	return OhmPerMetre(Linear(quantity.Ohm(CopperResistivity/float64(area)), CopperAlpha, conductor))
}

// Resistance returns the resistance of a length of copper conductor at a conductor
// temperature. The error is that of [Tables.Area].
func (t *Tables) Resistance(size quantity.Size, length quantity.Metre, conductor quantity.Celsius) (quantity.Ohm, error) {
	area, err := t.Area(size)
	if err != nil {
		return 0, err
	}
	return CopperPerMetre(area, conductor).Of(length), nil
}

// CircularMilResistance returns the resistance of a conductor by the trade's rule, k L /
// CM, with k in ohm circular mils a foot: 12.9 for copper near 75 C (NEC practice), 10.75
// on boats (from memory), 10.37 for annealed copper at 20 C.
func CircularMilResistance(k float64, length quantity.Metre, cmil float64) quantity.Ohm {
	return quantity.Ohm(k * length.Feet() / cmil)
}

// CircularMilsForDrop returns the circular mils at which a current loses no more than a
// limit over the whole loop, by the trade's rule CM = k I L / V (k as in
// [CircularMilResistance]).
func CircularMilsForDrop(k float64, amps quantity.Ampere, loop quantity.Metre, limit quantity.Volt) float64 {
	return k * float64(amps) * loop.Feet() / float64(limit)
}

// HotLength returns the length that a copper conductor may have at a conductor temperature
// if it may have one length at 20 C for the same drop: 254.5 L / (234.5 + T). Source: AC
// 43.13-1B para 11-66 d(4); read.
func HotLength(at20 quantity.Metre, conductor quantity.Celsius) quantity.Metre {
	return at20 * quantity.Metre(254.5/(234.5+float64(conductor)))
}

// Drop returns the voltage that a current loses in a resistance.
func Drop(amps quantity.Ampere, ohms quantity.Ohm) quantity.Volt {
	return quantity.Volt(float64(amps) * float64(ohms))
}

// DropShare returns a drop as a share of the source's voltage.
func DropShare(drop, source quantity.Volt) quantity.Ratio {
	return quantity.Ratio(float64(drop) / float64(source))
}

// RunDrop returns the voltage that a current loses on the way out and back: loop is the
// length of both conductors together. The error is that of [Tables.Area].
func (t *Tables) RunDrop(size quantity.Size, loop quantity.Metre, amps quantity.Ampere, conductor quantity.Celsius) (quantity.Volt, error) {
	ohms, err := t.Resistance(size, loop, conductor)
	return Drop(amps, ohms), err
}

// LegResistance returns the ohms that each of some equal conductors in series may have if
// a current is to reach its load with no less than a voltage.
func LegResistance(source, load quantity.Volt, amps quantity.Ampere, legs int) quantity.Ohm {
	return quantity.Ohm(float64(source-load) / float64(amps) / float64(legs))
}

// SizeForDrop returns the thinnest standard size whose loop of that length loses no more
// than a limit; false if even the thickest loses more.
func SizeForDrop(amps quantity.Ampere, loop quantity.Metre, limit quantity.Volt, conductor quantity.Celsius) (quantity.Size, bool) {
	if limit <= 0 {
		return quantity.Size{}, false
	}
	perMM2 := float64(CopperPerMetre(1, conductor).Of(loop))
	return SizeForArea(quantity.SquareMillimetre(perMM2 * float64(amps) / float64(limit)))
}

// Parallel returns the resistance of conductors side by side: 0 if one of them is 0, or if
// there are none.
func Parallel(ohms ...quantity.Ohm) quantity.Ohm {
	siemens := 0.0
	for _, r := range ohms {
		siemens += 1 / float64(r)
	}
	if siemens == 0 {
		return 0
	}
	return quantity.Ohm(1 / siemens)
}
