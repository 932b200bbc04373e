package label

import (
	"math"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// reach is how far from its line a label with a leader may stand, in units, and markReach
// how far the name of a terminal may, which belongs to a point and not to a line.
const (
	reach     = 13
	markReach = 6
)

// lead gives wires, bars and marks whose words have no place a free one nearby, with a thin
// line to it.
func (c *choice) lead(f *field, l *arrange.Layout, paths [][]symbol.Cell) {
	for _, r := range c.rs {
		if r.taken >= 0 || r.kind == OfFrame {
			continue
		}
		s, ok := c.leaderSpot(f, r, feetOf(r, l, paths))
		if ok {
			r.spots = append(r.spots, s)
			r.taken = len(r.spots) - 1
		}
	}
}

// feetOf lists points at which the leader of a request may end: along its line, or for a
// mark close before the end of the wire.
func feetOf(r *request, l *arrange.Layout, paths [][]symbol.Cell) []point {
	switch r.kind {
	case OfBar:
		return feet([]symbol.Cell{l.Bars[r.index].At, l.Bars[r.index].End()})
	case OfMark:
		path := paths[r.index]
		at, next := path[0], path[1]
		if r.end == 1 {
			at, next = path[len(path)-1], path[len(path)-2]
		}
		ps := feet([]symbol.Cell{at, next})
		return ps[:min(len(ps), markFeet)]
	}
	return feet(paths[r.index])
}

// markFeet is how many units from the end of its wire the leader of a mark may end.
const markFeet = 2

// feet lists points on a path where a leader may end: off the grid, so that it can end
// neither on a crossing nor on a bend.
func feet(path []symbol.Cell) []point {
	var ps []point
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		n := max(abs(a.X-b.X), abs(a.Y-b.Y))
		for j := range n {
			t := (float64(j) + 0.5) / float64(n)
			ps = append(ps, point{X: float64(a.X) + t*float64(b.X-a.X), Y: float64(a.Y) + t*float64(b.Y-a.Y)})
		}
	}
	if len(ps) > mostFeet {
		ps = thin(ps, mostFeet)
	}
	return ps
}

// mostFeet bounds the points of a line that are tried.
const mostFeet = 10

// thin keeps n points of a list, evenly.
func thin(ps []point, n int) []point {
	out := make([]point, 0, n)
	for i := range n {
		out = append(out, ps[i*(len(ps)-1)/(n-1)])
	}
	return out
}

// leaderSpot finds the cheapest free box round a line with a leader to it. What a place
// costs for its distance alone is known at once, so most are never looked at.
func (c *choice) leaderSpot(f *field, r *request, feet []point) (spot, bool) {
	h := hunt{c: c, f: f, r: r, k: len(r.spots), most: reach}
	if r.kind == OfMark {
		h.most = markReach
	}
	h.best.cost = math.Inf(1)
	r.spots = append(r.spots, spot{}) // the one under trial
	for _, foot := range feet {
		for n := range r.words {
			h.round(foot, n)
		}
	}
	r.spots = r.spots[:h.k]
	return h.best, !math.IsInf(h.best.cost, 1)
}

// hunt is the search for a place with a leader.
type hunt struct {
	c    *choice
	f    *field
	r    *request
	k    int // index of the spot under trial
	most float64
	best spot
}

// round tries the places round a foot row by row, the nearest first.
func (h *hunt) round(foot point, n int) {
	w := &h.r.words[n]
	base := costLeader + costPerLine*float64(len(w.Lines)-1)
	wide := int(h.most + w.Width/2)
	for i := range 2*int(h.most) + 1 {
		dy := outward(i)
		if base+costReach*(math.Abs(dy)-w.Height/2-tipGap) >= h.best.cost {
			return // the rows farther away are dearer still
		}
		for j := range 2*wide + 1 {
			dx := outward(j)
			tip := tipTo(w, dx, dy)
			d2 := tip.X*tip.X + tip.Y*tip.Y
			if d2 < 1 || d2 > h.most*h.most || base+costReach*math.Sqrt(d2) >= h.best.cost {
				continue
			}
			h.r.spots[h.k] = led(w, n, foot, dx, dy, base+costReach*math.Sqrt(d2))
			if h.c.ledFits(h.f, h.r, h.k, h.best.cost) {
				h.best = h.r.spots[h.k]
			}
		}
	}
}

// outward is the sequence 0, -1, 1, -2, 2, ...
func outward(i int) float64 {
	if i%2 == 1 {
		return -float64(i/2 + 1)
	}
	return float64(i / 2)
}

