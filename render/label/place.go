package label

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Place finds places for all words of a routed diagram: paths are the corners of each
// wire, nil where it has none; dots are the joints. Without leaders, what has no place on
// its own run is reported as missing, which is quicker.
func Place(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell, leaders bool) *Result {
	f := survey(d, l, paths, dots)
	c := &choice{rs: gather(d, l, paths, f)}
	c.run()
	if leaders {
		c.lead(f, l, paths)
	}
	return c.result()
}

// survey puts all that stands before the labels on a field.
func survey(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell) *field {
	f := newField(d.Width, d.Height)
	for _, p := range paths {
		for i := 1; i < len(p); i++ {
			f.line(p[i-1], p[i])
		}
	}
	f.sum()
	for i := range d.Items {
		for _, b := range l.Bodies(d, i) {
			f.box(arrange.Grown(b, gapBody))
		}
		for pin := range d.Items[i].Forms[0].Pins {
			f.box(stub(l.Pin(d, i, pin)))
		}
		if c, ok := l.CaptionBox(d, i); ok {
			f.box(arrange.Grown(c, gapWords))
		}
	}
	for i := range d.Bars {
		f.box(arrange.Grown(l.Bars[i].Box(), d.Bars[i].Width()/2+gapOwn/2))
	}
	for i := range d.Frames {
		for _, edge := range edges(l.FrameBox(d, i)) {
			f.box(edge)
		}
	}
	for _, c := range dots {
		f.box(arrange.Grown(symbol.Box{X0: float64(c.X), Y0: float64(c.Y), X1: float64(c.X), Y1: float64(c.Y)}, gapDot))
	}
	return f
}

// stub is the box of a pin's stroke, from the pin to the body half a unit away.
func stub(at symbol.Cell, side symbol.Side) symbol.Box {
	b := symbol.Box{X0: float64(at.X), Y0: float64(at.Y), X1: float64(at.X), Y1: float64(at.Y)}
	switch side {
	case symbol.Left:
		b.X1 += 0.5
	case symbol.Right:
		b.X0 -= 0.5
	case symbol.Top:
		b.Y1 += 0.5
	case symbol.Bottom:
		b.Y0 -= 0.5
	}
	return arrange.Grown(b, gapOwn)
}

// edges returns the four lines of a box as thin boxes.
func edges(b symbol.Box) [4]symbol.Box {
	return [4]symbol.Box{
		arrange.Grown(symbol.Box{X0: b.X0, Y0: b.Y0, X1: b.X1, Y1: b.Y0}, gapBody),
		arrange.Grown(symbol.Box{X0: b.X0, Y0: b.Y1, X1: b.X1, Y1: b.Y1}, gapBody),
		arrange.Grown(symbol.Box{X0: b.X0, Y0: b.Y0, X1: b.X0, Y1: b.Y1}, gapBody),
		arrange.Grown(symbol.Box{X0: b.X1, Y0: b.Y0, X1: b.X1, Y1: b.Y1}, gapBody),
	}
}

// result sums up the choice.
func (c *choice) result() *Result {
	res := &Result{}
	for _, r := range c.rs {
		if r.taken < 0 {
			res.Missing = append(res.Missing, Label{Kind: r.kind, Index: r.index, End: r.end, Lines: r.words[0].Lines})
			continue
		}
		s := &r.spots[r.taken]
		res.Labels = append(res.Labels, Label{Kind: r.kind, Index: r.index, End: r.end, Words: s.words,
			Lines: r.words[s.words].Lines, At: s.at, Anchor: s.anchor, Turned: s.turned, Box: s.box,
			Leader: s.leader, Cost: s.cost})
		if s.leader != nil {
			res.Leaders++
		}
	}
	return res
}

var _ = ink.Start
