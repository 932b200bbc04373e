package label

import (
	"math"
	"sort"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// reach is how far from its wire a label with a leader may stand, in units.
const reach = 13

// lead gives wires and bars whose words have no place a free one nearby, with a thin line
// to it.
func (c *choice) lead(f *field, l *arrange.Layout, paths [][]symbol.Cell) {
	for _, r := range c.rs {
		if r.taken >= 0 || r.kind != OfWire && r.kind != OfBar {
			continue
		}
		line := []symbol.Cell(nil)
		if r.kind == OfBar {
			line = []symbol.Cell{l.Bars[r.index].At, l.Bars[r.index].End()}
		} else {
			line = paths[r.index]
		}
		from := len(r.spots)
		r.spots = append(r.spots, leaderSpots(f, r, line)...)
		for k := from; k < len(r.spots); k++ {
			if len(c.hits(r, k, 1)) == 0 && !c.leaderHits(r, k) {
				r.taken = k
				break
			}
		}
	}
}

// leaderSpots lists free boxes round a line with a leader to it, cheapest first.
func leaderSpots(f *field, r *request, line []symbol.Cell) []spot {
	var spots []spot
	for _, foot := range feet(line) {
		for k, w := range r.words {
			spots = append(spots, spotsRound(f, foot, k, w)...)
		}
	}
	sort.SliceStable(spots, func(a, b int) bool { return spots[a].cost < spots[b].cost })
	return spots
}

// feet lists points on a path where a leader may end: off the grid, so that it can end
// neither on a crossing nor on a bend.
func feet(path []symbol.Cell) []ink.Point {
	var ps []ink.Point
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		n := max(abs(a.X-b.X), abs(a.Y-b.Y))
		for j := range n {
			t := (float64(j) + 0.5) / float64(n)
			ps = append(ps, ink.Point{X: float64(a.X) + t*float64(b.X-a.X), Y: float64(a.Y) + t*float64(b.Y-a.Y)})
		}
	}
	if len(ps) > mostFeet {
		ps = thin(ps, mostFeet)
	}
	return ps
}

// mostFeet bounds the points of a line that are tried.
const mostFeet = 12

// thin keeps n points of a list, evenly.
func thin(ps []ink.Point, n int) []ink.Point {
	out := make([]ink.Point, 0, n)
	for i := range n {
		out = append(out, ps[i*(len(ps)-1)/(n-1)])
	}
	return out
}

// spotsRound lists free boxes in a ring round a foot.
func spotsRound(f *field, foot ink.Point, k int, w arrange.Words) []spot {
	var spots []spot
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach - int(w.Width/2); dx <= reach+int(w.Width/2); dx++ {
			x, y := foot.X+float64(dx), foot.Y+float64(dy)
			box := symbol.Box{X0: x - w.Width/2, X1: x + w.Width/2, Y0: y - w.Height/2, Y1: y + w.Height/2}
			tip := nearest(box, foot)
			d := math.Hypot(tip.X-foot.X, tip.Y-foot.Y)
			if d < 1 || d > reach || !f.free(box, noEdge) {
				continue
			}
			over, ok := f.leaderPath(tip, foot)
			if !ok {
				continue
			}
			spots = append(spots, spot{box: box, at: ink.Point{X: x, Y: box.Y0 + capital}, anchor: ink.Middle, words: k,
				cost: costLeader + costReach*d + costOver*float64(over) + costPerLine*float64(len(w.Lines)-1), leader: []ink.Point{tip, foot}})
		}
	}
	return spots
}

// nearest returns the point from which a leader leaves a box: the middle of the side that
// faces the foot.
func nearest(b symbol.Box, foot ink.Point) ink.Point {
	mx, my := (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	switch {
	case foot.X < b.X0-0.5:
		return ink.Point{X: b.X0 - 0.1, Y: my}
	case foot.X > b.X1+0.5:
		return ink.Point{X: b.X1 + 0.1, Y: my}
	case foot.Y < b.Y0:
		return ink.Point{X: mx, Y: b.Y0 - 0.1}
	}
	return ink.Point{X: mx, Y: b.Y1 + 0.1}
}

// leaderPath counts the wires that a leader crosses; the second result is false if it
// would cross a body or words, or look like a wire.
func (f *field) leaderPath(tip, foot ink.Point) (int, bool) {
	if math.Abs(tip.X-foot.X) < 0.3 || math.Abs(tip.Y-foot.Y) < 0.3 {
		return 0, false
	}
	hull := symbol.Box{X0: min(tip.X, foot.X), X1: max(tip.X, foot.X), Y0: min(tip.Y, foot.Y), Y1: max(tip.Y, foot.Y)}
	clear := true
	f.visit(hull, func(cell int) bool {
		for _, n := range f.cells[cell] {
			if cuts(tip, foot, f.boxes[n]) {
				clear = false
				return false
			}
		}
		return true
	})
	if !clear {
		return 0, false
	}
	return f.crossingsOf(tip, foot), true
}

// crossingsOf counts the wires that a slanted line crosses before its foot.
func (f *field) crossingsOf(tip, foot ink.Point) int {
	n := 0
	for y := int(math.Ceil(min(tip.Y, foot.Y) + 0.01)); float64(y) < max(tip.Y, foot.Y)-0.01; y++ {
		x := tip.X + (foot.X-tip.X)*(float64(y)-tip.Y)/(foot.Y-tip.Y)
		if i := int(math.Floor(x)); y >= 0 && y < len(f.level) && i >= 0 && i+1 < len(f.level[y]) && f.level[y][i+1] > f.level[y][i] {
			n++
		}
	}
	for x := int(math.Ceil(min(tip.X, foot.X) + 0.01)); float64(x) < max(tip.X, foot.X)-0.01; x++ {
		y := tip.Y + (foot.Y-tip.Y)*(float64(x)-tip.X)/(foot.X-tip.X)
		if i := int(math.Floor(y)); x >= 0 && x < len(f.plumb) && i >= 0 && i+1 < len(f.plumb[x]) && f.plumb[x][i+1] > f.plumb[x][i] {
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
		if len(t.leader) > 0 && crossing(s.leader, t.leader) {
			return true
		}
	}
	return false
}

// cuts reports whether the line from a to b touches the inside of a box (Liang-Barsky).
func cuts(a, b ink.Point, box symbol.Box) bool {
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
func crossing(p, q []ink.Point) bool {
	turn := func(a, b, c ink.Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return turn(p[0], p[1], q[0])*turn(p[0], p[1], q[1]) < 0 && turn(q[0], q[1], p[0])*turn(q[0], q[1], p[1]) < 0
}

func abs(v int) int {
	if v < 0 {
		return -v
	}
	return v
}
