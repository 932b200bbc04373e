package arrange

import "github.com/lugwright/lugwright/render/symbol"

// keepRoom reserves a box for the label of a wire beside the longest run that has room,
// and one for each of its marks.
func (p *plan) keepRoom(w int) {
	v := &p.ways[w]
	v.labelled, v.missing, v.marked, v.unmarked = false, false, [2]bool{}, 0
	wire := &p.d.Wires[w]
	for end := range wire.Marks {
		if wire.Marks[end].Empty() || v.n < 2 {
			continue
		}
		v.marked[end] = p.keepMark(v, end, &wire.Marks[end], gap+wire.Thick/2)
		if !v.marked[end] {
			v.unmarked++
			continue
		}
		p.coverWords(v.room[1+end], 1) // so that the label keeps off it
	}
	v.labelled = p.keepLabel(v, wire)
	v.missing = !v.labelled && len(wire.Labels) > 0
	for end, ok := range v.marked {
		if ok {
			p.coverWords(v.room[1+end], -1)
		}
	}
}

// gap between a label and the edge of its wire, in units.
const gap = 0.24

// keepLabel looks for room for a label, along the longest run first.
func (p *plan) keepLabel(v *way, wire *Wire) bool {
	if len(wire.Labels) == 0 {
		return false
	}
	order, n := longest(v)
	for _, i := range order[:n] {
		a, b := ordered(v.corners[i-1], v.corners[i])
		for k := range wire.Labels {
			if p.roomAlong(&v.room[0], a, b, &wire.Labels[k], gap+wire.Thick/2) {
				return true
			}
		}
	}
	return false
}

// keepMark looks for room for the name of a terminal on either side of the wire's end.
func (p *plan) keepMark(v *way, end int, m *Words, gap float64) bool {
	at, next := v.corners[0], v.corners[1]
	if end == 1 {
		at, next = v.corners[v.n-1], v.corners[v.n-2]
	}
	x, y := float64(at.X), float64(at.Y)
	room := &v.room[1+end]
	for _, off := range [3]float64{0.3, 0.8, 1.6} {
		if at.Y == next.Y {
			x0 := x + off
			if next.X < at.X {
				x0 = x - off - m.Width
			}
			*room = symbol.Box{X0: x0, X1: x0 + m.Width, Y0: y - gap - m.Height, Y1: y - gap}
			if p.isFree(*room) {
				return true
			}
			room.Y0, room.Y1 = y+gap, y+gap+m.Height
		} else {
			y0 := y + off
			if next.Y < at.Y {
				y0 = y - off - m.Height
			}
			*room = symbol.Box{X0: x + gap, X1: x + gap + m.Width, Y0: y0, Y1: y0 + m.Height}
			if p.isFree(*room) {
				return true
			}
			room.X0, room.X1 = x-gap-m.Width, x-gap
		}
		if p.isFree(*room) {
			return true
		}
	}
	return false
}

// longest lists the runs of a way by their end corner, the longest first.
func longest(v *way) (order [5]int, n int) {
	for i := 1; i < v.n; i++ {
		order[n] = i
		n++
		for k := n - 1; k > 0 && v.length(order[k]) > v.length(order[k-1]); k-- {
			order[k], order[k-1] = order[k-1], order[k]
		}
	}
	return order, n
}

func (w *way) length(i int) int {
	a, b := w.corners[i-1], w.corners[i]
	return abs(a.X-b.X) + abs(a.Y-b.Y)
}

