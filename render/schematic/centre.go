package schematic

import (
	"math"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// centre moves everything on a finished sheet sideways, so that as much is free at its left
// as at its right.
func (c *composed) centre(d *arrange.Diagram) {
	h := c.hull(d)
	dx := int(math.Round((float64(d.Width) - h.X0 - h.X1) / 2))
	if dx == 0 || h.X0+float64(dx) < 0 || h.X1+float64(dx) > float64(d.Width) {
		return
	}
	for i := range c.layout.Items {
		c.layout.Items[i].At.X += dx
	}
	for b := range c.layout.Bars {
		c.layout.Bars[b].At.X += dx
	}
	for _, path := range c.routes.Paths {
		for k := range path {
			path[k].X += dx
		}
	}
	for k := range c.routes.Dots {
		c.routes.Dots[k].X += dx
	}
	for k := range c.labels.Labels {
		l := &c.labels.Labels[k]
		l.At.X += float64(dx)
		l.Box.X0 += float64(dx)
		l.Box.X1 += float64(dx)
		l.Leader = moved(l.Leader, float64(dx))
	}
}

func moved(line []ink.Point, dx float64) []ink.Point {
	var out []ink.Point
	for _, p := range line {
		out = append(out, ink.Point{X: p.X + dx, Y: p.Y})
	}
	return out
}

// hull is the smallest box round everything on the sheet.
func (c *composed) hull(d *arrange.Diagram) symbol.Box {
	var all []symbol.Box
	for i := range d.Items {
		all = append(all, c.layout.Reach(d, i))
	}
	for b := range d.Bars {
		all = append(all, c.layout.Bars[b].Box())
	}
	for f := range d.Frames {
		all = append(all, c.layout.FrameBox(d, f))
	}
	for _, path := range c.routes.Paths {
		for _, p := range path {
			x, y := float64(p.X), float64(p.Y)
			all = append(all, symbol.Box{X0: x, Y0: y, X1: x, Y1: y})
		}
	}
	for _, l := range c.labels.Labels {
		all = append(all, l.Box)
	}
	return arrange.Hull(all)
}
