package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// spreadColumns gives the columns their places over the whole breadth of the sheet, and
// their nodes heights between what stands above and below.
func (s *starter) spreadColumns() {
	total := 0.0
	for i := range s.columns {
		s.columns[i].wide = s.breadth(&s.columns[i])
		total += s.columns[i].wide[0] + s.columns[i].wide[1]
	}
	play := (float64(s.d.Width) - 4 - total) / float64(max(1, len(s.columns)))
	x := 2.0
	for i := range s.columns {
		c := &s.columns[i]
		c.x = x + play/2 + c.wide[0]
		x += c.wide[0] + c.wide[1] + play
	}
	done := make([]bool, len(s.columns))
	for range s.columns {
		for i := range s.columns {
			if !done[i] && s.ready(i, done) {
				s.stack(&s.columns[i])
				done[i] = true
			}
		}
	}
	for i := range s.columns {
		if !done[i] {
			s.stack(&s.columns[i])
		}
	}
}

// ready reports whether what a column hangs between has its place.
func (s *starter) ready(i int, done []bool) bool {
	for _, n := range [2]int{s.columns[i].from, s.columns[i].to} {
		if n >= 0 && s.column[n] != i && !done[s.column[n]] {
			return false
		}
	}
	return true
}

// labelRoom is what a column keeps free beside it for the labels of its wires, in units.
const labelRoom = 7

// breadth is what a column needs left and right of its axis.
func (s *starter) breadth(c *column) [2]float64 {
	wide := [2]float64{1, labelRoom}
	for _, n := range c.nodes {
		if s.isBar(n) {
			continue
		}
		axis := float64(s.axis(n))
		box := s.extent(n)
		wide[0] = max(wide[0], axis-box.X0+1)
		wide[1] = max(wide[1], box.X1-axis+1)
	}
	return wide
}

// extent is the hull of an item's body and caption, relative to its origin.
func (s *starter) extent(n int) symbol.Box {
	p := &s.l.Items[n]
	form := &s.d.Items[n].Forms[p.Form]
	boxes := append([]symbol.Box(nil), form.Body...)
	if len(form.Captions) > 0 {
		boxes = append(boxes, form.Captions[p.Caption].Box)
	}
	return Hull(boxes)
}

// axis is the column of an item's first upper pin, else of its first lower one, else of
// its middle.
func (s *starter) axis(n int) int {
	form := &s.d.Items[n].Forms[s.l.Items[n].Form]
	for _, side := range [2]symbol.Side{symbol.Top, symbol.Bottom} {
		for _, p := range form.Pins {
			if p.Side == side {
				return p.At.X
			}
		}
	}
	h := Hull(form.Body)
	return int(math.Round((h.X0 + h.X1) / 2))
}

// stack puts the nodes of a column above each other, evenly between their limits.
func (s *starter) stack(c *column) {
	lo, hi := s.limits(c)
	need := 0.0
	for _, n := range c.nodes {
		need += s.height(n)
	}
	if hi-lo < need+float64(len(c.nodes)+1) {
		mid := (lo + hi) / 2
		lo, hi = mid-need/2-float64(len(c.nodes)+1), mid+need/2+float64(len(c.nodes)+1)
	}
	top, bottom := float64(RailInset+2), float64(s.d.Height-RailInset-2)
	if lo < top {
		lo, hi = top, hi+top-lo
	}
	if hi > bottom {
		lo, hi = max(top, lo-(hi-bottom)), bottom
	}
	gap := max(1, (hi-lo-need)/float64(len(c.nodes)+1))
	y := lo + gap
	for _, n := range c.nodes {
		s.put(n, c.x, y)
		y += s.height(n) + gap
	}
}

// limits returns between which heights a column hangs.
func (s *starter) limits(c *column) (lo, hi float64) {
	lo, hi = RailInset, float64(s.d.Height-RailInset)
	at := func(n int) float64 {
		if s.isBar(n) {
			b := s.l.Bars[n-len(s.d.Items)]
			return float64(b.Cell(b.Length / 2).Y)
		}
		h := Hull(s.l.Bodies(s.d, n))
		return (h.Y0 + h.Y1) / 2
	}
	if c.from >= 0 {
		lo = at(c.from)
	}
	if c.to >= 0 {
		hi = at(c.to)
	}
	if c.from >= 0 && c.to < 0 && c.home >= 0 && len(c.nodes) == 1 && s.loose(c) {
		hi = lo
	}
	if lo > hi {
		lo, hi = hi, lo
	}
	return lo, hi
}

// loose reports whether nothing of a column reaches a rail.
func (s *starter) loose(c *column) bool {
	for _, n := range c.nodes {
		for _, ln := range s.links[n] {
			if s.isRail(ln.to) {
				return false
			}
		}
	}
	return true
}

// height is what a node needs of a column.
func (s *starter) height(n int) float64 {
	if s.isBar(n) {
		return 1
	}
	e := s.extent(n)
	return e.Y1 - e.Y0 + 2
}

// put stands a node on a column's axis with its upper edge at y.
func (s *starter) put(n int, x, y float64) {
	if s.isBar(n) {
		b := n - len(s.d.Items)
		long := max(2, len(s.links[n])-1)
		s.l.Bars[b] = Span{At: symbol.Cell{X: max(1, int(x)-long/2), Y: int(y)}, Length: long}
		return
	}
	e := s.extent(n)
	s.l.Items[n].At = symbol.Cell{X: int(math.Round(x)) - s.axis(n), Y: int(math.Round(y+1)) - int(math.Floor(e.Y0))}
}