// roomAlong looks for room for words along a run: its middle first, then towards the ends.
func (p *plan) roomAlong(room *symbol.Box, a, b symbol.Cell, words *Words, gap float64) bool {
	level := a.Y == b.Y
	play := (float64(b.X-a.X) - words.Width) / 2
	if !level {
		play = (float64(b.Y-a.Y) - words.Height) / 2
	}
	if play < 0 {
		return false
	}
	mx, my := float64(a.X+b.X)/2, float64(a.Y+b.Y)/2
	for _, off := range [5]float64{0, -play / 2, play / 2, -play, play} {
		if level {
			x := mx + off - words.Width/2
			*room = symbol.Box{X0: x, X1: x + words.Width, Y0: my - gap - words.Height, Y1: my - gap}
			if p.isFree(*room) {
				return true
			}
			room.Y0, room.Y1 = my+gap, my+gap+words.Height
		} else {
			y := my + off - words.Height/2
			*room = symbol.Box{X0: mx + gap, X1: mx + gap + words.Width, Y0: y, Y1: y + words.Height}
			if p.isFree(*room) {
				return true
			}
			room.X0, room.X1 = mx-gap-words.Width, mx-gap
		}
		if p.isFree(*room) {
			return true
		}
		if play < 1 {
			break
		}
	}
	return false
}

// isFree reports whether nothing covers a box.
func (p *plan) isFree(b symbol.Box) bool {
	if b.X0 < 0 || b.Y0 < 0 || b.X1 > float64(p.d.Width) || b.Y1 > float64(p.d.Height) {
		return false
	}
	x0, x1, y0, y1 := p.cells(Grown(b, 0.2))
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			if p.taken[q]|p.run[0][q]|p.run[1][q] != 0 {
				return false
			}
		}
	}
	return true
}

// roomForName looks for room for the name of a bar.
func (p *plan) roomForName(b int) symbol.Box {
	s, e := p.l.Bars[b], p.l.Bars[b].End()
	x0, y0, x1, y1 := float64(s.At.X), float64(s.At.Y), float64(e.X), float64(e.Y)
	for k := range p.d.Bars[b].Captions {
		w := &p.d.Bars[b].Captions[k]
		var spots [4]symbol.Box
		if s.Upright {
			spots = [4]symbol.Box{
				at(w, (x0+x1)/2-w.Width/2, y0-0.7-w.Height), at(w, (x0+x1)/2-w.Width/2, y1+0.7),
				at(w, x0+0.5, (y0+y1-w.Height)/2), at(w, x0-0.5-w.Width, (y0+y1-w.Height)/2),
			}
		} else {
			spots = [4]symbol.Box{
				at(w, (x0+x1-w.Width)/2, y0-0.5-w.Height), at(w, (x0+x1-w.Width)/2, y1+0.5),
				at(w, x0-0.7-w.Width, y0-w.Height/2), at(w, x1+0.7, y1-w.Height/2),
			}
		}
		for _, box := range spots {
			if p.isFree(box) {
				return box
			}
		}
	}
	return symbol.Box{}
}

func at(w *Words, x, y float64) symbol.Box {
	return symbol.Box{X0: x, X1: x + w.Width, Y0: y, Y1: y + w.Height}
}

// barCost is what a free bar that is off the grid would cost among what stands there.
func (p *plan) barCost(b int) float64 {
	if p.d.Bars[b].Row != Free {
		return 0
	}
	s := p.l.Bars[b]
	cost := 0.0
	for i := range s.Length + 1 {
		c := s.Cell(i)
		if c.X < 1 || c.Y < p.top+2 || c.X >= p.w-1 || c.Y > p.foot-2 {
			return 1e6
		}
		q := c.Y*p.w + c.X
		if p.taken[q] > 0 {
			cost += costMetal
		}
		cost += costMetal * float64(p.passes(q))
	}
	box := barBox(s)
	for i := range p.hulls {
		if onPins(&p.hulls[i], box) {
			cost += costOverlap
		}
	}
	return cost
}

// barBox is what a bar keeps closed to items and the room before their pins.
func barBox(s Span) symbol.Box { return Grown(s.Box(), 0.3) }

// onPins reports whether a bar lies on an item or in the room before its pins.
func onPins(f *footprint, bar symbol.Box) bool {
	for _, c := range f.claims {
		if Touch(c, bar) {
			return true
		}
	}
	return false
}

// nameCost is what a bar costs whose name has no room.
func (p *plan) nameCost(b int) float64 {
	if n := p.names[b]; n.X1 <= n.X0 && len(p.d.Bars[b].Captions) > 0 {
		return costNoName
	}
	return 0
}
