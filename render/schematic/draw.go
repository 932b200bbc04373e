package schematic

import (
	"strings"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/symbol"
)

// Draw puts the sheet on a page. The origin of the page must be the upper left corner of
// the drawing area.
func (s *Sheet) Draw(page ink.Page) {
	p := pen{page, s.unit}
	s.drawFrames(p)
	s.drawBars(p)
	s.drawWires(p)
	s.drawDots(p)
	s.drawParts(p)
	s.drawLabels(p)
}

// pen draws in units of the grid.
type pen struct {
	page ink.Page
	unit float64 // millimetres
}

func (p pen) at(x, y float64) ink.Point { return ink.Point{X: x * p.unit, Y: y * p.unit} }

func (p pen) cell(c symbol.Cell) ink.Point { return p.at(float64(c.X), float64(c.Y)) }

func (p pen) lines(cs []symbol.Cell, s ink.Style) {
	points := make([]ink.Point, len(cs))
	for i, c := range cs {
		points[i] = p.cell(c)
	}
	p.page.Path(ink.Lines(points...), s)
}

// text writes a line whose blanks are boxes to fill in.
func (p pen) text(at ink.Point, anchor ink.Anchor, turned bool, s string, face ink.Face) {
	if !strings.ContainsRune(s, Blank) {
		p.page.Text(ink.Text{At: p.at(at.X, at.Y), String: s, Capital: p.unit, Face: face, Anchor: anchor, Turned: turned})
		return
	}
	p.blanks(at, anchor, turned, s, face)
}

// blanks writes the runs of a line and the boxes between them, from its left end on.
func (p pen) blanks(at ink.Point, anchor ink.Anchor, turned bool, s string, face ink.Face) {
	long := 0.0
	for _, run := range runsOf(s) {
		long += runWidth(run, face)
	}
	off := 0.0
	switch anchor {
	case ink.Middle:
		off = -long / 2
	case ink.End:
		off = -long
	}
	for _, run := range runsOf(s) {
		here := ink.Point{X: at.X + off, Y: at.Y}
		if turned {
			here = ink.Point{X: at.X, Y: at.Y - off}
		}
		if run == string(Blank) {
			p.blank(here, turned)
		} else {
			p.page.Text(ink.Text{At: p.at(here.X, here.Y), String: run, Capital: p.unit, Face: face, Turned: turned})
		}
		off += runWidth(run, face)
	}
}

func runsOf(s string) []string {
	var runs []string
	for i, part := range strings.Split(s, string(Blank)) {
		if i > 0 {
			runs = append(runs, string(Blank))
		}
		if part != "" {
			runs = append(runs, part)
		}
	}
	return runs
}

func runWidth(run string, face ink.Face) float64 {
	if run == string(Blank) {
		return blankWidth
	}
	return ink.Width(run, face, 1)
}

func (p pen) blank(at ink.Point, turned bool) {
	w, h := blankWidth-0.3, 1.05
	a, b := p.at(at.X+0.1, at.Y-h), p.at(at.X+0.1+w, at.Y+0.1)
	if turned {
		a, b = p.at(at.X-h, at.Y-0.1-w), p.at(at.X+0.1, at.Y-0.1)
	}
	p.page.Path(ink.Rect{Min: a, Max: b}.Path(), ink.Pen(ink.Thin))
}

func (s *Sheet) drawFrames(p pen) {
	for i := range s.g.d.Frames {
		b := s.c.layout.FrameBox(&s.g.d, i)
		p.page.Open(ink.Group{Class: "enclosure", Name: s.g.d.Frames[i].Name})
		p.page.Path(ink.Rect{Min: p.at(b.X0, b.Y0), Max: p.at(b.X1, b.Y1)}.Path(), ink.Pen(ink.Thin).DashDotted())
		p.page.Close()
	}
}

// drawBars draws rails and splices in black: they are metal, not wire.
func (s *Sheet) drawBars(p pen) {
	for i := range s.g.d.Bars {
		b := s.c.layout.Bars[i]
		p.page.Open(ink.Group{Class: "rail", Name: s.g.d.Bars[i].Name})
		p.lines([]symbol.Cell{b.At, b.End()}, ink.Pen(s.g.d.Bars[i].Width()*p.unit))
		p.page.Close()
	}
}

