package symbol

import (
	"math"

	"github.com/lugwright/lugwright/render/ink"
)

// box is a functional unit whose inside is not shown (IEC 60617 02-01-01; IEEE 315 1.3).
func box() entry {
	return entry{
		name: "box", iec: "02-01-01", ieee: "",
		build: func(ask Ask) Shape { return boxed(ask, mark{}) },
		examples: []example{{"unit", Ask{
			Lines:     []string{"A2", "tracker"},
			Terminals: []Terminal{{"+", "+", Top}, {"-", "−", Bottom}, {"ignition", "IGN", Left}},
		}}},
	}
}

// mark is a small symbol inside a box that says what it does.
type mark struct {
	wide, high float64                        // size in units; 0: no mark
	draw       func(d *drawing, x, y float64) // centred on a point
}

// Measures of a box, in units.
const (
	longestLabel = 14.0                   // a longer label is cut
	longestLine  = 24.0                   // a longer line is cut
	edge         = 0.5                    // from the pins to the edge of the box
	inset        = 0.4                    // from the edge to a label
	gap          = 0.8                    // between columns of text
	pitch        = 2                      // between pins of a side
	strip        = edge + inset + 1 + 0.3 // from a side with pins to below their labels
)

// boxed draws a box with labelled pins on all four sides, the lines of text and the mark in
// its middle. It grows with its text. Pins without a wish go left, then right.
func boxed(ask Ask, m mark) Shape {
	b := plan(ask, m)
	s := Shape{Body: []Box{{edge, edge, float64(b.w) - edge, float64(b.h) - edge}}, Pins: b.pins, Marked: true,
		beside: []Side{Top, Bottom, Right, Left}}
	s.draw = func(d *drawing) { b.draw(d) }
	return s
}

// boxPlan is where everything in a box stands.
type boxPlan struct {
	w, h   int
	pins   []Pin
	labels []string
	lines  []string
	middle ink.Point // of lines and mark
	mark   mark
}

func plan(ask Ask, m mark) boxPlan {
	sides := assign(ask.Terminals)
	labelled := func(s Side) float64 { return longest(ask, sides[s]) }
	left, right := column(labelled(Left)), column(labelled(Right))
	top, bottom := edge+inset, edge+inset
	firstRow, lastRow := pitch, pitch // distance of the outer rows from top and bottom
	if labelled(Top) > 0 {
		top, firstRow = strip, 3
	}
	if labelled(Bottom) > 0 {
		bottom, lastRow = strip, 3
	}
	textWide, textHigh := block(ask.Lines, m)

	wide := left + right + gap
	if textWide > 0 {
		wide += textWide + gap
	}
	tops, bottoms := spread(ask, sides[Top]), spread(ask, sides[Bottom])
	wide = max(wide, tops.needs(), bottoms.needs(), 4)
	w := 2 * int(math.Ceil(wide/2)) // even, so that a single pin stands in the middle

	rows := max(len(sides[Left]), len(sides[Right]))
	high := float64(firstRow + lastRow + pitch*max(0, rows-1))
	if textHigh > 0 {
		high = max(high, top+bottom+textHigh+0.8)
	}
	h := max(4, int(math.Ceil(high)))

	b := boxPlan{w: w, h: h, pins: make([]Pin, len(ask.Terminals)), labels: make([]string, len(ask.Terminals)), lines: ask.Lines, mark: m}
	b.middle = ink.At((left+float64(w)-right)/2, (top+float64(h)-bottom)/2)
	for i, t := range ask.Terminals {
		b.labels[i] = t.Label
	}
	set := func(i int, side Side, x, y int) { b.pins[i] = Pin{ask.Terminals[i].Name, Cell{x, y}, side} }
	for _, side := range []Side{Left, Right} {
		x := 0
		if side == Right {
			x = w
		}
		free := h - firstRow - lastRow - pitch*(len(sides[side])-1)
		for row, i := range sides[side] {
			set(i, side, x, firstRow+free/2+pitch*row)
		}
	}
	for i, x := range tops.at(w) {
		set(sides[Top][i], Top, x, 0)
	}
	for i, x := range bottoms.at(w) {
		set(sides[Bottom][i], Bottom, x, h)
	}
	return b
}

// column is what a side's labels take from the width of a box.
func column(label float64) float64 {
	if label == 0 {
		return edge
	}
	return edge + inset + label
}

