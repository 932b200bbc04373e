// Package colour knows wire colours by their IEC 60757 letter codes, reads the ways in
// which people write them, and says how to show them on screen and on paper.
package colour

// Code is one colour's letter code: BK, RD, GNYE, our own TN (tan) and CL (clear), L or D
// before a code for a light or dark shade, or "bare" for a conductor without insulation.
type Code string

// Colour is a wire's colour: a base, and a tracer where it has one. It is comparable; the
// zero Colour means "not stated".
type Colour struct {
	Base, Tracer Code
}

// Known reports whether a colour was stated.
func (c Colour) Known() bool { return c.Base != "" }

// String returns the code, base before tracer: "BK/YE". It returns "" for the zero Colour.
func (c Colour) String() string {
	if c.Tracer == "" {
		return string(c.Base)
	}
	return string(c.Base) + "/" + string(c.Tracer)
}
