package arrange

import (
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// railGap is the least distance of two rails in one row, in units.
const railGap = 3

// rowOf lists the rails of a row of the diagram from left to right.
func (l *Layout) rowOf(d *Diagram, row Row) []int {
	var rails []int
	for b := range d.Bars {
		if d.Bars[b].Row == row {
			rails = append(rails, b)
		}
	}
	sort.SliceStable(rails, func(i, j int) bool { return l.Bars[rails[i]].At.X < l.Bars[rails[j]].At.X })
	return rails
}

// shareRows divides each row among its rails, by where the items stand that are wired to
// them, so that rails of one row never meet.
func (s *starter) shareRows() {
	for _, row := range [2]Row{TopRow, BottomRow} {
		rails := s.l.rowOf(s.d, row)
		mean := make(map[int]float64, len(rails))
		for _, b := range rails {
			mean[b] = s.meanOf(len(s.d.Items) + b)
		}
		sort.SliceStable(rails, func(i, j int) bool { return mean[rails[i]] < mean[rails[j]] })
		from := 1
		for k, b := range rails {
			to := s.d.Width - 1
			if k+1 < len(rails) {
				to = s.border(b, rails[k+1], from, to)
			}
			s.l.Bars[b].At.X, s.l.Bars[b].Length = from, to-from
			from = to + railGap
		}
	}
}

// meanOf is the middle of the pins that are wired to a node.
func (s *starter) meanOf(n int) float64 {
	sum, count := 0.0, 0
	for _, ln := range s.links[n] {
		if x, ok := s.pinX(ln); ok {
			sum += float64(x)
			count++
		}
	}
	if count == 0 {
		return float64(s.d.Width) / 2
	}
	return sum / float64(count)
}

// pinX is the column of the far end of a link.
func (s *starter) pinX(ln link) (int, bool) {
	if s.isBar(ln.to) {
		b := s.l.Bars[ln.to-len(s.d.Items)]
		return b.Cell(b.Length / 2).X, s.row(ln.to) == Free
	}
	c, _ := s.l.Pin(s.d, ln.to, ln.far)
	return c.X, s.role(ln.to) != Flag
}

// border finds where one rail ends so that the fewest wires of it and of the next one land
// beyond their own part of the row.
func (s *starter) border(a, b, from, to int) int {
	best, least := (from+to)/2, 1<<30
	for x := from + 4; x < to-4; x++ {
		wrong := 0
		for _, ln := range s.links[len(s.d.Items)+a] {
			if at, ok := s.pinX(ln); ok {
				wrong += max(0, at-x)
			}
		}
		for _, ln := range s.links[len(s.d.Items)+b] {
			if at, ok := s.pinX(ln); ok {
				wrong += max(0, x+railGap-at)
			}
		}
		if wrong < least {
			best, least = x, wrong
		}
	}
	return best
}

// shiftBorder moves the border between two neighbouring rails of a row.
func (p *plan) shiftBorder(c *change, b, reach int) bool {
	rails := p.l.rowOf(p.d, p.d.Bars[b].Row)
	k := 0
	for rails[k] != b {
		k++
	}
	if k+1 == len(rails) {
		return false
	}
	next := rails[k+1]
	by := p.offset(reach)
	if p.l.Bars[b].Length+by < 3 || p.l.Bars[next].Length-by < 3 {
		return false
	}
	c.bars = append(c.bars, b, next)
	p.remember(c)
	p.l.Bars[b].Length += by
	p.l.Bars[next].At.X += by
	p.l.Bars[next].Length -= by
	return true
}

// FitRails shortens each rail to where wires will land on it, with some room to slide. It
// returns the ways that the wires take at first sight, by their corners.
func FitRails(d *Diagram, l *Layout) [][]symbol.Cell {
	p := newPlan(d, l)
	p.settleWays()
	p.fitRails(l)
	return p.corners()
}

// fitRails shortens the rails of a layout, which is that of the plan or a copy of it.
func (p *plan) fitRails(l *Layout) {
	for b := range p.d.Bars {
		if p.d.Bars[b].Row == Free {
			continue
		}
		lo, hi := p.extent(b)
		if lo > hi {
			continue
		}
		s := &l.Bars[b]
		lo, hi = max(s.At.X, lo-slideRoom), min(s.At.X+s.Length, hi+slideRoom)
		s.At.X, s.Length = lo, hi-lo
	}
}

// corners lists the ways of the wires by their corners.
func (p *plan) corners() [][]symbol.Cell {
	ways := make([][]symbol.Cell, len(p.ways))
	for w := range p.ways {
		ways[w] = append(ways[w], p.ways[w].corners[:p.ways[w].n]...)
	}
	return ways
}

// settleRounds bounds how often all wires are laid again, each among all others.
const settleRounds = 3

// settleWays lays every wire again among the others until that brings nothing.
func (p *plan) settleWays() {
	for range settleRounds {
		gain := 0.0
		for w := range p.ways {
			was := p.erase(w)
			gain += was - p.draw(w)
		}
		if gain < 0.5 {
			return
		}
	}
}

// slideRoom is how far beyond the outermost wires a rail may still be landed on, in units.
const slideRoom = 4

// extent returns the first and last column at which wires land on a rail.
func (p *plan) extent(bar int) (int, int) {
	lo, hi := p.w, -1
	for _, w := range p.bars[bar] {
		v := &p.ways[w]
		if v.n == 0 {
			continue
		}
		at := v.corners[0]
		if e := p.d.Wires[w].Ends[1]; e.IsBar() && e.Pin == bar {
			at = v.corners[v.n-1]
		}
		lo, hi = min(lo, at.X), max(hi, at.X)
	}
	return lo, hi
}

// Trim cuts every bar to the wires that landed on it, a rail with a little over at either
// end. Paths are the corners of each wire, nil where it has none.
func Trim(d *Diagram, l *Layout, paths [][]symbol.Cell) {
	for b := range d.Bars {
		s := &l.Bars[b]
		first, last := s.Length, 0
		for w, path := range paths {
			for end, t := range d.Wires[w].Ends {
				if path == nil || !t.IsBar() || t.Pin != b {
					continue
				}
				c := path[0]
				if end == 1 {
					c = path[len(path)-1]
				}
				i := c.X - s.At.X
				if s.Upright {
					i = c.Y - s.At.Y
				}
				first, last = min(first, i), max(last, i)
			}
		}
		if first > last {
			continue
		}
		over := 0
		if d.Bars[b].Row != Free {
			over = 1
		}
		first, last = max(0, first-over), min(s.Length, last+over)
		if last-first < 2 {
			first, last = max(0, first-1), min(s.Length, last+1)
		}
		s.At, s.Length = s.Cell(first), last-first
	}
}
