package arrange

import "github.com/lugwright/lugwright/render/symbol"

// side vectors: where a wire goes that leaves a pin.
var sideX, sideY = [...]int{symbol.AnySide: 0, symbol.Left: -1, symbol.Right: 1, symbol.Top: 0, symbol.Bottom: 0},
	[...]int{symbol.AnySide: 0, symbol.Left: 0, symbol.Right: 0, symbol.Top: -1, symbol.Bottom: 1}

// tip is an end of a wire: a point, and the side on which a wire leaves it.
type tip struct {
	at   symbol.Cell
	side symbol.Side
}

// best finds the cheapest straight, L-, Z- or U-shaped way of a wire.
func (p *plan) best(w int) way {
	t := trial{p: p, bend: costBend}
	if p.d.Wires[w].Weight >= heavyWeight {
		t.bend *= costHeavy
	}
	t.least = offSheet // dearer ways leave the sheet: then there is none
	ends := p.d.Wires[w].Ends
	switch {
	case !ends[0].IsBar() && !ends[1].IsBar():
		t.between(p.tip(ends[0]), p.tip(ends[1]))
	case ends[0].IsBar() && ends[1].IsBar():
		t.bars(ends[0].Pin, ends[1].Pin)
	case ends[1].IsBar():
		t.toBar(p.tip(ends[0]), ends[1].Pin, false)
	default:
		t.toBar(p.tip(ends[1]), ends[0].Pin, true)
	}
	return t.way
}

func (p *plan) tip(t Terminal) tip {
	c, s := p.l.Pin(p.d, t.Item, t.Pin)
	return tip{c, s}
}

// trial compares ways of one wire.
type trial struct {
	p     *plan
	bend  float64
	least float64
	way   way
}

// offer judges a way given by its corners and keeps it if it is the best so far.
func (t *trial) offer(a, b tip, corners ...symbol.Cell) {
	var w way
	for _, c := range corners {
		w.add(c)
	}
	if w.n < 2 {
		return
	}
	w.back = backward(a, w.corners[1]) + backward(b, w.corners[w.n-2])
	cost := t.p.shape(&w, t.bend)
	if cost >= t.least {
		return
	}
	if cost += t.p.onGrid(&w, t.least-cost); cost < t.least {
		t.least, t.way = cost, w
	}
}

// add appends a corner, leaving out points on the way.
func (w *way) add(c symbol.Cell) {
	if w.n > 0 && w.corners[w.n-1] == c {
		return
	}
	if w.n > 1 {
		a, b := w.corners[w.n-2], w.corners[w.n-1]
		if a.X == b.X && b.X == c.X && (b.Y-a.Y)*(c.Y-b.Y) > 0 || a.Y == b.Y && b.Y == c.Y && (b.X-a.X)*(c.X-b.X) > 0 {
			w.corners[w.n-1] = c
			return
		}
	}
	if w.n < len(w.corners) {
		w.corners[w.n] = c
		w.n++
	}
}

// backward counts 2 for a way that leaves a tip backwards, 1 for one that turns at it.
func backward(t tip, next symbol.Cell) int {
	if t.side == symbol.AnySide {
		return 0
	}
	forward := (next.X-t.at.X)*sideX[t.side] + (next.Y-t.at.Y)*sideY[t.side]
	switch {
	case forward > 0:
		return 0
	case forward < 0:
		return 2
	}
	return 1
}

// stand is how far from a pin a wire first turns, in units.
const stand = 2

// between offers the ways from a pin to a pin.
func (t *trial) between(a, b tip) {
	if a.at.X == b.at.X || a.at.Y == b.at.Y {
		t.offer(a, b, a.at, b.at)
	}
	dx, dy := abs(a.at.X-b.at.X), abs(a.at.Y-b.at.Y)
	if float64(dx+dy) >= t.least {
		return
	}
	if costLength*float64(dx+dy)+t.bend >= t.least {
		return
	}
	t.offer(a, b, a.at, symbol.Cell{X: b.at.X, Y: a.at.Y}, b.at)
	t.offer(a, b, a.at, symbol.Cell{X: a.at.X, Y: b.at.Y}, b.at)
	if !t.worth(dx + dy) {
		return
	}
	lo, hi := min(a.at.X, b.at.X), max(a.at.X, b.at.X)
	for _, x := range [5]int{(lo + hi) / 2, a.at.X + stand*sideX[a.side], b.at.X + stand*sideX[b.side], lo - stand, hi + stand} {
		if t.worth(dx+dy+2*max(lo-x, x-hi, 0)) && x != a.at.X && x != b.at.X {
			t.offer(a, b, a.at, symbol.Cell{X: x, Y: a.at.Y}, symbol.Cell{X: x, Y: b.at.Y}, b.at)
		}
	}
	lo, hi = min(a.at.Y, b.at.Y), max(a.at.Y, b.at.Y)
	for _, y := range [5]int{(lo + hi) / 2, a.at.Y + stand*sideY[a.side], b.at.Y + stand*sideY[b.side], lo - stand, hi + stand} {
		if t.worth(dx+dy+2*max(lo-y, y-hi, 0)) && y != a.at.Y && y != b.at.Y {
			t.offer(a, b, a.at, symbol.Cell{X: a.at.X, Y: y}, symbol.Cell{X: b.at.X, Y: y}, b.at)
		}
	}
}