// led makes a place for words at a distance from the foot of their leader.
func led(w *arrange.Words, n int, foot point, dx, dy, cost float64) spot {
	x, y, tip := foot.X+dx, foot.Y+dy, tipTo(w, dx, dy)
	box := symbol.Box{X0: x - w.Width/2, X1: x + w.Width/2, Y0: y - w.Height/2, Y1: y + w.Height/2}
	return spot{box: box, at: point{X: x, Y: box.Y0 + capital}, anchor: ink.Middle, words: n, led: true, cost: cost,
		leader: [2]point{{X: foot.X + tip.X, Y: foot.Y + tip.Y}, foot}}
}

// tipGap is how far from its words a leader begins, in units.
const tipGap = 0.1

// tipTo returns, from the foot, where the leader leaves words whose middle is a distance
// away: the middle of the side that faces the foot.
func tipTo(w *arrange.Words, dx, dy float64) point {
	switch {
	case dx > w.Width/2+0.5:
		return point{X: dx - w.Width/2 - tipGap, Y: dy}
	case dx < -w.Width/2-0.5:
		return point{X: dx + w.Width/2 + tipGap, Y: dy}
	case dy > w.Height/2:
		return point{X: dx, Y: dy - w.Height/2 - tipGap}
	}
	return point{X: dx, Y: dy + w.Height/2 + tipGap}
}

// ledFits reports whether a place under trial is free, with its leader, and cheaper than
// most when the wires that the leader crosses are counted.
func (c *choice) ledFits(f *field, r *request, k int, most float64) bool {
	s := &r.spots[k]
	if !f.free(s.box, noEdge) {
		return false
	}
	over, clear := f.leaderPath(s.leader[0], s.leader[1])
	if s.cost += costOver * float64(over); !clear || s.cost >= most {
		return false
	}
	n, _ := c.hits(r, k, 1)
	return n == 0 && !c.leaderHits(r, k)
}

// leaderPath counts the wires that a leader crosses; the second result is false if it
// would cross a body or words, or look like a wire.
func (f *field) leaderPath(tip, foot point) (int, bool) {
	if math.Abs(tip.X-foot.X) < 0.3 || math.Abs(tip.Y-foot.Y) < 0.3 || f.cutBy(tip, foot) {
		return 0, false
	}
	return f.crossingsOf(tip, foot), true
}

// crossingsOf counts the wires that a slanted line crosses before its foot.
func (f *field) crossingsOf(tip, foot point) int {
	n := 0
	for y := int(math.Ceil(min(tip.Y, foot.Y) + 0.01)); float64(y) < max(tip.Y, foot.Y)-0.01; y++ {
		x := tip.X + (foot.X-tip.X)*(float64(y)-tip.Y)/(foot.Y-tip.Y)
		if i := int(math.Floor(x)); y >= 0 && y <= f.h && i >= 0 && i <= f.w && f.row(y)[i+1] > f.row(y)[i] {
			n++
		}
	}
	for x := int(math.Ceil(min(tip.X, foot.X) + 0.01)); float64(x) < max(tip.X, foot.X)-0.01; x++ {
		y := tip.Y + (foot.Y-tip.Y)*(float64(x)-tip.X)/(foot.X-tip.X)
		if i := int(math.Floor(y)); x >= 0 && x <= f.w && i >= 0 && i <= f.h && f.column(x)[i+1] > f.column(x)[i] {
			n++
		}
	}
	return n
}

// leaderHits reports whether the leader of a spot cuts words that stand.
func (c *choice) leaderHits(r *request, k int) bool {
	s := &r.spots[k]
	for _, o := range c.rs {
		if o == r || o.taken < 0 {
			continue
		}
		t := &o.spots[o.taken]
		if cuts(s.leader[0], s.leader[1], arrange.Grown(t.box, 0.1)) {
			return true
		}
		if t.led && crossing(s.leader, t.leader) {
			return true
		}
	}
	return false
}

// cuts reports whether the line from a to b touches the inside of a box (Liang-Barsky).
func cuts(a, b point, box symbol.Box) bool {
	lo, hi := 0.0, 1.0
	for _, c := range [4][2]float64{{a.X - b.X, a.X - box.X0}, {b.X - a.X, box.X1 - a.X}, {a.Y - b.Y, a.Y - box.Y0}, {b.Y - a.Y, box.Y1 - a.Y}} {
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

// crossing reports whether two slanted lines cross.
func crossing(p, q [2]point) bool {
	turn := func(a, b, c point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return turn(p[0], p[1], q[0])*turn(p[0], p[1], q[1]) < 0 && turn(q[0], q[1], p[0])*turn(q[0], q[1], p[1]) < 0
}

func abs(v int) int {
	if v < 0 {
		return -v
	}
	return v
}
