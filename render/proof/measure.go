package proof

import (
	"math"

	"github.com/lugwright/lugwright/render/ink"
)

// measure counts what is allowed in measure.
func (d *Drawing) measure() Soft {
	s := Soft{Wires: len(d.Wires), Smallest: math.Inf(1)}
	lines := append(append([]Wire{}, d.Wires...), d.Metal...)
	for i := range lines {
		for j := range i {
			s.Crossings += crossings(&lines[i], &lines[j])
		}
	}
	for i := range d.Wires {
		s.Bends += len(d.Wires[i].Bends)
		s.MostBends = max(s.MostBends, len(d.Wires[i].Bends))
	}
	led := map[string]bool{}
	for i := range d.Texts {
		t := &d.Texts[i]
		s.Smallest = min(s.Smallest, t.Capital)
		if t.Turned && t.Class == "label" {
			s.Turned++
		}
		if t.Leader != nil && !led[t.Owner] {
			led[t.Owner] = true
			s.Leaders++
		}
		if t.Leader == nil && d.nearForeign(t) {
			s.NearForeign++
		}
	}
	s.Fill = d.fill()
	return s
}

// crossings counts the points at which two wires cross.
func crossings(a, b *Wire) int {
	n := 0
	for _, r := range a.Runs {
		for _, o := range b.Runs {
			if r.Level() == o.Level() {
				continue
			}
			if !r.Level() {
				r, o = o, r
			}
			if r.A.X < o.A.X-tolerance && r.B.X > o.A.X+tolerance && o.A.Y < r.A.Y-tolerance && o.B.Y > r.A.Y+tolerance {
				n++
			}
		}
	}
	return n
}

// nearForeign reports whether the label of a wire stands nearer to another one.
func (d *Drawing) nearForeign(t *Text) bool {
	if t.Class != "label" {
		return false
	}
	own, other := math.Inf(1), math.Inf(1)
	for i := range d.Wires {
		w := &d.Wires[i]
		gap := w.distance(t.Box)
		if w.Name == t.Owner {
			own = min(own, gap)
		} else {
			other = min(other, gap)
		}
	}
	return !math.IsInf(own, 1) && other < own-tolerance
}

// distance from the edge of a wire to a box.
func (w *Wire) distance(b ink.Rect) float64 {
	least := math.Inf(1)
	for _, r := range w.Runs {
		dx := max(r.A.X-b.Max.X, b.Min.X-r.B.X, 0)
		dy := max(r.A.Y-b.Max.Y, b.Min.Y-r.B.Y, 0)
		least = min(least, math.Hypot(dx, dy)-w.Width/2)
	}
	return least
}

// fillCell is the size of the squares by which the fill of a sheet is measured, in mm.
const fillCell = 12.5

// fill is the share of squares of the page in which something stands.
func (d *Drawing) fill() float64 {
	nx, ny := int(math.Ceil(d.Page.Width()/fillCell)), int(math.Ceil(d.Page.Height()/fillCell))
	if nx == 0 || ny == 0 {
		return 0
	}
	used := make([]bool, nx*ny)
	mark := func(b ink.Rect) {
		x0, x1 := max(0, int(b.Min.X/fillCell)), min(nx-1, int(b.Max.X/fillCell))
		y0, y1 := max(0, int(b.Min.Y/fillCell)), min(ny-1, int(b.Max.Y/fillCell))
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				used[y*nx+x] = true
			}
		}
	}
	for _, k := range d.Inks {
		mark(k.Box)
	}
	for _, t := range d.Texts {
		mark(t.Box)
	}
	for _, set := range [3][]Wire{d.Wires, d.Metal, d.Bars} {
		for i := range set {
			for _, r := range set[i].Runs {
				mark(ink.Rect{Min: r.A, Max: r.B})
			}
		}
	}
	n := 0
	for _, u := range used {
		if u {
			n++
		}
	}
	return float64(n) / float64(len(used))
}

// area is the hull of everything read.
func area(d *Drawing) ink.Rect {
	var box ink.Rect
	first := true
	add := func(r ink.Rect) {
		if first {
			box, first = r, false
			return
		}
		box = box.Union(r)
	}
	for _, k := range d.Inks {
		add(k.Box)
	}
	for _, t := range d.Texts {
		add(t.Box)
	}
	for _, set := range [3][]Wire{d.Wires, d.Metal, d.Bars} {
		for i := range set {
			for _, r := range set[i].Runs {
				add(ink.Rect{Min: r.A, Max: r.B})
			}
		}
	}
	return box
}

// cuts reports whether the line from a to b touches the inside of a box (Liang-Barsky).
func cuts(a, b ink.Point, box ink.Rect) bool {
	lo, hi := 0.0, 1.0
	for _, c := range [4][2]float64{{a.X - b.X, a.X - box.Min.X}, {b.X - a.X, box.Max.X - a.X}, {a.Y - b.Y, a.Y - box.Min.Y}, {b.Y - a.Y, box.Max.Y - a.Y}} {
		switch {
		case c[0] == 0:
			if c[1] <= 0 {
				return false
			}
		case c[0] < 0:
			lo = max(lo, c[1]/c[0])
		default:
			hi = min(hi, c[1]/c[0])
		}
	}
	return lo < hi
}
