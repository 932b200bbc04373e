package symbol

import (
	"github.com/lugwright/lugwright/render/ink"
)

// drawing is what a symbol's draw function gets: it draws in the shape's own units and
// the placement is applied on the way to the page.
type drawing struct {
	page   ink.Page
	place  Placement
	unit   float64   // millimetres a unit, after any reduction of the sheet
	origin ink.Point // where in the shape (0, 0) of the draw function lies, in units
}

// Widths of lines in millimetres, which a reduction of the sheet does not change.
const (
	outline = ink.Medium // bodies, contacts, pin strokes
	detail  = ink.Thin   // what is inside a body, mechanical links
	power   = ink.Heavy  // short plates of cells, bars
)

// Draw puts the shape on a page whose origin is that of the grid. A unit is unitMM
// millimetres: Unit, or less on a reduced sheet.
func (s Shape) Draw(page ink.Page, at Placement, unitMM float64) {
	if s.draw != nil {
		s.draw(&drawing{page: page, place: at, unit: unitMM})
	}
}

// turned reports whether text that turns with the shape reads upwards.
func (d *drawing) turned() bool {
	ahead := d.place.Side(Right)
	return ahead == Top || ahead == Bottom
}

// straight returns a drawing around a point of the shape that is never mirrored and never
// upside down: it stands as the text beside it does.
func (d *drawing) straight(x, y float64) *drawing {
	p := d.at(x, y)
	s := &drawing{page: ink.Move(d.page, p.X, p.Y), unit: d.unit}
	if d.turned() {
		s.place.Turns = 3
	}
	return s
}

// at turns units of the shape into millimetres of the page.
func (d *drawing) at(x, y float64) ink.Point {
	p := d.place.Point(ink.Point{X: d.origin.X + x, Y: d.origin.Y + y})
	return ink.Point{X: p.X * d.unit, Y: p.Y * d.unit}
}

func (d *drawing) path(p ink.Path, s ink.Style) {
	d.page.Path(p.Map(func(q ink.Point) ink.Point { return d.at(q.X, q.Y) }), s)
}

// line draws through points given as x, y, x, y.
func (d *drawing) line(width float64, xy ...float64) { d.path(run(xy), ink.Pen(width)) }

// shape draws a closed run of lines.
func (d *drawing) shape(width float64, xy ...float64) { d.path(run(xy).Close(), ink.Pen(width)) }

// solid fills a closed run of lines.
func (d *drawing) solid(xy ...float64) { d.path(run(xy).Close(), ink.Area(ink.Color{})) }

func run(xy []float64) ink.Path {
	var p ink.Path
	for i := 0; i+1 < len(xy); i += 2 {
		if i == 0 {
			p = p.Move(xy[0], xy[1])
		} else {
			p = p.Line(xy[i], xy[i+1])
		}
	}
	return p
}

func (d *drawing) rect(width, x0, y0, x1, y1 float64) {
	d.shape(width, x0, y0, x1, y0, x1, y1, x0, y1)
}

func (d *drawing) circle(width, x, y, r float64) {
	d.path(ink.Circle(ink.At(x, y), r), ink.Pen(width))
}

func (d *drawing) dot(x, y, r float64) { d.path(ink.Circle(ink.At(x, y), r), ink.Area(ink.Color{})) }

// ring is a small open circle, filled with the colour of the paper so that a line may end
// at its centre.
func (d *drawing) ring(width, x, y, r float64) {
	d.path(ink.Circle(ink.At(x, y), r), ink.Pen(width).Filled(ink.White()))
}

func (d *drawing) arc(width, x, y, r, from, to float64) {
	d.path(ink.Path(nil).Arc(ink.At(x, y), r, from, to), ink.Pen(width))
}

// link is a mechanical connection (IEC 60617 02-12-01).
func (d *drawing) link(xy ...float64) { d.path(run(xy), ink.Pen(detail).Dashed()) }

// words writes text that turns with the shape, so that it stays in its field. The point is
// where the middle of the capitals' height stands.
func (d *drawing) words(x, y float64, anchor ink.Anchor, s string, face ink.Face) {
	if s == "" {
		return
	}
	t := ink.Text{String: s, Capital: d.unit, Face: face, Anchor: anchor}
	ahead := d.place.Side(Right) // the way in which the shape's text runs on the page
	if ahead == Left || ahead == Bottom {
		// Text reads from the left or from below, never backwards.
		t.Anchor = ink.End - anchor
	}
	t.At, t.Turned = d.at(x, y), d.turned()
	if t.Turned {
		t.At.X += d.unit / 2
	} else {
		t.At.Y += d.unit / 2
	}
	d.page.Text(t)
}

// sign writes a character or two that stay upright, centred on a point.
func (d *drawing) sign(x, y float64, s string, face ink.Face, capital float64) {
	at := d.at(x, y)
	at.Y += capital * d.unit / 2
	d.page.Text(ink.Text{At: at, String: s, Capital: capital * d.unit, Face: face, Anchor: ink.Middle})
}