// dotRadius is that of a joint, in units: wider than the rails, so that it is seen on them.
const dotRadius = 0.32

func (s *Sheet) drawDots(p pen) {
	p.page.Open(ink.Group{Class: "joints"})
	for _, c := range s.c.routes.Dots {
		p.page.Path(ink.Circle(p.cell(c), dotRadius*p.unit), ink.Area(ink.Color{}))
	}
	p.page.Close()
}

func (s *Sheet) drawParts(p pen) {
	for i, it := range s.g.items {
		place := s.c.layout.Items[i]
		form := s.g.d.Items[i].Forms[place.Form]
		at := form.Placement
		at.At = place.At
		p.page.Open(s.partGroup(i))
		s.shape(it, place).Draw(p.page, at, p.unit)
		s.drawPins(p, i)
		if len(form.Captions) > 0 {
			for _, ln := range form.Captions[place.Caption].Lines {
				p.text(ink.Point{X: ln.At.X + float64(place.At.X), Y: ln.At.Y + float64(place.At.Y)}, ln.Anchor, false, s.finalText(it, ln.Text), ln.Face)
			}
		}
		p.page.Close()
	}
}

// partGroup says what the marks of an item mean.
func (s *Sheet) partGroup(i int) ink.Group {
	it := s.g.items[i]
	if it.flag != nil {
		return ink.Group{Class: "flag", Name: s.g.d.Items[i].Name}
	}
	title := it.device.name + " " + it.device.part.Short()
	return ink.Group{Class: "part", Name: it.device.name, Title: title, Data: map[string]string{"kind": it.device.part.Kind.Name}}
}

// drawPins marks where the pins are, for those who read the file and not the paper.
func (s *Sheet) drawPins(p pen, i int) {
	for pin, t := range s.g.items[i].ask.Terminals {
		c, side := s.c.layout.Pin(&s.g.d, i, pin)
		at := p.cell(c)
		if tails := s.g.items[i].tails; tails != nil && tails[pin] {
			p.lines([]symbol.Cell{c, outward(c, side, -tailLength)}, ink.Pen(ink.Medium))
		}
		p.page.Open(ink.Group{Class: "pin", Name: t.Name})
		p.page.Path(ink.Lines(at, at), ink.Style{})
		p.page.Close()
	}
}

// shape is the symbol of an item with its pins in the order of the layout.
func (s *Sheet) shape(it *part, place arrange.Place) symbol.Shape {
	if place.Slot == nil {
		return it.shape
	}
	ask := it.ask
	ask.Terminals = make([]symbol.Terminal, len(it.ask.Terminals))
	for pin, slot := range place.Slot {
		ask.Terminals[slot] = it.ask.Terminals[pin]
	}
	shape, err := symbol.Build(it.symbol, ask)
	if err != nil {
		return it.shape // cannot be: the same terminals were built before
	}
	return shape
}

func (s *Sheet) drawLabels(p pen) {
	for _, l := range s.c.labels.Labels {
		p.page.Open(ink.Group{Class: labelClass(l.Kind), Name: s.labelName(&l)})
		if l.Leader != nil {
			p.page.Path(ink.Lines(p.at(l.Leader[0].X, l.Leader[0].Y), p.at(l.Leader[1].X, l.Leader[1].Y)), ink.Pen(ink.Thin))
		}
		for i, line := range l.Lines {
			face := ink.Regular
			if l.Kind == label.OfBar && i == 0 {
				face = ink.Bold
			}
			p.text(ink.Point{X: l.At.X, Y: l.At.Y + ink.LineSpacing*float64(i)}, l.Anchor, l.Turned, s.finalLabel(&l, line), face)
		}
		p.page.Close()
	}
}

func (s *Sheet) labelName(l *label.Label) string {
	switch l.Kind {
	case label.OfBar:
		return s.g.d.Bars[l.Index].Name
	case label.OfFrame:
		return s.g.d.Frames[l.Index].Name
	}
	return s.g.d.Wires[l.Index].Name
}

// labelClass tells the label of a wire from other words.
func labelClass(k label.Kind) string {
	if k == label.OfWire {
		return "label"
	}
	return "name"
}