// assign gives every terminal a side: its wish, or left for the first half of those
// without one and right for the others.
func assign(terminals []Terminal) map[Side][]int {
	sides := map[Side][]int{}
	var free []int
	for i, t := range terminals {
		if t.Side == AnySide {
			free = append(free, i)
			continue
		}
		sides[t.Side] = append(sides[t.Side], i)
	}
	half := (len(free) + 1) / 2
	sides[Left] = append(sides[Left], free[:half]...)
	sides[Right] = append(sides[Right], free[half:]...)
	return sides
}

func longest(ask Ask, terminals []int) float64 {
	most := 0.0
	for _, i := range terminals {
		most = max(most, ink.Width(ask.Terminals[i].Label, ink.Regular, 1))
	}
	return most
}

// block is the size of the lines with the mark under them.
func block(lines []string, m mark) (wide, high float64) {
	wide, high = m.wide, m.high
	for i, line := range lines {
		wide = max(wide, ink.Width(line, lineFace(i), 1))
	}
	if n := len(lines); n > 0 {
		high += 1 + float64(n-1)*ink.LineSpacing
		if m.high > 0 {
			high += markGap
		}
	}
	return wide, high
}

// markGap is the distance of a mark from the line above it.
const markGap = 0.7

func lineFace(i int) ink.Face {
	if i == 0 {
		return ink.Bold
	}
	return ink.Regular
}

// row is a side of a box whose labels stand side by side.
type row struct {
	offsets     []int   // of the pins from the first
	first, last float64 // half the widths of the outer labels
}

// spread keeps labels of neighbouring pins apart.
func spread(ask Ask, terminals []int) row {
	const apart = 0.6
	var r row
	before := 0.0
	for n, i := range terminals {
		half := ink.Width(ask.Terminals[i].Label, ink.Regular, 1) / 2
		if n == 0 {
			r.offsets, r.first = []int{0}, half
		} else {
			step := max(pitch, int(math.Ceil(before+half+apart)))
			r.offsets = append(r.offsets, r.offsets[n-1]+step)
		}
		before, r.last = half, half
	}
	return r
}

// span is the distance of the outer pins.
func (r row) span() int {
	if len(r.offsets) == 0 {
		return 0
	}
	return r.offsets[len(r.offsets)-1]
}

// needs is how wide a box must be for the row, a unit of slack for rounding included.
func (r row) needs() float64 {
	if len(r.offsets) == 0 {
		return 0
	}
	return float64(r.span()) + 2*(edge+inset+max(r.first, r.last, 0.6)) + 1
}

// at returns where the pins stand along a box of width w.
func (r row) at(w int) []int {
	xs := make([]int, len(r.offsets))
	for i, offset := range r.offsets {
		xs[i] = (w-r.span())/2 + offset
	}
	return xs
}

func (b boxPlan) draw(d *drawing) {
	w, h := float64(b.w), float64(b.h)
	d.rect(outline, edge, edge, w-edge, h-edge)
	for i, pin := range b.pins {
		x, y := float64(pin.At.X), float64(pin.At.Y)
		switch pin.Side {
		case Left:
			d.line(outline, x, y, x+edge, y)
			d.words(x+edge+inset, y, ink.Start, b.labels[i], ink.Regular)
		case Right:
			d.line(outline, x, y, x-edge, y)
			d.words(x-edge-inset, y, ink.End, b.labels[i], ink.Regular)
		case Top:
			d.line(outline, x, y, x, y+edge)
			d.words(x, y+edge+inset+0.5, ink.Middle, b.labels[i], ink.Regular)
		case Bottom:
			d.line(outline, x, y, x, y-edge)
			d.words(x, y-edge-inset-0.5, ink.Middle, b.labels[i], ink.Regular)
		}
	}
	b.drawBlock(d.straight(b.middle.X, b.middle.Y))
}

// drawBlock draws the lines and the mark around the origin of d.
func (b boxPlan) drawBlock(d *drawing) {
	_, high := block(b.lines, b.mark)
	y := -high / 2
	for i, line := range b.lines {
		d.words(0, y+0.5, ink.Middle, line, lineFace(i))
		y += ink.LineSpacing
	}
	if len(b.lines) > 0 {
		y += 1 - ink.LineSpacing + markGap
	}
	if b.mark.draw != nil {
		b.mark.draw(d, 0, y+b.mark.high/2)
	}
}
