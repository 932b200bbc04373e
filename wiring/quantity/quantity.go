// Package quantity holds the physical quantities that a wiring job speaks of: one
// named type for each, one parser and one printer.
//
// Each type is a float64 in one unit, named in its doc comment; a voltage cannot be
// passed where a current is wanted. What a person wrote ("4 ft 6 in", "about 2 ft")
// stays beside the number in an Amount, because sheets print units as they were written.
//
// The zero value of a rating means "not stated"; no rating in this trade is truly zero.
package quantity

// Electrical quantities.
type (
	Volt       float64 // V
	Ampere     float64 // A
	Ohm        float64 // ohm
	Watt       float64 // W
	Farad      float64 // F
	AmpereHour float64 // Ah
	WattHour   float64 // Wh
)

// Mechanical and thermal quantities.
type (
	Metre            float64 // m
	SquareMillimetre float64 // mm2
	Celsius          float64 // degrees C
	Second           float64 // s
	NewtonMetre      float64 // N m
	Kilogram         float64 // kg
	Ratio            float64 // 1 = 100 %
)

// Dimension names what a quantity measures.
type Dimension uint8

// The dimensions that the parser knows. Length, Torque and so on are read into the unit
// of the type of that name.
const (
	NoDimension Dimension = iota
	Voltage
	Current
	Resistance
	Power
	Capacitance
	Charge
	Energy
	Length
	Temperature
	Time
	Torque
	Mass
	Share
)

// Amount is a quantity as someone wrote it. The zero Amount means "not stated".
type Amount struct {
	Value     float64   // in the unit of the dimension's type: volts, metres, degrees C
	Dimension Dimension // NoDimension: not stated
	Unit      string    // the unit as written, in its canonical spelling ("in", "mohm")
	Text      string    // as written, blanks normalised, without "about"
	About     bool      // an estimate: computed with, drawn with ~
}

// Known reports whether anything was stated.
func (a Amount) Known() bool { return a.Dimension != NoDimension }

// Pair is two quantities that only mean something together, such as "10 A at 60 V",
// "220 A for 30 s" or "30 V to 72 V".
type Pair struct {
	First, Second Amount
	Joint         Joint
}

// Joint is the word between the two quantities of a Pair.
type Joint string

// The three joints.
const (
	At  Joint = "at"
	For Joint = "for"
	To  Joint = "to"
)
