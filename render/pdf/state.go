package pdf

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// state is how the operators of a content stream are set: each the text of the operator
// that set it, empty before the first. Only changes are written.
type state struct {
	width, ends, dash, stroke, fill, font string
}

// mitreLimit is that of SVG, which formats must share for corners to look alike.
const mitreLimit = "4"

// set writes an operator unless it is set already.
func (r *raw) set(now *string, operator string) {
	if *now == operator {
		return
	}
	*now = operator
	r.write(operator, " ")
}

// style sets what a path needs (8.4.4).
func (r *raw) style(s ink.Style) {
	if s.Fill != nil {
		r.fill(*s.Fill)
	}
	if s.Stroke == nil {
		return
	}
	r.set(&r.now.stroke, colour(*s.Stroke, "G", "RG"))
	r.set(&r.now.width, ink.Decimal(s.Width)+" w")
	if s.Round {
		r.set(&r.now.ends, "1 J 1 j")
	} else {
		r.set(&r.now.ends, "0 J 0 j "+mitreLimit+" M")
	}
	lengths := make([]string, len(s.Dash))
	for i, d := range s.Dash {
		lengths[i] = ink.Decimal(d)
	}
	offset := "0"
	if len(s.Dash) > 0 {
		offset = ink.Decimal(s.Offset)
	}
	r.set(&r.now.dash, "["+strings.Join(lengths, " ")+"] "+offset+" d")
}

func (r *raw) fill(c ink.Color) { r.set(&r.now.fill, colour(c, "g", "rg")) }

// font sets the face of texts, inside a text object.
func (r *raw) font(f ink.Face, size float64) {
	r.set(&r.now.font, fontName(f)+" "+ink.Decimal(size)+" Tf")
}

// colour writes the operator for a colour. Greys are written as such, so that a printer
// makes them of black ink alone.
func colour(c ink.Color, grey, rgb string) string {
	part := func(v uint8) string { return ink.Decimal(float64(v) / 255) }
	if c.R == c.G && c.G == c.B {
		return part(c.R) + " " + grey
	}
	return part(c.R) + " " + part(c.G) + " " + part(c.B) + " " + rgb
}

// painting is the operator that ends a path of a style (8.5.3); empty if nothing is seen.
func painting(s ink.Style) string {
	switch {
	case s.Stroke != nil && s.Fill != nil:
		return "B"
	case s.Stroke != nil:
		return "S"
	case s.Fill != nil:
		return "f"
	}
	return ""
}
