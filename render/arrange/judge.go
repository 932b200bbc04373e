package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// shape is what the form of a way costs, wherever it lies.
func (p *plan) shape(w *way, bend float64) float64 {
	cost := bend*float64(w.n-2) + costBack*float64(w.back)/2
	for i := 1; i < w.n; i++ {
		a, b := w.corners[i-1], w.corners[i]
		cost += costLength * float64(abs(a.X-b.X)+abs(a.Y-b.Y))
	}
	return cost
}

// onGrid is what a way costs for what it meets. Once that exceeds most, the exact figure
// does not matter.
func (p *plan) onGrid(w *way, most float64) float64 {
	cost := 0.0
	for i := 1; i < w.n; i++ {
		a, b := ordered(w.corners[i-1], w.corners[i])
		if a.X < 0 || a.Y < 0 || b.X >= p.w || b.Y >= p.h {
			return 2 * offSheet
		}
		if a.X < 1 || a.Y < p.top || b.X >= p.w-1 || b.Y > p.foot {
			cost += 1e5
		}
		if a.Y == b.Y {
			cost += p.along(a.Y*p.w+a.X, 1, p.w, b.X-a.X, 0)
		} else {
			cost += p.along(a.Y*p.w+a.X, p.w, 1, b.Y-a.Y, 1)
		}
		if cost > most {
			return cost
		}
	}
	for i := 1; i+1 < w.n; i++ {
		q := w.corners[i].Y*p.w + w.corners[i].X
		cost += float64(p.price[q]) + costTouch*float64(p.passes(q))
	}
	return cost
}

// along is what a stretch of n units costs, from a point in steps of step; across is the
// step at a right angle, axis the direction of the stretch.
func (p *plan) along(from, step, across, n, axis int) float64 {
	mine, other := p.run[axis], p.run[1-axis]
	if n == 0 {
		return 0
	}
	shared, crossed, touched, hit := int(mine[from]), 0, 0, int32(0)
	for i, q := 1, from+step; i < n; i, q = i+1, q+step {
		shared += int(mine[q])
		hit += p.price[q]
		if v, u := other[q], other[q-across]; v|u != 0 {
			crossed += int(min(u, v))
			touched += int(max(u, v) - min(u, v))
		}
	}
	return costShare*float64(shared) + costCross*float64(crossed) + costTouch*float64(touched) + float64(hit)
}

// costOf is what a wire that is off the grid would cost among what stands there.
func (p *plan) costOf(w int) float64 {
	v := &p.ways[w]
	if v.n == 0 {
		return offSheet
	}
	bend := costBend
	if p.d.Wires[w].Weight >= heavyWeight {
		bend *= costHeavy
	}
	cost := p.shape(v, bend) + p.onGrid(v, math.Inf(1))
	if v.missing {
		cost += costNoRoom
	}
	cost += costNoMark * float64(v.unmarked)
	for i := range v.room {
		if v.has(i) {
			cost += p.onLabel(v.room[i])
		}
	}
	return cost
}

// onLabel is what covers a label's room, in cost.
func (p *plan) onLabel(b symbol.Box) float64 {
	x0, x1, y0, y1 := p.cells(b)
	n := 0
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			n += int(p.taken[q]) + int(p.passes(q))
		}
	}
	return costWords * float64(n)
}

// passes is how many wires run through a point; a bend counts as one.
func (p *plan) passes(q int) uint8 {
	level, plumb := p.run[0][q], p.run[1][q]
	if q > 0 {
		level = max(level, p.run[0][q-1])
	}
	if q >= p.w {
		plumb = max(plumb, p.run[1][q-p.w])
	}
	return max(level, plumb)
}

// itemCost is what an item that is off the grid would cost among what stands there: room
// taken twice, wires and labels under it, its row, the edge of the sheet.
func (p *plan) itemCost(i int) float64 {
	f := p.measure(i)
	p.hulls[i] = f
	cost := p.d.Items[i].Forms[p.l.Items[i].Form].Cost + p.outside(f.all)
	for j := range p.hulls {
		if j != i && Touch(f.all, p.hulls[j].all) {
			cost += clash(&f, &p.hulls[j])
		}
	}
	for b := range p.d.Bars {
		if p.laid[b] && p.d.Bars[b].Row == Free && onPins(&f, barBox(p.l.Bars[b])) {
			cost += costOverlap
		}
	}
	for _, b := range f.bodies {
		cost += p.under(b, costBody)
	}
	for _, c := range f.pins {
		if c.X >= 0 && c.Y >= 0 && c.X < p.w && c.Y < p.h {
			q := c.Y*p.w + c.X
			cost += costMetal*float64(p.passes(q)) + costWords*float64(p.words[q])
		}
	}
	if f.named {
		cost += p.under(f.caption, costText)
		cost += costCaption * float64(p.l.Items[i].Caption)
	}
	return cost + p.frameCost(i, &f) + p.rowCost(i)
}

// costCaption is how much each next place for a caption is worse.
const costCaption = 1.0

// outside is what reaching beyond the edge costs.
func (p *plan) outside(b symbol.Box) float64 {
	w, h := float64(p.d.Width), float64(p.d.Height)
	return costOutside * (max(-b.X0, 0) + max(-b.Y0, 0) + max(b.X1-w, 0) + max(b.Y1-h, 0))
}

// clash is what two footprints cost each other.
func clash(a, b *footprint) float64 {
	area := 0.0
	for _, x := range a.claims {
		for _, y := range b.claims {
			area += Overlap(x, y)
		}
		if b.named {
			area += Overlap(x, b.caption)
		}
	}
	if a.named {
		for _, y := range b.claims {
			area += Overlap(a.caption, y)
		}
		if b.named {
			area += Overlap(a.caption, b.caption)
		}
	}
	if area == 0 {
		return 0
	}
	return costOverlap + costArea*area
}

// under is what the wires, labels and bars in a box cost it.
func (p *plan) under(b symbol.Box, price float64) float64 {
	x0, x1, y0, y1 := p.cells(b)
	wires, words, metal := 0, 0, 0
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			wires += int(p.passes(q))
			words += int(p.words[q])
			metal += int(p.metal[q])
		}
	}
	return price*float64(wires) + costWords*float64(words) + costMetal*float64(metal)
}

// frameCost is what an item costs that stands in a frame which is not its own.
func (p *plan) frameCost(i int, f *footprint) float64 {
	cost := 0.0
	for n := range p.d.Frames {
		if p.of[i] == n {
			continue
		}
		if area := Overlap(f.all, p.frames[n]); area > 0 {
			cost += costOverlap + costArea*area
		}
	}
	return cost
}

// rowCost is what an item costs that is out of its row, or of its order in it.
func (p *plan) rowCost(i int) float64 {
	it := &p.d.Items[i]
	if it.Level == 0 {
		return 0
	}
	cost := 0.0
	for j := range p.d.Items {
		o := &p.d.Items[j]
		if j == i || o.Level != it.Level {
			continue
		}
		if p.l.Items[j].At.Y != p.l.Items[i].At.Y {
			cost += costOffLevel
		}
		if it.Order > 0 && o.Order > 0 && (it.Order < o.Order) != (p.l.Items[i].At.X < p.l.Items[j].At.X) {
			cost += costOrder
		}
	}
	return cost
}

func abs(v int) int {
	if v < 0 {
		return -v
	}
	return v
}
