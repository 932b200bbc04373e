package arrange

import (
	"math"
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// Effort bounds the search for a better layout.
type Effort struct {
	Moves     int     // changes tried
	Hot, Cold float64 // temperature at the beginning and the end, in units of wire
	Reach     int     // how far one move may go, in units
	Seed      uint64
}

// Improve anneals a layout: it tries random changes and keeps those that make the sheet
// cheaper, and at first some that do not. The result is never dearer, at first sight, than
// the layout that was given.
func Improve(d *Diagram, l *Layout, e Effort) *Layout {
	p := newPlan(d, l.Clone())
	p.rng = newRandom(e.Seed)
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

// try makes one change and keeps it or takes it back. It returns what the change brought.
func (p *plan) try(c *change, reach int, t float64) (float64, bool) {
	c.items, c.places, c.bars, c.spans, c.wires, c.ways = c.items[:0], c.places[:0], c.bars[:0], c.spans[:0], c.wires[:0], c.ways[:0]
	c.before, c.after = 0, 0
	rails := p.railCost()
	if !p.propose(c, reach) || !p.inside(c) {
		p.takeBack(c)
		return 0, false
	}
	p.settle(c)
	delta := c.after - c.before + p.railCost() - rails
	if delta <= 0 || p.rng.unit() < math.Exp(-delta/t) {
		return delta, true
	}
	p.undo(c)
	return 0, false
}

// inside reports whether all items of a change stand on the sheet.
func (p *plan) inside(c *change) bool {
	for _, i := range c.items {
		if b := p.l.Reach(p.d, i); b.X0 < 0 || b.Y0 < 0 || b.X1 > float64(p.d.Width) || b.Y1 > float64(p.d.Height) {
			return false
		}
	}
	return true
}

// settle puts everything of a change back on the grid in its new place, with the wires
// that it now covers, and adds up what that costs.
func (p *plan) settle(c *change) {
	for _, b := range c.bars {
		p.lay(b, 1)
	}
	for _, i := range c.items {
		c.after += p.itemCost(i)
		p.stand(i, 1)
	}
	for w := range p.ways {
		if p.ways[w].n > 0 && !c.has(w) && p.covered(w, c) {
			c.wires = append(c.wires, w)
			c.ways = append(c.ways, p.ways[w])
			c.after -= p.erase(w)
		}
	}
	order := append([]int(nil), c.wires...)
	sort.SliceStable(order, func(a, b int) bool { return p.reachOf(order[a]) < p.reachOf(order[b]) })
	for _, w := range order {
		c.after += p.draw(w)
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
		if v.label.X1 > v.label.X0 && Touch(v.label, f.all) {
			return true
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
	for k, b := range c.bars {
		p.l.Bars[b] = c.spans[k]
		p.lay(b, 1)
	}
	for _, i := range c.items {
		p.stand(i, 1)
	}
	for k, w := range c.wires {
		p.restore(w, c.ways[k])
	}
}

// railCost is what rails cost that share a stretch of their row.
func (p *plan) railCost() float64 {
	cost := 0.0
	for a := range p.d.Bars {
		for b := a + 1; b < len(p.d.Bars); b++ {
			if p.d.Bars[a].Row == Free || p.d.Bars[a].Row != p.d.Bars[b].Row || p.l.Bars[a].At.Y != p.l.Bars[b].At.Y {
				continue
			}
			a0, a1 := p.extent(a)
			b0, b1 := p.extent(b)
			if over := min(a1, b1) - max(a0, b0) + railGap; over > 0 && a1 >= a0 && b1 >= b0 {
				cost += costRows + 10*float64(over)
			}
		}
	}
	return cost
}

// railGap is the least distance of two rails in one row, in units.
const railGap = 3

// extent returns the first and last column at which wires land on a rail.
func (p *plan) extent(bar int) (int, int) {
	lo, hi := p.w, -1
	for _, w := range p.bars[bar] {
		v := &p.ways[w]
		if v.n == 0 {
			continue
		}
		at := v.corners[0]
		if e := p.d.Wires[w].Ends[1]; e.IsBar() && e.Pin == bar {
			at = v.corners[v.n-1]
		}
		lo, hi = min(lo, at.X), max(hi, at.X)
	}
	return lo, hi
}
