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
	level  [][]int16 // level[y][x]: stretches of wire on row y left of x
	plumb  [][]int16 // plumb[x][y]: stretches of wire on column x above y
	boxes  []symbol.Box
	bounds symbol.Box
	cells  [][]int32 // boxes by coarse cell
	cw     int
}

// coarse is the size of a cell of the box index, in units.
const coarse = 8

func newField(w, h int) *field {
	f := &field{w: w, h: h, bounds: symbol.Box{X1: float64(w), Y1: float64(h)}, cw: w/coarse + 1}
	f.level, f.plumb = make([][]int16, h+1), make([][]int16, w+1)
	for y := range f.level {
		f.level[y] = make([]int16, w+2)
	}
	for x := range f.plumb {
		f.plumb[x] = make([]int16, h+2)
	}
	f.cells = make([][]int32, f.cw*(h/coarse+1))
	return f
}

// line adds a level or upright line.
func (f *field) line(a, b symbol.Cell) {
	if a.Y == b.Y {
		for x := min(a.X, b.X); x < max(a.X, b.X); x++ {
			f.level[a.Y][x+1]++
		}
		return
	}
	for y := min(a.Y, b.Y); y < max(a.Y, b.Y); y++ {
		f.plumb[a.X][y+1]++
	}
}

// sum turns the counts into running sums; it must be called once, after the last line.
func (f *field) sum() {
	for _, rows := range [2][][]int16{f.level, f.plumb} {
		for _, row := range rows {
			for i := 1; i < len(row); i++ {
				row[i] += row[i-1]
			}
		}
	}
}

// box adds a closed box.
func (f *field) box(b symbol.Box) {
	n := int32(len(f.boxes))
	f.boxes = append(f.boxes, b)
	f.visit(b, func(cell int) bool {
		f.cells[cell] = append(f.cells[cell], n)
		return true
	})
}

// visit calls fn for each coarse cell that a box touches, until it returns false.
func (f *field) visit(b symbol.Box, fn func(cell int) bool) {
	x0, x1 := max(0, int(b.X0))/coarse, min(f.w, max(0, int(b.X1)))/coarse
	y0, y1 := max(0, int(b.Y0))/coarse, min(f.h, max(0, int(b.Y1)))/coarse
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if !fn(y*f.cw + x) {
				return
			}
		}
	}
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
	return !f.crossed(wide) && !f.covered(b)
}

// crossed reports whether a line of a wire touches the inside of a box.
func (f *field) crossed(b symbol.Box) bool {
	x0, x1 := clampInt(int(math.Floor(b.X0)), f.w), clampInt(int(math.Ceil(b.X1)), f.w)
	y0, y1 := clampInt(int(math.Floor(b.Y0)), f.h), clampInt(int(math.Ceil(b.Y1)), f.h)
	for y := y0; y <= y1; y++ {
		if v := float64(y); v > b.Y0 && v < b.Y1 && f.level[y][x1]-f.level[y][x0] > 0 && f.levelInside(y, b) {
			return true
		}
	}
	for x := x0; x <= x1; x++ {
		if v := float64(x); v > b.X0 && v < b.X1 && f.plumb[x][y1]-f.plumb[x][y0] > 0 && f.plumbInside(x, b) {
			return true
		}
	}
	return false
}

// levelInside and plumbInside look at the stretches one by one, since the first and last
// may only touch the box from outside.
func (f *field) levelInside(y int, b symbol.Box) bool {
	for x := max(0, int(math.Floor(b.X0))); x < f.w && float64(x) < b.X1; x++ {
		if f.level[y][x+1] > f.level[y][x] && float64(x+1) > b.X0 {
			return true
		}
	}
	return false
}

func (f *field) plumbInside(x int, b symbol.Box) bool {
	for y := max(0, int(math.Floor(b.Y0))); y < f.h && float64(y) < b.Y1; y++ {
		if f.plumb[x][y+1] > f.plumb[x][y] && float64(y+1) > b.Y0 {
			return true
		}
	}
	return false
}

// covered reports whether a closed box overlaps b.
func (f *field) covered(b symbol.Box) bool {
	hit := false
	f.visit(b, func(cell int) bool {
		for _, n := range f.cells[cell] {
			if arrange.Touch(f.boxes[n], b) {
				hit = true
				return false
			}
		}
		return true
	})
	return hit
}

func clampInt(v, hi int) int { return max(0, min(v, hi)) }
