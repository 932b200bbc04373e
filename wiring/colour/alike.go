package colour

import "math"

// Bad light is what an installer has under a seat: a tenth of the light that the eye is
// used to, with chroma counting half, since the eye's cones fade before its rods. Both
// figures are our own choice.
const (
	dimLight  = 0.1
	dimChroma = 0.5
)

// LookAlikeLimit is the Distance up to which two colours are easily confused. It is our
// own choice, set so that pairs which the trade knows as trouble (black and brown, red and
// orange, brown and red, blue and violet, grey and silver, white and clear) fall below it.
const LookAlikeLimit = 14.0

// Distance says how different two colours look in bad light. It is the CIE 1976 colour
// difference (CIE 15, CIELAB, white point D65) of their screen colours, seen at a tenth of
// the light and with a* and b* counting half:
//
//	sqrt(dL*^2 + (da*/2)^2 + (db*/2)^2)
//
// It is 0 for equal colours and about 38 for black and white.
func Distance(a, b Code) float64 {
	p, q := a.Screen().dimLab(), b.Screen().dimLab()
	return math.Sqrt(square(p[0]-q[0]) + square(dimChroma*(p[1]-q[1])) + square(dimChroma*(p[2]-q[2])))
}

// LookAlike reports whether two wires' colours are easily confused in bad light. A tracer
// tells a wire from one without; of two with tracers, both base and tracer must be alike.
// An unknown colour is like nothing.
func LookAlike(a, b Colour) bool {
	if !a.Known() || !b.Known() || (a.Tracer == "") != (b.Tracer == "") {
		return false
	}
	if a.Tracer != "" && !codesAlike(a.Tracer, b.Tracer) {
		return false
	}
	return codesAlike(a.Base, b.Base)
}

// codesAlike compares single colours. The two-coloured protective earth is like itself
// only: its stripes are there to be told apart.
func codesAlike(a, b Code) bool {
	if a == ProtectiveEarth || b == ProtectiveEarth {
		return a == b
	}
	return a == b || Distance(a, b) <= LookAlikeLimit
}

func square(x float64) float64 { return x * x }

// dimLab returns CIELAB coordinates of the colour in dim light: sRGB to XYZ by the matrix
// of IEC 61966-2-1, white point D65.
func (c RGB) dimLab() [3]float64 {
	v := c.linear()
	x := (0.4124564*v[0] + 0.3575761*v[1] + 0.1804375*v[2]) * dimLight / 0.95047
	y := (0.2126729*v[0] + 0.7151522*v[1] + 0.0721750*v[2]) * dimLight
	z := (0.0193339*v[0] + 0.1191920*v[1] + 0.9503041*v[2]) * dimLight / 1.08883
	fx, fy, fz := labCurve(x), labCurve(y), labCurve(z)
	return [3]float64{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}

// labCurve is the response curve of CIELAB, with its straight part near black.
func labCurve(t float64) float64 {
	if t > 216.0/24389 {
		return math.Cbrt(t)
	}
	return (24389.0/27*t + 16) / 116
}
