package quantity

import (
	"math"
	"strconv"
	"strings"
)

// step is one unit that a printer may choose: the first of a list whose from is not above
// the value's magnitude.
type step struct {
	from  float64 // smallest magnitude printed in this unit, in the dimension's own unit
	scale float64 // one of this unit, in the dimension's own unit
	name  string
}

// Digits that printers show. Voltages get one more: a cell's worth of a 16-cell pack is
// 0.1 V in 58.4 V, and 54.75 V is a full 15-cell one.
const (
	digits        = 3
	voltageDigits = 4
)

var (
	voltSteps   = []step{{0.1, 1, "V"}, {0, 1e-3, "mV"}}
	ampereSteps = []step{{1000, 1e3, "kA"}, {0.1, 1, "A"}, {1e-4, 1e-3, "mA"}, {0, 1e-6, "uA"}}
	ohmSteps    = []step{{1e6, 1e6, "Mohm"}, {1e3, 1e3, "kohm"}, {0.1, 1, "ohm"}, {0, 1e-3, "mohm"}}
	wattSteps   = []step{{1000, 1e3, "kW"}, {0.1, 1, "W"}, {0, 1e-3, "mW"}}
	faradSteps  = []step{{1, 1, "F"}, {1e-3, 1e-3, "mF"}, {0, 1e-6, "uF"}}
	chargeSteps = []step{{0.1, 1, "Ah"}, {0, 1e-3, "mAh"}}
	energySteps = []step{{1000, 1e3, "kWh"}, {0, 1, "Wh"}}
	secondSteps = []step{{7200, 3600, "h"}, {120, 60, "min"}, {0.1, 1, "s"}, {0, 1e-3, "ms"}}
)

// String prints volts or millivolts with at most four digits: "12.5 V".
func (v Volt) String() string { return scaled(float64(v), voltSteps, voltageDigits) }

// String prints a current with at most three digits: "20 mA", "5.3 kA".
func (a Ampere) String() string { return scaled(float64(a), ampereSteps, digits) }

// String prints a resistance with at most three digits: "0.3 mohm", "10 kohm".
func (o Ohm) String() string { return scaled(float64(o), ohmSteps, digits) }

// String prints a power with at most three digits: "42 W", "1.05 kW".
func (w Watt) String() string { return scaled(float64(w), wattSteps, digits) }

// String prints a capacitance with at most three digits: "4.7 mF".
func (f Farad) String() string { return scaled(float64(f), faradSteps, digits) }

// String prints a charge with at most three digits: "110 Ah".
func (c AmpereHour) String() string { return scaled(float64(c), chargeSteps, digits) }

// String prints an energy with at most three digits: "5.63 kWh".
func (e WattHour) String() string { return scaled(float64(e), energySteps, digits) }

// String prints an area in mm2 with at most three digits: "33.6 mm2".
func (a SquareMillimetre) String() string { return rounded(float64(a), digits) + " mm2" }

// String prints a temperature to a tenth of a degree Celsius: "105 C".
func (c Celsius) String() string { return tenths(float64(c)) + " C" }

// String prints a time with at most three digits: "6.62 s", "2.5 min".
func (s Second) String() string { return scaled(float64(s), secondSteps, digits) }

// String prints a torque in newton metres with at most three digits: "9 Nm".
func (t NewtonMetre) String() string { return rounded(float64(t), digits) + " Nm" }

// String prints a mass in kilograms with at most three digits: "36 kg".
func (m Kilogram) String() string { return rounded(float64(m), digits) + " kg" }

// String prints a share in per cent with at most three digits: "3 %".
func (r Ratio) String() string { return rounded(float64(r)*100, digits) + " %" }

// scaled prints a value in the unit that suits its magnitude. The unit is chosen after
// rounding, so that 999.9 A prints as 1 kA and not as 1000 A.
func scaled(value float64, steps []step, digits int) string {
	if value == 0 {
		return "0 " + baseUnit(steps).name
	}
	for _, s := range steps {
		shown := roundTo(value/s.scale, digits) * s.scale
		if math.Abs(shown) >= s.from*(1-1e-12) || s.from == 0 {
			return rounded(value/s.scale, digits) + " " + s.name
		}
	}
	return rounded(value, digits) // NaN
}

// baseUnit is the step whose unit is the dimension's own.
func baseUnit(steps []step) step {
	for _, s := range steps {
		if s.scale == 1 {
			return s
		}
	}
	return steps[len(steps)-1]
}

// roundTo rounds to a number of significant digits.
func roundTo(x float64, digits int) float64 {
	f, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
	if err != nil {
		return x
	}
	return f
}

// rounded writes x with at most the given significant digits, never with an exponent.
func rounded(x float64, digits int) string {
	s := strconv.FormatFloat(roundTo(x, digits), 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

// tenths writes x with at most one decimal.
func tenths(x float64) string {
	s := strings.TrimSuffix(strconv.FormatFloat(x, 'f', 1, 64), ".0")
	if s == "-0" {
		return "0"
	}
	return s
}
