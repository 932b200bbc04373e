package ink

import "math"

// Width of the rectangle in millimetres.
func (r Rect) Width() float64 { return r.Max.X - r.Min.X }

// Height of the rectangle in millimetres.
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Grow moves every side outwards by d millimetres, or inwards if d is negative.
func (r Rect) Grow(d float64) Rect {
	return Rect{Point{r.Min.X - d, r.Min.Y - d}, Point{r.Max.X + d, r.Max.Y + d}}
}

// Holds reports whether other lies within r, edges included.
func (r Rect) Holds(other Rect) bool {
	return other.Min.X >= r.Min.X && other.Min.Y >= r.Min.Y && other.Max.X <= r.Max.X && other.Max.Y <= r.Max.Y
}

// Meets reports whether the two share more than an edge.
func (r Rect) Meets(other Rect) bool {
	return r.Min.X < other.Max.X && other.Min.X < r.Max.X && r.Min.Y < other.Max.Y && other.Min.Y < r.Max.Y
}

// Union returns the smallest rectangle around both.
func (r Rect) Union(other Rect) Rect {
	return Rect{
		Point{min(r.Min.X, other.Min.X), min(r.Min.Y, other.Min.Y)},
		Point{max(r.Max.X, other.Max.X), max(r.Max.Y, other.Max.Y)},
	}
}

// Bounds returns the smallest rectangle around the path's line, without its width. It
// reports false for a path that draws nothing.
func (p Path) Bounds() (Rect, bool) {
	var box Rect
	any := false
	for _, run := range p.Flatten(0.005) {
		for _, at := range run {
			if !any {
				box, any = Rect{at, at}, true
				continue
			}
			box = box.Union(Rect{at, at})
		}
	}
	return box, any
}

// Flatten turns the path into runs of straight lines that stay within tolerance
// millimetres of its curves. A closed run ends at the point where it began; a MoveTo that
// draws nothing is left out. A path that does not begin with MoveTo begins at the origin,
// as though it had.
func (p Path) Flatten(tolerance float64) [][]Point {
	var runs [][]Point
	var run []Point
	flush := func(next Point) {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = []Point{next}
	}
	flush(Point{})
	for _, s := range p {
		switch s.Op {
		case MoveTo:
			flush(s.P)
		case LineTo:
			run = append(run, s.P)
		case CurveTo:
			run = appendCurve(run, s, tolerance)
		case ClosePath:
			begin := run[0]
			run = append(run, begin)
			flush(begin)
		}
	}
	flush(Point{})
	return runs
}

// mostPieces bounds the work on one curve, whatever its size.
const mostPieces = 256

// appendCurve adds a Bezier as n straight pieces of equal steps; by Wang's formula they stay
// within 3/4·L/n² of it, where L is the greater of its two second differences.
func appendCurve(run []Point, s Segment, tolerance float64) []Point {
	a, c, d, b := run[len(run)-1], s.C, s.D, s.P
	bend := max(math.Hypot(a.X-2*c.X+d.X, a.Y-2*c.Y+d.Y), math.Hypot(c.X-2*d.X+b.X, c.Y-2*d.Y+b.Y))
	n := mostPieces
	if need := math.Ceil(math.Sqrt(0.75 * bend / tolerance)); need < mostPieces {
		n = max(1, int(need)) // a NaN keeps the bound
	}
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		run = append(run, Point{
			u*u*u*a.X + 3*u*u*t*c.X + 3*u*t*t*d.X + t*t*t*b.X,
			u*u*u*a.Y + 3*u*u*t*c.Y + 3*u*t*t*d.Y + t*t*t*b.Y,
		})
	}
	return run
}
