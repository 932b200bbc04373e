package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// Effort bounds the search for a better layout.
type Effort struct {
	Moves     int     // changes tried
	Hot, Cold float64 // temperature at the beginning and the end, in units of wire
	Reach     int     // how far one move may go, in units
	Seed      uint64
	Held      []bool // items that keep their place; nil: none
}

// Improve anneals a layout: it tries random changes and keeps those that make the sheet
// cheaper, and at first some that do not. The result is never dearer, at first sight, than
// the layout that was given.
func Improve(d *Diagram, l *Layout, e Effort) *Layout {
	p := newPlan(d, l.Clone())
	p.rng = newRandom(e.Seed)
	p.hold(e.Held)
	cost, least := 0.0, 0.0
	best := p.l.Clone()
	var c change
	for m := range e.Moves {
		t := e.Hot * math.Pow(e.Cold/e.Hot, float64(m)/float64(e.Moves))
		reach := max(2, int(float64(e.Reach)*(1-float64(m)/float64(e.Moves))))
		delta, ok := p.try(&c, reach, t)
		if !ok {
			continue
		}
		if cost += delta; cost < least-1e-6 {
			least = cost
			best = p.l.Clone()
		}
	}
	return best
}

// hold lists what may be moved.
func (p *plan) hold(held []bool) {
	for i := range p.d.Items {
		if !p.d.Items[i].Fixed && (held == nil || !held[i]) {
			p.loose = append(p.loose, i)
		}
	}
	for i := range p.d.Items {
		if len(p.d.Items[i].Trades) > 0 {
			p.traders = append(p.traders, i)
		}
	}
	p.held = make([]bool, len(p.d.Items))
	copy(p.held, held)
	for i := range p.d.Items {
		p.held[i] = p.held[i] || p.d.Items[i].Fixed
	}
}

// try makes one change and keeps it or takes it back. It returns what the change brought.
func (p *plan) try(c *change, reach int, t float64) (float64, bool) {
	c.items, c.places, c.bars, c.spans, c.wires, c.ways = c.items[:0], c.places[:0], c.bars[:0], c.spans[:0], c.wires[:0], c.ways[:0]
	c.before, c.after = 0, 0
	if !p.propose(c, reach) || !p.inside(c) {
		p.takeBack(c)
		return 0, false
	}
	p.settle(c)
	delta := c.after - c.before
	if delta <= 0 || p.rng.unit() < math.Exp(-delta/t) {
		return delta, true
	}
	p.undo(c)
	return 0, false
}

// frameRoom is what a frame may take beside the items that it holds, in units.
const frameRoom = 2

// inside reports whether all items of a change stand on the sheet.
func (p *plan) inside(c *change) bool {
	for _, i := range c.items {
		edge := 0.5
		if p.of[i] >= 0 {
			edge += frameRoom
		}
		if b := p.l.Reach(p.d, i); b.X0 < edge || b.Y0 < float64(p.top) || b.X1 > float64(p.d.Width)-edge || b.Y1 > float64(p.foot) {
			return false
		}
	}
	return true
}

// settle puts everything of a change back on the grid in its new place, with the wires
// that it now covers, and adds up what that costs.
func (p *plan) settle(c *change) {
	p.reframe(c)
	for _, i := range c.items {
		c.after += p.itemCost(i)
		p.stand(i, 1)
	}
	for _, b := range c.bars {
		c.after += p.barCost(b)
		p.lay(b, 1)
		c.after += p.nameCost(b)
	}
	for w := range p.ways {
		if p.ways[w].n > 0 && !c.has(w) && p.covered(w, c) {
			c.wires = append(c.wires, w)
			c.ways = append(c.ways, p.ways[w])
			c.after -= p.erase(w)
		}
	}
	for _, w := range p.shortFirst(c.wires) {
		c.after += p.draw(w)
	}
}

// shortFirst returns wires by the distance that they span, in a buffer of the plan.
func (p *plan) shortFirst(wires []int) []int {
	order, reach := p.order[:0], p.reach[:0]
	for _, w := range wires {
		r := p.reachOf(w)
		k := len(order)
		order, reach = append(order, w), append(reach, r)
		for ; k > 0 && reach[k-1] > r; k-- {
			order[k], reach[k] = order[k-1], reach[k-1]
		}
		order[k], reach[k] = w, r
	}
	p.order, p.reach = order, reach
	return order
}

// reframe measures the frames anew that hold something of a change.
func (p *plan) reframe(c *change) {
	for _, i := range c.items {
		if f := p.of[i]; f >= 0 {
			p.frames[f] = p.l.FrameBox(p.d, f)
		}
	}
	if len(c.bars) == 0 {
		return
	}
	for f := range p.frames {
		p.frames[f] = p.l.FrameBox(p.d, f)
	}
}

func (c *change) has(w int) bool {
	for _, v := range c.wires {
		if v == w {
			return true
		}
	}
	return false
}

// reachOf is the distance that a wire spans, for laying short ones first.
func (p *plan) reachOf(w int) int {
	at := func(t Terminal) symbol.Cell {
		if t.IsBar() {
			s := p.l.Bars[t.Pin]
			return s.Cell(s.Length / 2)
		}
		c, _ := p.l.Pin(p.d, t.Item, t.Pin)
		return c
	}
	a, b := at(p.d.Wires[w].Ends[0]), at(p.d.Wires[w].Ends[1])
	return abs(a.X-b.X) + abs(a.Y-b.Y)
}

// covered reports whether a moved item stands on a wire or its label.
func (p *plan) covered(w int, c *change) bool {
	v := &p.ways[w]
	for _, i := range c.items {
		f := &p.hulls[i]
		for k := range v.room {
			if v.has(k) && Touch(v.room[k], f.all) {
				return true
			}
		}
		for k := 1; k < v.n; k++ {
			a, b := ordered(v.corners[k-1], v.corners[k])
			run := symbol.Box{X0: float64(a.X) - 0.1, Y0: float64(a.Y) - 0.1, X1: float64(b.X) + 0.1, Y1: float64(b.Y) + 0.1}
			if Touch(run, f.all) {
				return true
			}
		}
	}
	return false
}

// undo takes a settled change back.
func (p *plan) undo(c *change) {
	for _, w := range c.wires {
		p.mark(w, -1)
	}
	for _, i := range c.items {
		p.stand(i, -1)
	}
	for _, b := range c.bars {
		p.lay(b, -1)
	}
	p.putBack(c)
}

// takeBack undoes a change that was never settled.
func (p *plan) takeBack(c *change) {
	if len(c.places) == 0 && len(c.spans) == 0 {
		return // nothing was taken off
	}
	p.putBack(c)
}

func (p *plan) putBack(c *change) {
	for k, i := range c.items {
		p.l.Items[i] = c.places[k]
	}
	for _, i := range c.items {
		p.stand(i, 1)
	}
	for k, b := range c.bars {
		p.l.Bars[b] = c.spans[k]
		p.lay(b, 1)
	}
	p.reframe(c)
	for k, w := range c.wires {
		p.restore(w, c.ways[k])
	}
}
