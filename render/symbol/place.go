package symbol

import "github.com/lugwright/lugwright/render/ink"

// Point moves a point of a shape, in units, to where the placement puts it.
func (p Placement) Point(q ink.Point) ink.Point {
	x, y := q.X, q.Y
	if p.Mirror {
		x = -x
	}
	for range p.turns() {
		x, y = -y, x
	}
	return ink.Point{X: x + float64(p.At.X), Y: y + float64(p.At.Y)}
}

// Cell moves a point of the grid.
func (p Placement) Cell(c Cell) Cell {
	x, y := c.X, c.Y
	if p.Mirror {
		x = -x
	}
	for range p.turns() {
		x, y = -y, x
	}
	return Cell{x + p.At.X, y + p.At.Y}
}

// Side turns a side with the shape.
func (p Placement) Side(s Side) Side {
	if p.Mirror {
		switch s {
		case Left:
			s = Right
		case Right:
			s = Left
		}
	}
	clockwise := [...]Side{AnySide: AnySide, Left: Top, Top: Right, Right: Bottom, Bottom: Left}
	for range p.turns() {
		if int(s) < len(clockwise) {
			s = clockwise[s]
		}
	}
	return s
}

// Box moves a box.
func (p Placement) Box(b Box) Box {
	a := p.Point(ink.Point{X: b.X0, Y: b.Y0})
	c := p.Point(ink.Point{X: b.X1, Y: b.Y1})
	return Box{min(a.X, c.X), min(a.Y, c.Y), max(a.X, c.X), max(a.Y, c.Y)}
}

// turns makes any number of quarter turns one of 0 to 3.
func (p Placement) turns() int { return ((p.Turns % 4) + 4) % 4 }

// Place returns the shape as it stands on the grid: pins, bodies, words and places for
// notes after moving, mirroring and turning. The result is drawn with the zero Placement.
func (s Shape) Place(at Placement) Shape {
	placed := Shape{Symbol: s.Symbol, Marked: s.Marked}
	for _, b := range s.Body {
		placed.Body = append(placed.Body, at.Box(b))
	}
	for _, pin := range s.Pins {
		placed.Pins = append(placed.Pins, Pin{pin.Terminal, at.Cell(pin.At), at.Side(pin.Side)})
	}
	for _, side := range s.beside {
		placed.beside = append(placed.beside, at.Side(side))
	}
	if draw := s.draw; draw != nil {
		placed.draw = func(d *drawing) {
			d.place = d.place.After(at)
			draw(d)
		}
	}
	return placed.noted()
}

// After returns the placement that does what first does, and then what p does.
func (p Placement) After(first Placement) Placement {
	sum := Placement{At: p.Cell(first.At), Mirror: p.Mirror != first.Mirror}
	// A turn that is mirrored afterwards has become one the other way.
	if p.Mirror {
		sum.Turns = p.turns() - first.turns()
	} else {
		sum.Turns = p.turns() + first.turns()
	}
	sum.Turns = sum.turns()
	return sum
}

// Hull returns the smallest box around the bodies, or round the pins of a shape that has
// none.
func (s Shape) Hull() Box {
	boxes := s.Body
	if len(boxes) == 0 {
		for _, pin := range s.Pins {
			x, y := float64(pin.At.X), float64(pin.At.Y)
			boxes = append(boxes, Box{x, y, x, y})
		}
	}
	if len(boxes) == 0 {
		return Box{}
	}
	hull := boxes[0]
	for _, b := range boxes[1:] {
		hull = Box{min(hull.X0, b.X0), min(hull.Y0, b.Y0), max(hull.X1, b.X1), max(hull.Y1, b.Y1)}
	}
	return hull
}
