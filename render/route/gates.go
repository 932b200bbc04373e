package route

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// A gate is a point at which a wire may leave a terminal.
type gate struct {
	at    int
	out   int  // direction of leaving
	price int  // of using it
	turn  bool // the wire may turn at the very point, as in front of a pin
}

// terminal is the metal that wires land on: a pin with its trunk, or a bar.
type terminal struct {
	gates []gate
	pin   int    // point of the pin; none for a bar
	trunk []int  // points from the pin outwards, the pin first; empty unless several wires land here
	bar   int    // index of the bar; none for a pin
	box   [4]int // hull of the gates: x0, y0, x1, y1
}

// terminals are numbered pins first, item by item, then the bars.
func (r *Router) number(t arrange.Terminal) int {
	if t.IsBar() {
		return r.pins + t.Pin
	}
	return r.base[t.Item] + t.Pin
}

// countTerminals numbers the terminals and counts the wires on each.
func (r *Router) countTerminals() {
	for i := range r.d.Items {
		r.base = append(r.base, r.pins)
		r.pins += len(r.d.Items[i].Forms[0].Pins)
	}
	r.count = make([]int, r.pins+len(r.d.Bars))
	for i := range r.d.Wires {
		for _, e := range r.d.Wires[i].Ends {
			r.count[r.number(e)]++
		}
	}
	r.terms = make([]terminal, len(r.count))
}

// openTerminals lays the metal of all pins and bars on the grid and finds their gates.
func (r *Router) openTerminals() {
	for t := range r.terms {
		r.terms[t] = terminal{gates: r.terms[t].gates[:0], trunk: r.terms[t].trunk[:0], bar: none, pin: none}
	}
	for i := range r.d.Items {
		for pin := range r.d.Items[i].Forms[0].Pins {
			r.layPin(i, pin)
		}
	}
	for b := range r.d.Bars {
		r.layBar(b)
	}
	for i := range r.d.Items {
		for pin := range r.d.Items[i].Forms[0].Pins {
			r.openPin(i, pin, r.count[r.base[i]+pin])
		}
	}
	for t := range r.terms {
		r.terms[t].measure(r.grid)
	}
}

func (r *Router) layPin(item, pin int) {
	c, side := r.l.Pin(r.d, item, pin)
	t := r.base[item] + pin
	if !r.grid.inside(c.X, c.Y) {
		return
	}
	p := r.grid.point(c)
	r.terms[t].pin = p
	r.grid.metal[p] = int32(t)
	r.grid.front[r.grid.next(p, outward(side))] = int32(t)
}

// openPin gives a pin its gates: one way out for one wire, a trunk for several.
func (r *Router) openPin(item, pin, wires int) {
	id := r.base[item] + pin
	t := &r.terms[id]
	if t.pin == none || wires == 0 {
		return
	}
	_, side := r.l.Pin(r.d, item, pin)
	out := outward(side)
	if wires == 1 {
		t.gates = append(t.gates, gate{at: t.pin, out: out, turn: true})
		return
	}
	t.trunk = r.layTrunk(t.trunk, id, out, trunkPerWire*(wires-1))
	for i, p := range t.trunk {
		price := priceTee
		if i == 0 {
			price = priceTeeAtPin
		}
		t.gates = append(t.gates, gate{at: p, out: (out + 1) & 3, price: price}, gate{at: p, out: (out + 3) & 3, price: price})
	}
	t.gates = append(t.gates, gate{at: t.trunk[len(t.trunk)-1], out: out})
}

// layTrunk takes up to length free points in front of a pin.
func (r *Router) layTrunk(trunk []int, id, out, length int) []int {
	p := r.terms[id].pin
	trunk = append(trunk, p)
	for len(trunk) <= length {
		axis, at := r.grid.stretch(p, out)
		q := r.grid.next(p, out)
		if r.grid.solid[q] || r.grid.shut[axis][at] || r.grid.metal[q] != none {
			break
		}
		if f := r.grid.front[q]; f != none && f != int32(id) {
			break
		}
		r.grid.metal[q] = int32(id)
		trunk = append(trunk, q)
		p = q
	}
	return trunk
}

func (r *Router) layBar(bar int) {
	span := r.l.Bars[bar]
	t := &r.terms[r.pins+bar]
	t.bar = bar
	a, b := right, left
	if !span.Upright {
		a, b = down, up
	}
	for i := range span.Length + 1 {
		c := span.Cell(i)
		if !r.grid.inside(c.X, c.Y) {
			continue
		}
		p := r.grid.point(c)
		r.grid.metal[p] = int32(r.pins + bar)
		r.shadeBar(p, a, b)
		switch r.d.Bars[bar].Row {
		case arrange.TopRow:
			t.gates = append(t.gates, gate{at: p, out: down})
		case arrange.BottomRow:
			t.gates = append(t.gates, gate{at: p, out: up})
		default:
			t.gates = append(t.gates, gate{at: p, out: a}, gate{at: p, out: b})
		}
	}
	if r.d.Bars[bar].Row == arrange.Free {
		t.gates = append(t.gates, r.barEnds(span, a)...)
	}
}

// shadeBar makes the points on both sides of a bar dearer: a wire close along it could be
// taken for it.
func (r *Router) shadeBar(p, a, b int) {
	for _, side := range [2]int{a, b} {
		q := r.grid.next(p, side)
		r.grid.beside[q] = max(r.grid.beside[q], priceBesideBar)
	}
}

// barEnds lets a wire leave a free bar in its own line.
func (r *Router) barEnds(span arrange.Span, across int) []gate {
	along := right
	if across == right {
		along = down
	}
	var ends []gate
	for _, e := range []struct {
		c   symbol.Cell
		out int
	}{{span.End(), along}, {span.At, opposite(along)}} {
		if r.grid.inside(e.c.X, e.c.Y) {
			ends = append(ends, gate{at: r.grid.point(e.c), out: e.out, price: priceTee})
		}
	}
	return ends
}

// measure computes the hull of the gates.
func (t *terminal) measure(g *grid) {
	for i, gt := range t.gates {
		c := g.cell(gt.at)
		if i == 0 {
			t.box = [4]int{c.X, c.Y, c.X, c.Y}
			continue
		}
		t.box = [4]int{min(t.box[0], c.X), min(t.box[1], c.Y), max(t.box[2], c.X), max(t.box[3], c.Y)}
	}
}
