package arrange

import "github.com/lugwright/lugwright/render/symbol"

// plan is a diagram with a layout under way: where everything stands, which way each wire
// takes as far as a quick look can tell, and who covers which point of the grid. It can
// tell what a change costs without looking at the whole.
type plan struct {
	d       *Diagram
	l       *Layout
	w, h    int
	wires   [][]int      // wires of each item
	flags   [][]int      // flags that hang on each item
	bars    [][]int      // wires of each bar
	of      []int        // frame of each item; -1: none
	ways    []way        // of each wire
	hulls   []footprint  // of each item as it stands
	price   []int32      // what passing through a point costs, for all that covers it
	taken   []uint8      // bodies, captions, labels and bars on a point
	words   []uint8      // labels on a point
	metal   []uint8      // bars on a point
	run     [2][]uint8   // wires on the stretch to the right of a point, below it
	frames  []symbol.Box // of each frame as it stands
	laid    []bool       // bars that are on the grid
	names   []symbol.Box // room for the name of each bar; without area: none
	top     int          // first and last row in which wires may run
	foot    int
	loose   []int // items that may be moved
	held    []bool
	traders []int // items whose pins may trade places
	order   []int // buffers of shortFirst
	reach   []int
	rng     random
}

// way is the line that a wire takes at first sight, and the room kept for its label.
type way struct {
	corners  [6]symbol.Cell
	n        int
	room     [3]symbol.Box // for the label, and for the marks at either end
	labelled bool          // there is room for the label
	marked   [2]bool       // there is room for the mark
	missing  bool          // there was no room for the label
	unmarked int           // marks without room
	back     int           // ends that it leaves or enters against the pin's side
}

// has reports whether room i is kept: that of the label, or of the mark at an end.
func (w *way) has(i int) bool {
	if i == 0 {
		return w.labelled
	}
	return w.marked[i-1]
}

// footprint is what an item keeps closed.
type footprint struct {
	bodies  []symbol.Box // closed to wires
	claims  []symbol.Box // closed to other items: the bodies, and the room before the pins
	pins    []symbol.Cell
	caption symbol.Box
	named   bool
	all     symbol.Box // hull of all that
}

const (
	skin      = 0.45 // round a body, up to its pins, in units
	pinRoom   = 1.2  // before the pins of a side
	clearance = 0.5  // half of what other items keep from a body
)

func newPlan(d *Diagram, l *Layout) *plan {
	p := &plan{d: d, l: l, w: d.Width + 1, h: d.Height + 1}
	n := p.w * p.h
	p.price, p.taken = make([]int32, n), make([]uint8, n)
	p.words, p.metal = make([]uint8, n), make([]uint8, n)
	p.names = make([]symbol.Box, len(d.Bars))
	p.laid = make([]bool, len(d.Bars))
	p.frames = make([]symbol.Box, len(d.Frames))
	for f := range d.Frames {
		p.frames[f] = l.FrameBox(d, f)
	}
	p.top, p.foot = d.Rows()
	p.run = [2][]uint8{make([]uint8, n), make([]uint8, n)}
	p.wires, p.flags = make([][]int, len(d.Items)), make([][]int, len(d.Items))
	p.bars = make([][]int, len(d.Bars))
	p.ways, p.hulls = make([]way, len(d.Wires)), make([]footprint, len(d.Items))
	p.index()
	for i := range d.Items {
		p.stand(i, 1)
	}
	for b := range d.Bars {
		p.lay(b, 1)
	}
	for w := range d.Wires {
		p.draw(w)
	}
	return p
}

// index notes which wires and flags belong to each item.
func (p *plan) index() {
	for w := range p.d.Wires {
		for _, e := range p.d.Wires[w].Ends {
			if e.IsBar() {
				p.bars[e.Pin] = append(p.bars[e.Pin], w)
			} else {
				p.wires[e.Item] = append(p.wires[e.Item], w)
			}
		}
		a, b := p.d.Wires[w].Ends[0], p.d.Wires[w].Ends[1]
		for _, pair := range [2][2]Terminal{{a, b}, {b, a}} {
			if !pair[0].IsBar() && !pair[1].IsBar() && p.d.Items[pair[0].Item].Role == Flag && pair[1].Item != pair[0].Item {
				p.flags[pair[1].Item] = append(p.flags[pair[1].Item], pair[0].Item)
			}
		}
	}
	p.of = make([]int, len(p.d.Items))
	for i := range p.of {
		p.of[i] = -1
	}
	for f := range p.d.Frames {
		for _, i := range p.d.Frames[f].Items {
			p.of[i] = f
		}
	}
}

