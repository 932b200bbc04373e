package arrange

import (
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// FitRails shortens each rail to where wires will land on it, with some room to slide, so
// that rails of one row stay apart and nothing else has to cross their empty ends.
func FitRails(d *Diagram, l *Layout) {
	p := newPlan(d, l)
	var rails []railSpan
	for b := range d.Bars {
		if d.Bars[b].Row == Free {
			continue
		}
		lo, hi := p.extent(b)
		if lo > hi {
			lo, hi = d.Width/2, d.Width/2
		}
		rails = append(rails, railSpan{b, lo, hi})
	}
	sort.SliceStable(rails, func(i, j int) bool { return rails[i].lo < rails[j].lo })
	for i, r := range rails {
		lo, hi := max(1, r.lo-slideRoom), min(d.Width-1, r.hi+slideRoom)
		for j, o := range rails {
			if i == j || l.Bars[o.bar].At.Y != l.Bars[r.bar].At.Y {
				continue
			}
			if o.lo > r.hi {
				hi = min(hi, max(r.hi, (r.hi+o.lo-railGap)/2))
			}
			if o.hi < r.lo {
				lo = max(lo, min(r.lo, (r.lo+o.hi+railGap+1)/2))
			}
		}
		l.Bars[r.bar].At.X, l.Bars[r.bar].Length = lo, hi-lo
	}
}

type railSpan struct{ bar, lo, hi int }

// slideRoom is how far beyond the outermost wires a rail may still be landed on, in units.
const slideRoom = 4

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
