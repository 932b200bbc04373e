package quantity

import (
	"math"
	"strconv"
)

// System says in which units sheets print lengths, and torques and masses with them.
type System uint8

// The systems.
const (
	AsWritten System = iota // whatever the author wrote
	Inch                    // in and ft, lb, in lb and ft lb
	Metric                  // mm, cm and m, kg, Nm
)

// String returns "inch", "metric" or "as written".
func (s System) String() string {
	switch s {
	case Inch:
		return "inch"
	case Metric:
		return "metric"
	}
	return "as written"
}

// Lengths in metres.
const (
	inch = 0.0254
	foot = 0.3048
)

// String prints a length in metric units; see [Metre.In].
func (m Metre) String() string { return m.In(Metric) }

// In prints a length as a person would measure it: "14 in", "2-1/8 in", "4 ft 6 in" in
// the inch system; "8.4 mm", "35 cm", "1.37 m" in the metric one, which AsWritten means
// too. Inches are rounded to a sixteenth below half a foot, to an eighth below two feet, to
// a half below ten feet, and to whole inches above; metric lengths to three digits.
func (m Metre) In(s System) string {
	if s == Inch {
		return inFeet(float64(m))
	}
	size := math.Abs(roundTo(float64(m), digits))
	switch {
	case m == 0:
		return "0 mm"
	case size >= 1:
		return rounded(float64(m), digits) + " m"
	case size >= 0.1:
		return rounded(float64(m)*100, digits) + " cm"
	}
	return rounded(float64(m)*1000, digits) + " mm"
}

// Millimetres returns the length in mm.
func (m Metre) Millimetres() float64 { return float64(m) * 1000 }

// Inches returns the length in inches.
func (m Metre) Inches() float64 { return float64(m) / inch }

// Feet returns the length in feet.
func (m Metre) Feet() float64 { return float64(m) / foot }

// Feet makes a length of that many feet.
func Feet(ft float64) Metre { return Metre(ft * foot) }

// Inches makes a length of that many inches.
func Inches(in float64) Metre { return Metre(in * inch) }

// Millimetres makes a length of that many millimetres.
func Millimetres(mm float64) Metre { return Metre(mm / 1000) }

// inFeet prints metres in inches, or in feet and inches from two feet up.
func inFeet(metres float64) string {
	sign := ""
	if metres < 0 {
		sign, metres = "-", -metres
	}
	inches := metres / inch
	if math.IsNaN(inches) || inches > 1e12 {
		return strconv.FormatFloat(inches, 'g', digits, 64) + " in"
	}
	parts := toTape(inches)
	if parts < 24*sixteenths {
		return sign + tapeText(parts) + " in"
	}
	feet, left := parts/(12*sixteenths), parts%(12*sixteenths)
	if left == 0 {
		return sign + strconv.FormatInt(feet, 10) + " ft"
	}
	return sign + strconv.FormatInt(feet, 10) + " ft " + tapeText(left) + " in"
}

// sixteenths of an inch are the finest lines on a tape.
const sixteenths = 16

// toTape rounds inches to what is worth measuring, and returns sixteenths.
func toTape(inches float64) int64 {
	grain := 1.0
	switch {
	case inches >= 120:
		grain = 16
	case inches >= 24:
		grain = 8
	case inches >= 6:
		grain = 2
	}
	return int64(math.Round(inches*sixteenths/grain) * grain)
}

// tapeText writes sixteenths as a mixed number: 34 is 2-1/8.
func tapeText(parts int64) string {
	whole, part, of := parts/sixteenths, parts%sixteenths, int64(sixteenths)
	for part != 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	w := strconv.FormatInt(whole, 10)
	if part == 0 {
		return w
	}
	fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(of, 10)
	if whole == 0 {
		return fraction
	}
	return w + "-" + fraction
}