// stand puts an item on the grid (by = 1) or takes it off (by = -1).
func (p *plan) stand(i int, by int8) {
	if by > 0 {
		p.hulls[i] = p.measure(i)
	}
	f := &p.hulls[i]
	for _, b := range f.bodies {
		p.cover(b, costBody, by)
	}
	if f.named {
		p.cover(f.caption, costText, by)
	}
	for _, c := range f.pins {
		if c.X >= 0 && c.Y >= 0 && c.X < p.w && c.Y < p.h {
			q := c.Y*p.w + c.X
			p.taken[q] += uint8(by)
			p.price[q] += costMetal * int32(by)
		}
	}
}

// measure computes the footprint of an item where it stands.
func (p *plan) measure(i int) footprint {
	f := footprint{bodies: p.hulls[i].bodies[:0], claims: p.hulls[i].claims[:0], pins: p.hulls[i].pins[:0]}
	place := &p.l.Items[i]
	form := &p.d.Items[i].Forms[place.Form]
	for _, b := range form.Body {
		f.bodies = append(f.bodies, Grown(Shifted(b, place.At), skin))
		f.claims = append(f.claims, Grown(Shifted(b, place.At), clearance))
	}
	for _, pin := range form.Pins {
		f.pins = append(f.pins, symbol.Cell{X: pin.At.X + place.At.X, Y: pin.At.Y + place.At.Y})
	}
	f.claims = claimPins(f.claims, form, place.At)
	f.all = Hull(f.claims)
	if len(form.Captions) > 0 {
		f.caption, f.named = Grown(Shifted(form.Captions[place.Caption].Box, place.At), 0.25), true
		f.all = Hull([]symbol.Box{f.all, f.caption})
	}
	return f
}

// claimPins adds the room before the pins of each side.
func claimPins(claims []symbol.Box, form *Form, at symbol.Cell) []symbol.Box {
	var room [symbol.Bottom + 1]symbol.Box
	var any [symbol.Bottom + 1]bool
	for _, pin := range form.Pins {
		x, y := float64(pin.At.X+at.X), float64(pin.At.Y+at.Y)
		b := symbol.Box{X0: min(x, x+pinRoom*float64(sideX[pin.Side])) - 0.4, X1: max(x, x+pinRoom*float64(sideX[pin.Side])) + 0.4,
			Y0: min(y, y+pinRoom*float64(sideY[pin.Side])) - 0.4, Y1: max(y, y+pinRoom*float64(sideY[pin.Side])) + 0.4}
		if any[pin.Side] {
			b = Hull([]symbol.Box{b, room[pin.Side]})
		}
		room[pin.Side], any[pin.Side] = b, true
	}
	for side := range room {
		if any[side] {
			claims = append(claims, room[side])
		}
	}
	return claims
}

// lay puts a bar and the room for its name on the grid, or takes them off.
func (p *plan) lay(b int, by int8) {
	s := p.l.Bars[b]
	for i := range s.Length + 1 {
		c := s.Cell(i)
		if c.X >= 0 && c.Y >= 0 && c.X < p.w && c.Y < p.h {
			q := c.Y*p.w + c.X
			p.metal[q] += uint8(by)
			p.taken[q] += uint8(by)
			p.price[q] += int32(by) * costMetal
		}
	}
	p.laid[b] = by > 0
	if by > 0 {
		p.names[b] = p.roomForName(b)
	}
	if n := p.names[b]; n.X1 > n.X0 {
		p.cover(n, costText, by)
	}
}

// cover counts a box in or out.
func (p *plan) cover(b symbol.Box, price int32, by int8) {
	x0, x1, y0, y1 := p.cells(b)
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			p.taken[q] += uint8(by)
			p.price[q] += price * int32(by)
		}
	}
}

// cells returns the grid points strictly inside a box.
func (p *plan) cells(b symbol.Box) (x0, x1, y0, y1 int) {
	x0, x1 = inner(b.X0, b.X1, p.w)
	y0, y1 = inner(b.Y0, b.Y1, p.h)
	return
}

// inner returns the first and last whole number strictly between two bounds, cut to 0..n-1.
func inner(lo, hi float64, n int) (int, int) {
	a, b := int(lo)+1, int(hi)
	if lo < 0 {
		a = 0
	}
	if float64(b) == hi {
		b--
	}
	if hi <= 0 {
		b = -1
	}
	return a, min(b, n-1)
}
