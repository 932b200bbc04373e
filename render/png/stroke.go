package png

import "slices"

// pen draws lines of a width.
type pen struct {
	half  int64 // of the width
	round bool  // ends and corners, instead of cut off and pointed
}

// stroke returns the outlines of a run, to be filled by the non-zero rule: one around an open
// run, two along the sides of a closed one.
func (p pen) stroke(r run) [][]place {
	points := slices.Compact(slices.Clone(r.points))
	if r.closed && len(points) > 1 && points[0] == points[len(points)-1] {
		points = points[:len(points)-1]
	}
	if len(points) < 2 {
		return p.point(r.points[0])
	}
	back := slices.Clone(points)
	slices.Reverse(back)
	if r.closed && len(points) > 2 {
		return [][]place{p.ring(points), p.ring(back)}
	}
	return [][]place{append(p.side(points), p.side(back)...)}
}

// point is what is left of a run without length: its two ends, if they are round.
func (p pen) point(at place) [][]place {
	if !p.round {
		return nil
	}
	north, south := place{0, -p.half}, place{0, p.half}
	outline := p.arc(nil, at, north, south)
	return [][]place{p.arc(outline, at, south, north)}
}

// side goes along the left side of an open run and round its end.
func (p pen) side(points []place) []place {
	var outline []place
	last := len(points) - 1
	for i := 1; i <= last; i++ {
		off := p.left(points[i-1], points[i])
		outline = append(outline, points[i-1].plus(off), points[i].plus(off))
		switch {
		case i < last:
			outline = p.corner(outline, points[i-1], points[i], points[i+1])
		case p.round:
			outline = p.arc(outline, points[i], off, place{-off.x, -off.y})
		}
	}
	return outline
}

// ring goes along the left side of a closed run.
func (p pen) ring(points []place) []place {
	var outline []place
	n := len(points)
	for i := range n {
		a, b, c := points[i], points[(i+1)%n], points[(i+2)%n]
		off := p.left(a, b)
		outline = append(outline, a.plus(off), b.plus(off))
		outline = p.corner(outline, a, b, c)
	}
	return outline
}

// left is from a line to its left side; y runs downwards.
func (p pen) left(a, b place) place {
	d := towards(b.minus(a), p.half)
	return place{d.y, -d.x}
}

// corner adds what lies between the left sides of two lines that meet at b.
func (p pen) corner(outline []place, a, b, c place) []place {
	before, after := p.left(a, b), p.left(b, c)
	turn := cross(b.minus(a), c.minus(b))
	switch {
	case turn < 0 || turn == 0 && dot(before, after) > 0:
		// The inside, or no corner: by way of the line itself nothing can stick out.
		return append(outline, b)
	case p.round:
		return p.arc(outline, b, before, after)
	}
	// The point of a mitre is sharp up to four times the width (SVG's miterlimit). It lies at
	// the sum of both offsets, stretched so that it reaches both sides.
	square := p.half * p.half
	stretch := square + dot(before, after)
	if 8*stretch < square {
		return outline
	}
	tip := before.plus(after)
	return append(outline, place{b.x + round(tip.x*square, stretch), b.y + round(tip.y*square, stretch)})
}

// arc adds the points between two offsets from a centre, clockwise as seen on the picture,
// by halving the angle until the chord is close to the circle.
func (p pen) arc(outline []place, centre, from, to place) []place {
	middle := from.plus(to)
	if cross(from, to) < 0 || dot(middle, middle) < p.half {
		middle = place{-from.y, from.x} // half a turn
	}
	middle = towards(middle, p.half)
	chord := from.plus(to)
	if straying := 2*p.half - isqrt(dot(chord, chord)); straying > 2*stray {
		outline = p.arc(outline, centre, from, middle)
		outline = append(outline, centre.plus(middle))
		return p.arc(outline, centre, middle, to)
	}
	return outline
}
