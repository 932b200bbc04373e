package arrange

import (
	"math"
	"slices"

	"github.com/lugwright/lugwright/render/symbol"
)

// Layout says where everything of a diagram stands, index by index.
type Layout struct {
	Items []Place
	Bars  []Span
}

// Place is where and how an item stands.
type Place struct {
	Form    int
	At      symbol.Cell // of the form's origin
	Caption int         // index into the form's captions; of no meaning without captions
	Slot    []int       // where each pin stands, as an index into the form's pins; nil: in order
}

// Span is the line of a bar: Length units from At to the right, or downwards.
type Span struct {
	At      symbol.Cell
	Length  int
	Upright bool
}

// Clone returns a copy that shares nothing.
func (l *Layout) Clone() *Layout {
	c := &Layout{Items: slices.Clone(l.Items), Bars: slices.Clone(l.Bars)}
	for i := range c.Items {
		c.Items[i].Slot = slices.Clone(c.Items[i].Slot)
	}
	return c
}

// End returns the last cell of the span.
func (s Span) End() symbol.Cell { return s.Cell(s.Length) }

// Cell returns the cell i units along the span.
func (s Span) Cell(i int) symbol.Cell {
	if s.Upright {
		return symbol.Cell{X: s.At.X, Y: s.At.Y + i}
	}
	return symbol.Cell{X: s.At.X + i, Y: s.At.Y}
}

// Box returns the span as a box without breadth.
func (s Span) Box() symbol.Box {
	e := s.End()
	return symbol.Box{X0: float64(s.At.X), Y0: float64(s.At.Y), X1: float64(e.X), Y1: float64(e.Y)}
}

// Pin returns where a pin of an item stands and on which side a wire leaves it.
func (l *Layout) Pin(d *Diagram, item, pin int) (symbol.Cell, symbol.Side) {
	p := &l.Items[item]
	slot := pin
	if p.Slot != nil {
		slot = p.Slot[pin]
	}
	at := d.Items[item].Forms[p.Form].Pins[slot]
	return symbol.Cell{X: p.At.X + at.At.X, Y: p.At.Y + at.At.Y}, at.Side
}

// Bodies returns the boxes that the item's ink covers.
func (l *Layout) Bodies(d *Diagram, item int) []symbol.Box {
	p := &l.Items[item]
	form := &d.Items[item].Forms[p.Form]
	boxes := make([]symbol.Box, len(form.Body))
	for i, b := range form.Body {
		boxes[i] = Shifted(b, p.At)
	}
	return boxes
}

// Reach returns the hull of an item's bodies, pins and words.
func (l *Layout) Reach(d *Diagram, item int) symbol.Box {
	p := &l.Items[item]
	form := &d.Items[item].Forms[p.Form]
	hull := Hull(form.Body)
	if len(form.Body) == 0 && len(form.Pins) > 0 {
		x, y := float64(form.Pins[0].At.X), float64(form.Pins[0].At.Y)
		hull = symbol.Box{X0: x, Y0: y, X1: x, Y1: y}
	}
	for _, pin := range form.Pins {
		x, y := float64(pin.At.X), float64(pin.At.Y)
		hull = symbol.Box{X0: min(hull.X0, x), Y0: min(hull.Y0, y), X1: max(hull.X1, x), Y1: max(hull.Y1, y)}
	}
	if len(form.Captions) > 0 {
		hull = Hull([]symbol.Box{hull, form.Captions[p.Caption].Box})
	}
	return Shifted(hull, p.At)
}

// Pull moves an item that reaches over the edge of the sheet, or over the rows of the
// rails, back between them.
func (l *Layout) Pull(d *Diagram, item int) {
	b := l.Reach(d, item)
	top, foot := d.Rows()
	at := &l.Items[item].At
	at.X += int(math.Ceil(max(1-b.X0, 0))) - int(math.Ceil(max(b.X1-float64(d.Width-1), 0)))
	at.Y += int(math.Ceil(max(float64(top+1)-b.Y0, 0))) - int(math.Ceil(max(b.Y1-float64(foot-1), 0)))
}

// CaptionBox returns what the item's words cover; the second result is false if it has none.
func (l *Layout) CaptionBox(d *Diagram, item int) (symbol.Box, bool) {
	p := &l.Items[item]
	form := &d.Items[item].Forms[p.Form]
	if len(form.Captions) == 0 {
		return symbol.Box{}, false
	}
	return Shifted(form.Captions[p.Caption].Box, p.At), true
}

// FrameMargin is how far a frame stays from what it holds, in units. The half keeps its
// line off the grid, so that no wire can run along it.
const FrameMargin = 1.5

// FrameBox returns the box of a frame.
func (l *Layout) FrameBox(d *Diagram, frame int) symbol.Box {
	f := &d.Frames[frame]
	var all []symbol.Box
	for _, i := range f.Items {
		all = append(all, l.Bodies(d, i)...)
		if c, ok := l.CaptionBox(d, i); ok {
			all = append(all, c)
		}
	}
	for _, b := range f.Bars {
		all = append(all, l.Bars[b].Box())
	}
	box := Hull(all)
	return symbol.Box{X0: max(0.5, floorHalf(box.X0-1)), Y0: floorHalf(box.Y0), X1: min(float64(d.Width)-0.5, -floorHalf(-box.X1-1)), Y1: -floorHalf(-box.Y1 - 1)}
}
