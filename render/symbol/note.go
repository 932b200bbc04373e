package symbol

import (
	"github.com/lugwright/lugwright/render/ink"
)

// noteGap is the distance of a note from the body, in units.
const noteGap = 0.5

// noted fills in what follows from body, pins and drawing: Words and Notes.
func (s Shape) noted() Shape {
	s.Words, s.Notes = s.words(), nil
	for _, side := range append(s.beside, Right, Left, Top, Bottom) {
		for _, spot := range s.spots(side) {
			if !holds(s.Notes, spot) {
				s.Notes = append(s.Notes, spot)
			}
		}
	}
	return s
}

func holds(spots []Spot, spot Spot) bool {
	for _, other := range spots {
		if other == spot {
			return true
		}
	}
	return false
}

// words returns the boxes of the text that the shape draws, from capitals to descenders.
func (s Shape) words() []Box {
	if s.draw == nil {
		return nil
	}
	// One millimetre a unit, on a sheet that is never looked at.
	page := ink.NewRecorder(0, 0)
	s.draw(&drawing{page: page, unit: 1})
	var boxes []Box
	for _, m := range page.Marks {
		if m.Text != nil {
			boxes = append(boxes, wordBox(*m.Text))
		}
	}
	return boxes
}

// wordBox is the box of a text without the room for accents, which no label here has.
func wordBox(t ink.Text) Box {
	r := t.Box()
	if t.Turned {
		r.Min.X = t.At.X - t.Capital
	} else {
		r.Min.Y = t.At.Y - t.Capital
	}
	return Box{r.Min.X, r.Min.Y, r.Max.X, r.Max.Y}
}

// spots returns places on one side of the body, clear of the wires that leave there.
func (s Shape) spots(side Side) []Spot {
	hull := s.Hull()
	middle := ink.Point{X: (hull.X0 + hull.X1) / 2, Y: (hull.Y0 + hull.Y1) / 2}
	low, high, wired := s.reach(side)
	const up = noteGap
	down := noteGap + 1 // a capital hangs from the top of its line
	// Two lines, the usual number, stand centred.
	first := middle.Y - (1+ink.LineSpacing)/2 + 1
	switch side {
	case Right:
		if !wired {
			return []Spot{{ink.Point{X: hull.X1 + noteGap, Y: first}, ink.Start, true}}
		}
		return []Spot{
			{ink.Point{X: hull.X1 + noteGap, Y: low - noteGap}, ink.Start, false},
			{ink.Point{X: hull.X1 + noteGap, Y: high + down}, ink.Start, true}}
	case Left:
		if !wired {
			return []Spot{{ink.Point{X: hull.X0 - noteGap, Y: first}, ink.End, true}}
		}
		return []Spot{
			{ink.Point{X: hull.X0 - noteGap, Y: low - noteGap}, ink.End, false},
			{ink.Point{X: hull.X0 - noteGap, Y: high + down}, ink.End, true}}
	case Top:
		if !wired {
			return []Spot{{ink.Point{X: middle.X, Y: hull.Y0 - up}, ink.Middle, false}}
		}
		return []Spot{
			{ink.Point{X: high + noteGap, Y: hull.Y0 - up}, ink.Start, false},
			{ink.Point{X: low - noteGap, Y: hull.Y0 - up}, ink.End, false}}
	case Bottom:
		if !wired {
			return []Spot{{ink.Point{X: middle.X, Y: hull.Y1 + down}, ink.Middle, true}}
		}
		return []Spot{
			{ink.Point{X: high + noteGap, Y: hull.Y1 + down}, ink.Start, true},
			{ink.Point{X: low - noteGap, Y: hull.Y1 + down}, ink.End, true}}
	}
	return nil
}

// reach returns the first and the last place along a side where a wire leaves.
func (s Shape) reach(side Side) (low, high float64, any bool) {
	for _, pin := range s.Pins {
		if pin.Side != side && pin.Side != AnySide {
			continue
		}
		along := float64(pin.At.X)
		if side == Left || side == Right {
			along = float64(pin.At.Y)
		}
		if !any {
			low, high, any = along, along, true
		}
		low, high = min(low, along), max(high, along)
	}
	return low, high, any
}

// Baseline returns where line i of n stands, counted from 0 at the top, in units.
func (s Spot) Baseline(i, n int) ink.Point {
	lines := float64(i)
	if !s.Down {
		lines = float64(i - n + 1)
	}
	return ink.Point{X: s.At.X, Y: s.At.Y + lines*ink.LineSpacing}
}
