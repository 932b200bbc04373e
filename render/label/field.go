package label

import (
	"math"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// field knows what stands on the sheet before any label does. Lines of wires lie on the
// grid, so that a running sum over each row and column answers at once whether a box
// touches one.
type field struct {
	w, h   int
	level  []int16 // row by row: stretches of wire on row y left of x
	plumb  []int16 // column by column: stretches of wire on column x above y
	boxes  []symbol.Box
	bounds symbol.Box
	cells  [][]int32 // boxes by coarse cell
	cw     int
	cables []symbol.Box // lines so broad that the distance from their middle does not clear them
}

// coarse is the size of a cell of the box index, in units.
const coarse = 4

func newField(w, h int) *field {
	f := &field{w: w, h: h, bounds: symbol.Box{X1: float64(w), Y1: float64(h)}, cw: w/coarse + 1}
	f.level, f.plumb = make([]int16, (h+1)*(w+2)), make([]int16, (w+1)*(h+2))
	f.cells = make([][]int32, f.cw*(h/coarse+1))
	return f
}

// reset takes everything off the field.
func (f *field) reset() {
	clear(f.level)
	clear(f.plumb)
	f.boxes, f.cables = f.boxes[:0], f.cables[:0]
	for i := range f.cells {
		f.cells[i] = f.cells[i][:0]
	}
}

// row and column are the running sums of one row or column.
func (f *field) row(y int) []int16    { return f.level[y*(f.w+2) : (y+1)*(f.w+2)] }
func (f *field) column(x int) []int16 { return f.plumb[x*(f.h+2) : (x+1)*(f.h+2)] }

// line adds a level or upright line.
func (f *field) line(a, b symbol.Cell) {
	if a.Y == b.Y {
		row := f.row(a.Y)
		for x := min(a.X, b.X); x < max(a.X, b.X); x++ {
			row[x+1]++
		}
		return
	}
	column := f.column(a.X)
	for y := min(a.Y, b.Y); y < max(a.Y, b.Y); y++ {
		column[y+1]++
	}
}

// sum turns the counts into running sums; it must be called once, after the last line.
func (f *field) sum() {
	for y := 0; y <= f.h; y++ {
		runningSum(f.row(y))
	}
	for x := 0; x <= f.w; x++ {
		runningSum(f.column(x))
	}
}

func runningSum(s []int16) {
	n := int16(0)
	for i, v := range s {
		n += v
		s[i] = n
	}
}

// box adds a closed box.
func (f *field) box(b symbol.Box) {
	n := int32(len(f.boxes))
	f.boxes = append(f.boxes, b)
	x0, x1, y0, y1 := f.span(b)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			f.cells[y*f.cw+x] = append(f.cells[y*f.cw+x], n)
		}
	}
}

// span returns the first and last coarse column and row that a box touches.
func (f *field) span(b symbol.Box) (x0, x1, y0, y1 int) {
	return clampInt(int(b.X0), f.w) / coarse, clampInt(int(b.X1), f.w) / coarse,
		clampInt(int(b.Y0), f.h) / coarse, clampInt(int(b.Y1), f.h) / coarse
}

// edge says on which side of a box the line lies that it belongs to.
type edge uint8

const (
	noEdge edge = iota
	onLeft
	onRight
	onTop
	onBottom
)

// free reports whether a box lies on the sheet and keeps its distance from all that stands
// there. The line that it belongs to may be nearer than others.
func (f *field) free(b symbol.Box, own edge) bool {
	if b.X0 < 0 || b.Y0 < 0 || b.X1 > f.bounds.X1 || b.Y1 > f.bounds.Y1 {
		return false
	}
	wide := arrange.Grown(b, gapLine)
	switch own {
	case onLeft:
		wide.X0 = b.X0 - gapOwn/2
	case onRight:
		wide.X1 = b.X1 + gapOwn/2
	case onTop:
		wide.Y0 = b.Y0 - gapOwn/2
	case onBottom:
		wide.Y1 = b.Y1 + gapOwn/2
	}
	return !f.crossed(wide) && !f.covered(b) && !f.onCable(b)
}

// gapCable is what words keep from the edge of a cable, in units.
const gapCable = 0.1

// cable notes the breadth of a line, if that matters.
func (f *field) cable(r run) {
	if half := r.thick/2 + gapCable; half > gapLine {
		f.cables = append(f.cables, arrange.Grown(r.box(), half))
	}
}

// onCable reports whether a box touches the breadth of a cable.
func (f *field) onCable(b symbol.Box) bool {
	for _, c := range f.cables {
		if arrange.Touch(c, b) {
			return true
		}
	}
	return false
}

// crossed reports whether a line of a wire touches the inside of a box.
func (f *field) crossed(b symbol.Box) bool {
	x0, x1 := clampInt(int(math.Floor(b.X0)), f.w), clampInt(int(math.Ceil(b.X1)), f.w)
	y0, y1 := clampInt(int(math.Floor(b.Y0)), f.h), clampInt(int(math.Ceil(b.Y1)), f.h)
	for y := y0; y <= y1; y++ {
		if v := float64(y); v > b.Y0 && v < b.Y1 {
			if row := f.row(y); row[x1] > row[x0] && inside(row, b.X0, b.X1, f.w) {
				return true
			}
		}
	}
	for x := x0; x <= x1; x++ {
		if v := float64(x); v > b.X0 && v < b.X1 {
			if column := f.column(x); column[y1] > column[y0] && inside(column, b.Y0, b.Y1, f.h) {
				return true
			}
		}
	}
	return false
}

// inside looks at the stretches of a row or column one by one, since the first and last may
// only touch the box from outside.
func inside(sums []int16, lo, hi float64, n int) bool {
	for i := max(0, int(math.Floor(lo))); i < n && float64(i) < hi; i++ {
		if sums[i+1] > sums[i] && float64(i+1) > lo {
			return true
		}
	}
	return false
}

// covered reports whether a closed box overlaps b.
func (f *field) covered(b symbol.Box) bool {
	x0, x1, y0, y1 := f.span(b)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			for _, n := range f.cells[y*f.cw+x] {
				if arrange.Touch(f.boxes[n], b) {
					return true
				}
			}
		}
	}
	return false
}

// cutBy reports whether a slanted line touches the inside of a closed box.
func (f *field) cutBy(a, b point) bool {
	x0, x1, y0, y1 := f.span(symbol.Box{X0: min(a.X, b.X), X1: max(a.X, b.X), Y0: min(a.Y, b.Y), Y1: max(a.Y, b.Y)})
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			for _, n := range f.cells[y*f.cw+x] {
				if cuts(a, b, f.boxes[n]) {
					return true
				}
			}
		}
	}
	return false
}

func clampInt(v, hi int) int { return max(0, min(v, hi)) }
