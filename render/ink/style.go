package ink

// Line widths of the ISO 128 root-two series, in millimetres. The narrow and wide lines of
// one drawing stand 1:2, here Thin and Wide; Heavy is for rails and the frame.
const (
	Hair   = 0.18
	Thin   = 0.25
	Medium = 0.35
	Wide   = 0.5
	Heavy  = 0.7
	Rail   = 1.0
)

// Solid returns a place for a colour, as Style wants it.
func Solid(c Color) *Color { return &c }

// White is the colour of the paper.
func White() Color { return Color{255, 255, 255} }

// Pen draws a continuous black line of a width in millimetres.
func Pen(width float64) Style { return Style{Stroke: &Color{}, Width: width} }

// Area is a filled surface without an edge.
func Area(c Color) Style { return Style{Fill: &c} }

// In returns the style with its line in another colour.
func (s Style) In(c Color) Style { s.Stroke = &c; return s }

// Filled returns the style with a filled surface.
func (s Style) Filled(c Color) Style { s.Fill = &c; return s }

// Rounded returns the style with round caps and joins.
func (s Style) Rounded() Style { s.Round = true; return s }

// Dashed returns the style with the dashed line of ISO 128-20 (type 02), whose marks and
// gaps are multiples of the width: shortened to 8 and 3 widths, since the standard's 12
// leaves too few marks on links a few millimetres long.
func (s Style) Dashed() Style { s.Dash = []float64{8 * s.Width, 3 * s.Width}; return s }

// DashDotted returns the style with the long-dashed dotted line of ISO 128-20 (type 10)
// that encloses what belongs together: marks of 24 widths, gaps of 3, dots of half a width.
func (s Style) DashDotted() Style {
	s.Dash = []float64{24 * s.Width, 3 * s.Width, s.Width / 2, 3 * s.Width}
	return s
}

// Grey returns the grey that a monochrome printer makes of the colour, by the luma weights
// of ITU-R BT.601.
func (c Color) Grey() uint8 {
	return uint8((299*int(c.R) + 587*int(c.G) + 114*int(c.B) + 500) / 1000)
}
