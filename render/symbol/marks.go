package symbol

import "github.com/lugwright/lugwright/render/ink"

// convertMark is the square with a diagonal of a converter (IEC 60617 06-14-01), from what
// is drawn in its upper left corner to what is drawn in the lower right.
func convertMark(from, to func(d *drawing, x, y float64)) mark {
	return mark{wide: 3, high: 3, draw: func(d *drawing, x, y float64) {
		d.rect(detail, x-1.5, y-1.5, x+1.5, y+1.5)
		d.line(detail, x-1.5, y+1.5, x+1.5, y-1.5)
		from(d, x-0.65, y-0.75)
		to(d, x+0.65, y+0.75)
	}}
}

// directCurrent is a line over a broken line (IEC 60417-5031).
func directCurrent(d *drawing, x, y float64) {
	d.line(detail, x-0.6, y-0.17, x+0.6, y-0.17)
	for _, from := range []float64{-0.6, -0.15, 0.3} {
		d.line(detail, x+from, y+0.17, x+from+0.3, y+0.17)
	}
}

// alternatingCurrent is one wave (IEC 60417-5032).
func alternatingCurrent(d *drawing, x, y float64) {
	var p ink.Path
	p = p.Move(x-0.6, y).Curve(ink.At(x-0.4, y-0.55), ink.At(x-0.2, y-0.55), x, y)
	p = p.Curve(ink.At(x+0.2, y+0.55), ink.At(x+0.4, y+0.55), x+0.6, y)
	d.path(p, ink.Pen(detail))
}

// symbolMark puts the inside of an upright symbol into a box: draw works around (0, 2).
func symbolMark(wide, high float64, draw func(d *drawing)) mark {
	return mark{wide: wide, high: high, draw: func(d *drawing, x, y float64) {
		inner := *d
		inner.origin = ink.At(d.origin.X+x, d.origin.Y+y-2)
		draw(&inner)
	}}
}
