package ink

import "math"

// At is short for a Point.
func At(x, y float64) Point { return Point{x, y} }

// Move begins a new piece of the path.
func (p Path) Move(x, y float64) Path { return append(p, Segment{Op: MoveTo, P: Point{x, y}}) }

// Line draws straight to a point.
func (p Path) Line(x, y float64) Path { return append(p, Segment{Op: LineTo, P: Point{x, y}}) }

// Curve draws a cubic Bezier to (x, y) with the control points c and d.
func (p Path) Curve(c, d Point, x, y float64) Path {
	return append(p, Segment{Op: CurveTo, P: Point{x, y}, C: c, D: d})
}

// Close draws straight to where the piece began.
func (p Path) Close() Path { return append(p, Segment{Op: ClosePath}) }

// Arc draws part of a circle, from one angle to another, in degrees clockwise from the
// positive x axis (y points down). It is joined to what is there by a straight line; on an
// empty path, or after Close, it begins a piece. Angles beyond a turn go round again.
func (p Path) Arc(centre Point, radius, from, to float64) Path {
	return p.EllipticArc(centre, radius, radius, from, to)
}

// EllipticArc is Arc on an upright ellipse; the angles are those of the circle before it
// is stretched.
func (p Path) EllipticArc(centre Point, rx, ry, from, to float64) Path {
	on := func(deg float64) Point {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return Point{centre.X + rx*cos, centre.Y + ry*sin}
	}
	start := on(from)
	if len(p) == 0 || p[len(p)-1].Op == ClosePath {
		p = p.Move(start.X, start.Y)
	} else if last := p[len(p)-1].P; math.Hypot(last.X-start.X, last.Y-start.Y) > 1e-9 {
		p = p.Line(start.X, start.Y)
	}
	// Beziers of at most a quarter turn stay within 0.03 % of the radius.
	steps := max(1, math.Ceil(math.Abs(to-from)/90-1e-9))
	step := (to - from) / steps
	reach := 4.0 / 3 * math.Tan(step*math.Pi/180/4)
	for i := range int(steps) {
		a, b := from+float64(i)*step, from+float64(i+1)*step
		sinA, cosA := math.Sincos(a * math.Pi / 180)
		sinB, cosB := math.Sincos(b * math.Pi / 180)
		start, end := on(a), on(b)
		p = p.Curve(
			Point{start.X - reach*rx*sinA, start.Y + reach*ry*cosA},
			Point{end.X + reach*rx*sinB, end.Y - reach*ry*cosB}, end.X, end.Y)
	}
	return p
}

// Lines is an open run of straight lines through the points.
func Lines(points ...Point) Path {
	p := make(Path, 0, len(points))
	for i, at := range points {
		if i == 0 {
			p = p.Move(at.X, at.Y)
		} else {
			p = p.Line(at.X, at.Y)
		}
	}
	return p
}

// Polygon is a closed run of straight lines through the points.
func Polygon(points ...Point) Path { return Lines(points...).Close() }

// Circle is a full circle.
func Circle(centre Point, radius float64) Path { return Path(nil).Arc(centre, radius, 0, 360).Close() }

// Ellipse is a full upright ellipse.
func Ellipse(centre Point, rx, ry float64) Path {
	return Path(nil).EllipticArc(centre, rx, ry, 0, 360).Close()
}

// Path is the outline of the rectangle.
func (r Rect) Path() Path {
	return Polygon(r.Min, Point{r.Max.X, r.Min.Y}, r.Max, Point{r.Min.X, r.Max.Y})
}

// Round is the outline of the rectangle with rounded corners.
func (r Rect) Round(radius float64) Path {
	radius = min(radius, r.Width()/2, r.Height()/2)
	var p Path
	p = p.Arc(Point{r.Max.X - radius, r.Min.Y + radius}, radius, -90, 0)
	p = p.Arc(Point{r.Max.X - radius, r.Max.Y - radius}, radius, 0, 90)
	p = p.Arc(Point{r.Min.X + radius, r.Max.Y - radius}, radius, 90, 180)
	p = p.Arc(Point{r.Min.X + radius, r.Min.Y + radius}, radius, 180, 270)
	return p.Close()
}

// Map returns the path with every point moved by f, which must be affine for curves to
// keep their shape.
func (p Path) Map(f func(Point) Point) Path {
	moved := make(Path, len(p))
	for i, s := range p {
		moved[i] = Segment{Op: s.Op}
		if s.Op != ClosePath {
			moved[i].P = f(s.P)
		}
		if s.Op == CurveTo {
			moved[i].C, moved[i].D = f(s.C), f(s.D)
		}
	}
	return moved
}