// worth reports whether a way of two bends and a length could still be the best.
func (t *trial) worth(length int) bool {
	return costLength*float64(length)+2*t.bend < t.least
}

// toBar offers the ways from a pin to a bar; with flip the wire begins at the bar.
func (t *trial) toBar(a tip, bar int, flip bool) {
	for _, off := range [3]int{0, stand * 2, -stand * 2} {
		tap := t.p.tap(a.at, bar, off)
		if flip {
			t.between(tap, a)
		} else {
			t.between(a, tap)
		}
	}
}

// tap is the point of a bar nearest to a cell, moved along by off, and the side on which
// a wire from the cell lands.
func (p *plan) tap(c symbol.Cell, bar, off int) tip {
	s := p.l.Bars[bar]
	if s.Upright {
		y := max(s.At.Y, min(c.Y+off, s.At.Y+s.Length))
		side := symbol.Right
		if c.X < s.At.X {
			side = symbol.Left
		}
		return tip{symbol.Cell{X: s.At.X, Y: y}, side}
	}
	x := max(s.At.X, min(c.X+off, s.At.X+s.Length))
	side := symbol.Bottom
	if row := p.d.Bars[bar].Row; row == BottomRow || row == Free && c.Y < s.At.Y {
		side = symbol.Top
	}
	return tip{symbol.Cell{X: x, Y: s.At.Y}, side}
}

// bars offers the ways between two bars.
func (t *trial) bars(a, b int) {
	sa := t.p.l.Bars[a]
	for _, from := range [3]symbol.Cell{sa.At, sa.Cell(sa.Length / 2), sa.End()} {
		there := t.p.tap(from, b, 0)
		here := t.p.tap(there.at, a, 0)
		t.between(here, t.p.tap(here.at, b, 0))
	}
}

// draw finds the way of a wire, keeps room for its label and puts both on the grid. It
// returns what the wire costs among what stands there now.
func (p *plan) draw(w int) float64 {
	p.ways[w] = p.best(w)
	p.keepRoom(w)
	cost := p.costOf(w)
	p.mark(w, 1)
	return cost
}

// erase takes a wire off the grid and returns what it cost among the rest.
func (p *plan) erase(w int) float64 {
	p.mark(w, -1)
	return p.costOf(w)
}

// restore puts a wire back the way it was.
func (p *plan) restore(w int, was way) {
	p.ways[w] = was
	p.mark(w, 1)
}

// mark counts a wire and its label in or out.
func (p *plan) mark(w int, by int8) {
	v := &p.ways[w]
	for i := 1; i < v.n; i++ {
		a, b := ordered(v.corners[i-1], v.corners[i])
		if a.Y == b.Y {
			for x := a.X; x < b.X; x++ {
				p.run[0][a.Y*p.w+x] += uint8(by)
			}
			continue
		}
		for y := a.Y; y < b.Y; y++ {
			p.run[1][y*p.w+a.X] += uint8(by)
		}
	}
	for i := range v.room {
		if v.has(i) {
			p.coverWords(v.room[i], by)
		}
	}
}

// coverWords counts the room for a label in or out.
func (p *plan) coverWords(b symbol.Box, by int8) {
	x0, x1, y0, y1 := p.cells(b)
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			p.words[q] += uint8(by)
			p.taken[q] += uint8(by)
			p.price[q] += costWords * int32(by)
		}
	}
}

func ordered(a, b symbol.Cell) (symbol.Cell, symbol.Cell) {
	if a.X > b.X || a.Y > b.Y {
		return b, a
	}
	return a, b
}
