package ink

// Move returns a page on which everything is drawn elsewhere on p: by dx millimetres to
// the right and dy downwards.
func Move(p Page, dx, dy float64) Page { return moved{p, dx, dy} }

type moved struct {
	Page
	dx, dy float64
}

func (m moved) at(p Point) Point { return Point{p.X + m.dx, p.Y + m.dy} }

func (m moved) Path(p Path, s Style) { m.Page.Path(p.Map(m.at), s) }

func (m moved) Text(t Text) { t.At = m.at(t.At); m.Page.Text(t) }
