package label

import (
	"slices"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Place finds places for all words of a routed diagram: paths are the corners of each
// wire, nil where it has none; dots are the joints. Without leaders, what has no place on
// its own run is reported as missing, which is quicker.
func Place(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell, leaders bool) *Result {
	return NewWriter(d).Place(l, paths, dots, leaders)
}

// Writer finds places for the words of one diagram, laid out in one way after the other: it
// looks again only where something changed. The results are the same as those of [Place].
type Writer struct {
	d      *arrange.Diagram
	f      *field
	rs     []*request
	choice choice
	before standing
}

// NewWriter makes a writer for a diagram, which must not change afterwards.
func NewWriter(d *arrange.Diagram) *Writer {
	return &Writer{d: d, f: newField(d.Width, d.Height), rs: requestsOf(d), before: newStanding(d)}
}

// Place is what the function of that name does.
func (w *Writer) Place(l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell, leaders bool) *Result {
	w.survey(l, paths, dots)
	changed := w.before.note(w.d, l, paths, dots)
	c := &w.choice
	c.rs = c.rs[:0]
	for _, r := range w.rs {
		r.taken = -1
		r.there = r.kind == OfBar || r.kind == OfFrame || paths[r.index] != nil
		if !r.there {
			r.stale = true
			continue
		}
		r.spots = r.spots[:min(r.found, len(r.spots))]
		if r.stale || r.touchedBy(changed) {
			r.find(w.d, l, paths, w.f)
		}
		c.rs = append(c.rs, r)
	}
	c.run()
	if leaders {
		c.lead(w.f, l, paths)
	}
	return c.result()
}

// touchedBy reports whether something changed where the places of a request can lie.
func (r *request) touchedBy(changed []symbol.Box) bool {
	for _, z := range r.zones {
		for _, b := range changed {
			if arrange.Touch(z, b) {
				return true
			}
		}
	}
	return false
}

// survey puts all that stands before the labels on the field.
func (w *Writer) survey(l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell) {
	d, f := w.d, w.f
	f.reset()
	for w, p := range paths {
		for i := 1; i < len(p); i++ {
			f.line(p[i-1], p[i])
			f.cable(runOf(p[i-1], p[i], d.Wires[w].Thick))
		}
	}
	f.sum()
	for i := range d.Items {
		place := &l.Items[i]
		form := &d.Items[i].Forms[place.Form]
		for _, b := range form.Body {
			f.box(arrange.Grown(arrange.Shifted(b, place.At), gapBody))
		}
		for pin := range form.Pins {
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
		f.box(arrange.Grown(pointBox(c), gapDot))
	}
}

func pointBox(c symbol.Cell) symbol.Box {
	return symbol.Box{X0: float64(c.X), Y0: float64(c.Y), X1: float64(c.X), Y1: float64(c.Y)}
}

// stub is the box of a pin's stroke, from the pin to the body half a unit away.
func stub(at symbol.Cell, side symbol.Side) symbol.Box {
	b := pointBox(at)
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
	res := &Result{Labels: make([]Label, 0, len(c.rs))}
	for _, r := range c.rs {
		if r.taken < 0 {
			res.Missing = append(res.Missing, Label{Kind: r.kind, Index: r.index, End: r.end, Lines: r.words[0].Lines})
			continue
		}
		s := &r.spots[r.taken]
		l := Label{Kind: r.kind, Index: r.index, End: r.end, Words: s.words,
			Lines: r.words[s.words].Lines, At: s.at, Anchor: s.anchor, Turned: s.turned, Box: s.box, Cost: s.cost}
		if s.led {
			l.Leader = []ink.Point{s.leader[0], s.leader[1]}
			res.Leaders++
		}
		res.Labels = append(res.Labels, l)
	}
	return res
}

// standing is what stood on the sheet when places were last looked for.
type standing struct {
	items   []arrange.Place
	reach   []symbol.Box
	bars    []arrange.Span
	frames  []symbol.Box
	paths   [][]symbol.Cell
	dots    []symbol.Cell
	changed []symbol.Box
}

func newStanding(d *arrange.Diagram) standing {
	return standing{items: make([]arrange.Place, len(d.Items)), reach: make([]symbol.Box, len(d.Items)),
		bars: make([]arrange.Span, len(d.Bars)), frames: make([]symbol.Box, len(d.Frames)), paths: make([][]symbol.Cell, len(d.Wires))}
}

// note remembers what stands now and returns the boxes in which that differs from before.
func (s *standing) note(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, dots []symbol.Cell) []symbol.Box {
	s.changed = s.changed[:0]
	for i := range d.Items {
		now, was := &l.Items[i], &s.items[i]
		if now.Form == was.Form && now.At == was.At && now.Caption == was.Caption {
			continue
		}
		reach := l.Reach(d, i)
		s.changed = append(s.changed, s.reach[i], reach)
		s.reach[i], *was = reach, arrange.Place{Form: now.Form, At: now.At, Caption: now.Caption}
	}
	for i := range d.Bars {
		if l.Bars[i] != s.bars[i] {
			s.changed = append(s.changed, broad(s.bars[i].Box()), broad(l.Bars[i].Box()))
			s.bars[i] = l.Bars[i]
		}
	}
	for i := range d.Frames {
		if b := l.FrameBox(d, i); b != s.frames[i] {
			was, now := edges(s.frames[i]), edges(b)
			s.changed = append(append(s.changed, was[:]...), now[:]...)
			s.frames[i] = b
		}
	}
	for w, p := range paths {
		if !slices.Equal(p, s.paths[w]) {
			s.changedPath(s.paths[w])
			s.changedPath(p)
			s.paths[w] = append(s.paths[w][:0], p...)
		}
	}
	s.changedDots(dots)
	return s.changed
}

// broad gives a line some breadth, so that it can touch something.
func broad(b symbol.Box) symbol.Box { return arrange.Grown(b, 0.5) }

func (s *standing) changedPath(p []symbol.Cell) {
	for i := 1; i < len(p); i++ {
		s.changed = append(s.changed, broad(runOf(p[i-1], p[i], 0).box()))
	}
}

func (s *standing) changedDots(dots []symbol.Cell) {
	for _, c := range s.dots {
		if !slices.Contains(dots, c) {
			s.changed = append(s.changed, broad(pointBox(c)))
		}
	}
	for _, c := range dots {
		if !slices.Contains(s.dots, c) {
			s.changed = append(s.changed, broad(pointBox(c)))
		}
	}
	s.dots = append(s.dots[:0], dots...)
}
