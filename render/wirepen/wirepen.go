// Package wirepen draws a wire as it looks: in its colour, with its tracer as a broken line
// of the second colour, edged where the paper would swallow it, as wide as its conductor
// deserves. The line stays readable when it is printed in grey; which wire it is, its label
// says.
package wirepen

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/wiring/colour"
)

// Palette shows a colour code: colour.Code.Screen or colour.Code.Print.
type Palette func(colour.Code) colour.RGB

// Pen draws wires of one colour and size. Lengths are in millimetres.
type Pen struct {
	body   float64 // width of the coloured line
	base   ink.Color
	tracer ink.Color
	traced bool // there is a tracer, or the second colour of a bicolour
	edged  bool
	parted bool // base and tracer look alike in grey: gaps part them
}

// Measures in millimetres.
const (
	edgeWidth = 0.13 // of the dark edge on each side: the narrowest line of ISO 128
	mark      = 2.0  // length of a mark of the tracer, and of the base between two marks
	shortMark = 1.3  // length of a mark where grey cannot tell it from the base
	parting   = 0.35 // length of the gaps that part the two then
)

// leastGrey is how far apart two greys of 256 must be to be told apart on a thin line: our
// own choice, from looking at prints of 600 dots per inch.
const leastGrey = 50

// New returns the pen for a wire's colour and the area of its conductor in mm2, 0 if that
// is unknown. A wire whose colour is not stated is black.
func New(c colour.Colour, areaMM2 float64, show Palette) Pen {
	p := Pen{body: Width(areaMM2)}
	if !c.Known() {
		return p
	}
	p.base = inkOf(show(c.Base))
	p.edged = c.NeedsOutline()
	if second, ok := secondOf(c, show); ok {
		p.tracer, p.traced = second, true
		if apart(p.base.Grey(), p.tracer.Grey()) < leastGrey {
			p.parted, p.edged = true, true // the edge keeps the line in one piece
		}
	}
	return p
}

// secondOf returns the tracer, or the stripe of a bicolour such as GNYE.
func secondOf(c colour.Colour, show Palette) (ink.Color, bool) {
	if c.Tracer != "" {
		return inkOf(show(c.Tracer)), true
	}
	stripe, ok := c.Base.Stripe()
	return inkOf(stripe), ok
}

func inkOf(c colour.RGB) ink.Color { return ink.Color{R: c.R, G: c.G, B: c.B} }

func apart(a, b uint8) int {
	if a < b {
		a, b = b, a
	}
	return int(a - b)
}

// Width returns the width of the coloured line for a conductor's area in mm2, in steps of
// ISO 128: signals up to 16 AWG (1.31 mm2), loads up to 10 AWG (5.26 mm2), feeders up to
// 6 AWG (13.3 mm2), and traction cables. The limits are our own. Unknown areas count as
// signals.
func Width(areaMM2 float64) float64 {
	switch {
	case areaMM2 > 14:
		return 1.4
	case areaMM2 > 6:
		return 1.0
	case areaMM2 > 1.6:
		return 0.7
	}
	return 0.5
}

// Width returns how wide the whole line is on the page, edges included, in millimetres.
func (p Pen) Width() float64 {
	if p.edged {
		return p.body + 2*edgeWidth
	}
	return p.body
}

// Draw draws along the points, which are in millimetres of the page.
func (p Pen) Draw(page ink.Page, points ...ink.Point) {
	if len(points) < 2 {
		return
	}
	line := ink.Lines(points...)
	if p.edged {
		page.Path(line, ink.Pen(p.Width()).In(edge()))
	}
	page.Path(line, ink.Pen(p.body).In(p.base))
	if !p.traced {
		return
	}
	if p.parted {
		// Marks as wide as the line, with a gap at each end; the base keeps the longer part.
		page.Path(line, broken(p.body, p.gap(), shortMark+2*parting, 2*mark-shortMark-2*parting))
		page.Path(line, broken(p.body, p.tracer, shortMark, 2*mark-shortMark))
		return
	}
	page.Path(line, broken(p.body/2, p.tracer, mark, mark))
}

// gap is the colour between base and tracer that neither has in grey.
func (p Pen) gap() ink.Color {
	if p.base.Grey() > 128 {
		return edge()
	}
	return ink.White()
}

// broken is a line of marks and gaps that begins in the middle of a gap.
func broken(width float64, c ink.Color, marked, gap float64) ink.Style {
	s := ink.Pen(width).In(c)
	s.Dash, s.Offset = []float64{marked, gap}, marked+gap/2
	return s
}

// edge is the colour of the dark edge.
func edge() ink.Color { return ink.Color{R: 0x22, G: 0x22, B: 0x22} }
