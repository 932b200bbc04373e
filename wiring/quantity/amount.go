package quantity

import "fmt"

// String prints the amount as it was written, with "about " before an estimate. An amount
// that was computed and has no text prints as its type does. It returns "" for the zero
// Amount.
func (a Amount) String() string {
	if !a.Known() {
		return ""
	}
	text := a.Text
	if text == "" {
		text = a.typed()
	}
	if a.About {
		return "about " + text
	}
	return text
}

// System says in which units a length, torque, mass or temperature was written; AsWritten
// for all else.
func (a Amount) System() System {
	switch a.Unit {
	case "in", "ft", "in lb", "ft lb", "lb":
		return Inch
	case "F":
		if a.Dimension == Temperature {
			return Inch
		}
	case "mm", "cm", "m", "Nm", "kg", "C":
		return Metric
	}
	return AsWritten
}

// In prints the amount in a system of units: as written if that is the system already, or
// if the dimension has one set of units only; else converted.
func (a Amount) In(s System) string {
	if s == AsWritten || a.System() == AsWritten || a.System() == s {
		return a.String()
	}
	text := ""
	switch a.Dimension {
	case Length:
		text = Metre(a.Value).In(s)
	case Torque:
		text = NewtonMetre(a.Value).In(s)
	case Mass:
		text = Kilogram(a.Value).In(s)
	case Temperature:
		text = Celsius(a.Value).In(s)
	}
	if a.About {
		return "about " + text
	}
	return text
}

// typed prints the value as its dimension's type does.
func (a Amount) typed() string {
	switch a.Dimension {
	case Voltage:
		return Volt(a.Value).String()
	case Current:
		return Ampere(a.Value).String()
	case Resistance:
		return Ohm(a.Value).String()
	case Power:
		return Watt(a.Value).String()
	case Capacitance:
		return Farad(a.Value).String()
	case Charge:
		return AmpereHour(a.Value).String()
	case Energy:
		return WattHour(a.Value).String()
	case Length:
		return Metre(a.Value).String()
	case Temperature:
		return Celsius(a.Value).String()
	case Time:
		return Second(a.Value).String()
	case Torque:
		return NewtonMetre(a.Value).String()
	case Mass:
		return Kilogram(a.Value).String()
	case Share:
		return Ratio(a.Value).String()
	}
	return ""
}

// Computed makes an amount that nobody wrote, in the unit of the dimension's type.
func Computed(value float64, d Dimension) Amount {
	a := Amount{Value: value, Dimension: d}
	a.Text = a.typed()
	return a
}

// must returns the value if the amount has that dimension, and 0 if nothing was stated.
// To ask an amount for another dimension than its own is a mistake of the program, not of
// its input, and panics.
func (a Amount) must(d Dimension) float64 {
	if !a.Known() {
		return 0
	}
	if a.Dimension != d {
		panic(fmt.Sprintf("quantity: %q is a %v, asked for as a %v", a.Text, a.Dimension, d))
	}
	return a.Value
}

// The accessors below return the value in its type, 0 if nothing was stated. They panic
// if the amount has another dimension, which Parse has ruled out for what it returned.

// Volts returns a voltage.
func (a Amount) Volts() Volt { return Volt(a.must(Voltage)) }

// Amperes returns a current.
func (a Amount) Amperes() Ampere { return Ampere(a.must(Current)) }

// Ohms returns a resistance.
func (a Amount) Ohms() Ohm { return Ohm(a.must(Resistance)) }

// Watts returns a power.
func (a Amount) Watts() Watt { return Watt(a.must(Power)) }

// Farads returns a capacitance.
func (a Amount) Farads() Farad { return Farad(a.must(Capacitance)) }

// AmpereHours returns a charge.
func (a Amount) AmpereHours() AmpereHour { return AmpereHour(a.must(Charge)) }

// WattHours returns an energy.
func (a Amount) WattHours() WattHour { return WattHour(a.must(Energy)) }

// Metres returns a length.
func (a Amount) Metres() Metre { return Metre(a.must(Length)) }

// Celsius returns a temperature.
func (a Amount) Celsius() Celsius { return Celsius(a.must(Temperature)) }

// Seconds returns a time.
func (a Amount) Seconds() Second { return Second(a.must(Time)) }

// NewtonMetres returns a torque.
func (a Amount) NewtonMetres() NewtonMetre { return NewtonMetre(a.must(Torque)) }

// Kilograms returns a mass.
func (a Amount) Kilograms() Kilogram { return Kilogram(a.must(Mass)) }

// Ratio returns a share.
func (a Amount) Ratio() Ratio { return Ratio(a.must(Share)) }
