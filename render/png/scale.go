package png

import (
	"math"
	"math/bits"

	"github.com/lugwright/lugwright/render/ink"
)

// one is a pixel: coordinates are in 256ths of it.
const one = 256

// place is a point of the picture.
type place struct{ x, y int64 }

func (p place) plus(q place) place  { return place{p.x + q.x, p.y + q.y} }
func (p place) minus(q place) place { return place{p.x - q.x, p.y - q.y} }

func dot(a, b place) int64   { return a.x*b.x + a.y*b.y }
func cross(a, b place) int64 { return a.x*b.y - a.y*b.x }

// run is a line through points; a closed one goes on from the last to the first.
type run struct {
	points []place
	closed bool
}

// scale turns millimetres to pixels.
type scale struct{ dpi int64 }

const micrometresPerInch = 25_400

// micrometres rounds a length. The limit between two values lies a little beside the middle,
// on which no coordinate of a drawing lies by intent, so that machines which differ in the
// last bit of it still agree.
func micrometres(mm float64) int64 {
	const beside = 0.487
	return int64(math.Floor(float64(mm*1000) + beside))
}

// length in 256ths of a pixel.
func (s scale) length(mm float64) int64 {
	return floorDiv(micrometres(mm)*s.dpi*one+micrometresPerInch/2, micrometresPerInch)
}

func (s scale) place(p ink.Point) place { return place{s.length(p.X), s.length(p.Y)} }

// pixels of a length, to the nearest; 0 for one that is no length.
func (s scale) pixels(mm float64) int {
	const most = 1e6 // millimetres, as ink.Checked has it
	if !(mm > 0 && mm < most) {
		return 0
	}
	return int(floorDiv(s.length(mm)+one/2, one))
}

// flatten turns a path into runs of straight lines.
func (s scale) flatten(p ink.Path) []run {
	var runs []run
	var now run
	end := func() {
		if len(now.points) > 1 {
			runs = append(runs, now)
		}
	}
	for _, segment := range p {
		switch segment.Op {
		case ink.MoveTo:
			end()
			now = run{points: []place{s.place(segment.P)}}
		case ink.LineTo:
			now.points = append(now.points, s.place(segment.P))
		case ink.CurveTo:
			from := now.points[len(now.points)-1]
			now.points = appendCurve(now.points, from, s.place(segment.C), s.place(segment.D), s.place(segment.P))
		case ink.ClosePath:
			first := now.points[0]
			now.closed = true
			end()
			now = run{points: []place{first}}
		}
	}
	end()
	return runs
}

// Bounds of the number of lines that a curve becomes, and how far these may stray from it.
const (
	mostLines = 200
	stray     = one / 16
)

// appendCurve adds the points of a cubic Bézier. Straight pieces of equal share stray from it
// by at most 3/4 of its largest second difference over the square of their number.
func appendCurve(points []place, a, b, c, d place) []place {
	bend := int64(0)
	for _, v := range []place{a.minus(b).plus(c).minus(b), b.minus(c).plus(d).minus(c)} {
		bend = max(bend, v.x, -v.x, v.y, -v.y)
	}
	n := min(isqrt(bend*3/(4*stray))+1, mostLines)
	for i := int64(1); i <= n; i++ {
		j := n - i
		at := func(a, b, c, d int64) int64 {
			return round(a*j*j*j+3*b*j*j*i+3*c*j*i*i+d*i*i*i, n*n*n)
		}
		points = append(points, place{at(a.x, b.x, c.x, d.x), at(a.y, b.y, c.y, d.y)})
	}
	return points
}

// floorDiv divides and rounds down; b is positive.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// round divides to the nearest; b is positive.
func round(a, b int64) int64 { return floorDiv(2*a+b, 2*b) }

// isqrt is the whole part of a square root, by Newton's method from above.
func isqrt(v int64) int64 {
	if v <= 0 {
		return 0
	}
	r := int64(1) << ((bits.Len64(uint64(v)) + 1) / 2)
	for {
		next := (r + v/r) / 2
		if next >= r {
			return r
		}
		r = next
	}
}

// towards returns a vector of a length in the direction of v, which may not be zero.
func towards(v place, length int64) place {
	const finer = 8 // bits that the length of v is taken to beyond whole ones
	long := isqrt(dot(v, v) << (2 * finer))
	return place{round(v.x*length<<finer, long), round(v.y*length<<finer, long)}
}
