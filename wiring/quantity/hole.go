package quantity

import "strings"

// Hole is a hole or cut-out in a panel. It is comparable; the zero Hole means "not
// stated".
type Hole struct {
	Width  Amount // the diameter of a round hole
	Height Amount // zero: a round hole
}

// Known reports whether a hole was stated.
func (h Hole) Known() bool { return h.Width.Known() }

// Round reports whether the hole is drilled rather than cut out.
func (h Hole) Round() bool { return h.Known() && !h.Height.Known() }

// DiameterMM returns the diameter of a round hole in millimetres, 0 for a cut-out.
func (h Hole) DiameterMM() float64 {
	if !h.Round() {
		return 0
	}
	return h.Width.Metres().Millimetres()
}

// String prints the hole as written: "22 mm", "37 mm x 21 mm".
func (h Hole) String() string { return h.In(AsWritten) }

// In prints the hole in a system of units.
func (h Hole) In(s System) string {
	if !h.Height.Known() {
		return h.Width.In(s)
	}
	return h.Width.In(s) + " x " + h.Height.In(s)
}

// ParseHole reads "22 mm", "2-1/16 in" or "37 mm x 21 mm" (width by height). The error is
// always an [*Error].
func ParseHole(text string) (Hole, error) {
	cleaned, err := clean(text)
	if err != nil {
		return Hole{}, err
	}
	h, err := parseHole(cleaned)
	if err != nil {
		return Hole{}, err
	}
	return h, nil
}

func parseHole(text string) (Hole, *Error) {
	left, right, two := cutBy(text)
	if !two {
		width, err := parse(text, Length)
		return checkedHole(text, Hole{Width: width}, err)
	}
	height, err := parse(right, Length)
	if err != nil {
		return Hole{}, err
	}
	if isBare(left) {
		left += " " + height.Unit
	}
	width, err := parse(left, Length)
	return checkedHole(text, Hole{Width: width, Height: height}, err)
}

// cutBy splits at the multiplication sign between width and height.
func cutBy(text string) (left, right string, ok bool) {
	i := strings.IndexAny(text, "xX×")
	if i < 0 {
		return "", "", false
	}
	_, width, _ := strings.Cut(text[i:], string([]rune(text[i:])[0]))
	return strings.TrimSpace(text[:i]), strings.TrimSpace(width), true
}

func checkedHole(text string, h Hole, err *Error) (Hole, *Error) {
	if err != nil {
		return Hole{}, err
	}
	if h.Width.Value <= 0 || h.Height.Known() && h.Height.Value <= 0 {
		return Hole{}, fault(text, "is no hole", "such as 22 mm or 37 mm x 21 mm")
	}
	return h, nil
}
