package route

import (
	"math"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// A direction is a number from 0: right, down, left, up.
const (
	right = iota
	down
	left
	up
)

func opposite(dir int) int { return (dir + 2) & 3 }

// outward is the direction in which a wire leaves a pin on a side.
func outward(s symbol.Side) int {
	switch s {
	case symbol.Left:
		return left
	case symbol.Top:
		return up
	case symbol.Bottom:
		return down
	}
	return right
}

// none marks a point or stretch that nobody owns.
const none = -1

// grid is the field of points on which wires run, and who has them. A stretch is the line
// between two neighbouring points, filed under its left or upper one.
type grid struct {
	w, h   int
	delta  [4]int     // from a point to its neighbour in a direction
	xs, ys []int16    // of each point
	solid  []bool     // points inside a body or words
	shut   [2][]bool  // stretches to the right, downwards, that cut a body or words
	beside []uint8    // price of a point next to a body
	metal  []int32    // terminal that covers the point: a pin, its trunk, a bar
	front  []int32    // terminal whose pin lies one unit before the point
	owner  [2][]int32 // wire that runs on the stretch
	fights [2][]uint8 // how often the stretch was fought over
}

// newGrid makes a field whose outermost points are closed: a line there would be lost in
// the frame of the sheet. So no search ever leaves the field, and nothing has to look
// whether a neighbour is there.
func newGrid(w, h int) *grid {
	n := w * h
	g := &grid{w: w, h: h, delta: [4]int{1, w, -1, -w}, solid: make([]bool, n), beside: make([]uint8, n), metal: make([]int32, n), front: make([]int32, n)}
	g.xs, g.ys = make([]int16, n), make([]int16, n)
	for p := range n {
		g.xs[p], g.ys[p] = int16(p%w), int16(p/w)
	}
	for axis := range 2 {
		g.shut[axis] = make([]bool, n)
		g.owner[axis] = make([]int32, n)
		g.fights[axis] = make([]uint8, n)
	}
	g.reset()
	return g
}

// reset takes everything off the field.
func (g *grid) reset() {
	clear(g.solid)
	clear(g.beside)
	fill(g.metal)
	fill(g.front)
	for axis := range 2 {
		clear(g.shut[axis])
		fill(g.owner[axis])
		clear(g.fights[axis])
	}
	for x := range g.w {
		g.solid[x], g.solid[(g.h-1)*g.w+x] = true, true
	}
	for y := range g.h {
		g.solid[y*g.w], g.solid[y*g.w+g.w-1] = true, true
	}
}

func fill(s []int32) {
	for i := range s {
		s[i] = none
	}
}

// inside reports whether a point lies within the closed edge of the field.
func (g *grid) inside(x, y int) bool { return x > 0 && y > 0 && x < g.w-1 && y < g.h-1 }

func (g *grid) point(c symbol.Cell) int { return c.Y*g.w + c.X }

func (g *grid) cell(p int) symbol.Cell { return symbol.Cell{X: int(g.xs[p]), Y: int(g.ys[p])} }

// next returns the neighbour of a point inside.
func (g *grid) next(p, dir int) int { return p + g.delta[dir] }

// stretch returns the axis and index under which the line from p in a direction is filed.
func (g *grid) stretch(p, dir int) (axis, at int) {
	switch dir {
	case right:
		return 0, p
	case left:
		return 0, p - 1
	case down:
		return 1, p
	}
	return 1, p - g.w
}

// ownerOf returns the wire on the stretch from p in a direction, or none.
func (g *grid) ownerOf(p, dir int) int32 {
	axis, at := g.stretch(p, dir)
	return g.owner[axis][at]
}

// block closes everything strictly inside a box.
func (g *grid) block(b symbol.Box) {
	x0, x1 := within(b.X0, b.X1, g.w)
	y0, y1 := within(b.Y0, b.Y1, g.h)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			g.solid[y*g.w+x] = true
		}
		// stretches that enter or cut the box between two points
		for x := max(0, int(math.Floor(b.X0))); x < g.w-1 && float64(x) < b.X1; x++ {
			g.shut[0][y*g.w+x] = true
		}
	}
	for x := x0; x <= x1; x++ {
		for y := max(0, int(math.Floor(b.Y0))); y < g.h-1 && float64(y) < b.Y1; y++ {
			g.shut[1][y*g.w+x] = true
		}
	}
}

// within returns the first and last whole number strictly between two bounds, cut to 0..n-1.
func within(lo, hi float64, n int) (int, int) {
	return max(0, int(math.Floor(lo))+1), min(n-1, int(math.Ceil(hi))-1)
}

// shade makes the points next to a body dearer, those that touch it almost most of all.
func (g *grid) shade(b symbol.Box) {
	for _, ring := range [2]struct {
		margin float64
		price  uint8
	}{{1.01, priceBeside}, {0.6, priceTight}} {
		grown := arrange.Grown(b, ring.margin)
		x0, x1 := within(grown.X0, grown.X1, g.w)
		y0, y1 := within(grown.Y0, grown.Y1, g.h)
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				g.beside[y*g.w+x] = max(g.beside[y*g.w+x], ring.price)
			}
		}
	}
}
