package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// change is a move under trial: which items and bars it touches, and what there was.
type change struct {
	items  []int
	places []Place
	bars   []int
	spans  []Span
	wires  []int
	ways   []way
	before float64
	after  float64
}

// propose makes one random change of the layout, without looking at its cost.
func (p *plan) propose(c *change, reach int) bool {
	switch k := p.rng.n(100); {
	case k < 22:
		return p.shift(c, reach)
	case k < 38:
		return p.align(c)
	case k < 51:
		return p.jump(c)
	case k < 56:
		return p.swap(c)
	case k < 61:
		return p.turn(c)
	case k < 67:
		return p.recaption(c)
	case k < 75:
		return p.trade(c)
	case k < 84:
		return p.shiftBar(c, reach)
	case k < 90:
		return p.cluster(c, reach)
	}
	return p.openGap(c)
}

// take adds an item, and the flags that hang on it, to a change.
func (p *plan) take(c *change, i int) {
	for _, j := range c.items {
		if j == i {
			return
		}
	}
	c.items = append(c.items, i)
	for _, f := range p.flags[i] {
		p.take(c, f)
	}
}

// by moves all items of a change.
func (p *plan) by(c *change, dx, dy int) {
	p.remember(c)
	for _, i := range c.items {
		p.l.Items[i].At.X += dx
		if !p.d.Items[i].Shelf {
			p.l.Items[i].At.Y += dy
		}
	}
	for _, b := range c.bars {
		p.l.Bars[b].At.X += dx
		p.l.Bars[b].At.Y += dy
	}
}

// remember notes the places of everything in a change, and takes it off the grid.
func (p *plan) remember(c *change) {
	for _, i := range c.items {
		c.places = append(c.places, p.l.Items[i])
		for _, w := range p.wires[i] {
			c.touch(w)
		}
	}
	for _, b := range c.bars {
		c.spans = append(c.spans, p.l.Bars[b])
		for _, w := range p.bars[b] {
			c.touch(w)
		}
	}
	for _, w := range c.wires {
		c.ways = append(c.ways, p.ways[w])
		c.before += p.erase(w)
	}
	for _, i := range c.items {
		p.stand(i, -1)
		c.before += p.itemCost(i)
		p.hulls[i].all = symbol.Box{} // no one to clash with while it is off
		p.hulls[i].bodies, p.hulls[i].claims = p.hulls[i].bodies[:0], p.hulls[i].claims[:0]
		p.hulls[i].named = false
	}
	for _, b := range c.bars {
		c.before += p.nameCost(b)
		p.lay(b, -1)
		c.before += p.barCost(b)
	}
}

func (c *change) touch(w int) {
	for _, v := range c.wires {
		if v == w {
			return
		}
	}
	c.wires = append(c.wires, w)
}

// some picks a random item that may move.
func (p *plan) some() (int, bool) {
	if len(p.loose) == 0 {
		return 0, false
	}
	return p.loose[p.rng.n(len(p.loose))], true
}

// offset is a random distance, small ones more often.
func (p *plan) offset(reach int) int {
	d := 1 + p.rng.n(1+p.rng.n(reach))
	if p.rng.n(2) == 0 {
		return -d
	}
	return d
}

func (p *plan) shift(c *change, reach int) bool {
	i, ok := p.some()
	if !ok {
		return false
	}
	p.take(c, i)
	dx, dy := p.offset(reach), p.offset(reach)
	switch p.rng.n(4) {
	case 0, 1:
		dy = 0
	case 2:
		dx = 0
	}
	p.by(c, dx, dy)
	return true
}

// align brings a pin into line with the other end of its wire.
func (p *plan) align(c *change) bool {
	i, ok := p.some()
	if !ok || len(p.wires[i]) == 0 {
		return false
	}
	w := &p.d.Wires[p.wires[i][p.rng.n(len(p.wires[i]))]]
	mine, other := w.Ends[0], w.Ends[1]
	if mine.IsBar() || mine.Item != i {
		mine, other = other, mine
	}
	at, side := p.l.Pin(p.d, mine.Item, mine.Pin)
	there, ok := p.aim(at, side, other)
	if !ok {
		return false
	}
	p.take(c, i)
	dx, dy := there.X-at.X, 0
	if side == symbol.Left || side == symbol.Right {
		dx, dy = 0, there.Y-at.Y
	}
	if dx == 0 && dy == 0 {
		return false
	}
	p.by(c, dx, dy)
	return true
}

// aim is the point with which a pin should be in line.
func (p *plan) aim(at symbol.Cell, side symbol.Side, t Terminal) (symbol.Cell, bool) {
	if !t.IsBar() {
		c, _ := p.l.Pin(p.d, t.Item, t.Pin)
		return c, true
	}
	s := p.l.Bars[t.Pin]
	level := side == symbol.Left || side == symbol.Right
	if level != s.Upright {
		return symbol.Cell{}, false
	}
	return s.Cell(p.rng.n(s.Length + 1)), true
}

// jump puts an item, perhaps in another form, straight before the other end of one of its
// wires.
func (p *plan) jump(c *change) bool {
	i, ok := p.some()
	if !ok || len(p.wires[i]) == 0 || p.d.Items[i].Shelf {
		return false
	}
	w := &p.d.Wires[p.wires[i][p.rng.n(len(p.wires[i]))]]
	mine, other := w.Ends[0], w.Ends[1]
	if mine.IsBar() || mine.Item != i {
		mine, other = other, mine
	}
	there, ok := p.landing(other)
	if !ok {
		return false
	}
	p.take(c, i)
	p.remember(c)
	was := p.l.Items[i].At
	p.pickForm(i, mine.Pin, facing(there.side))
	at, _ := p.l.Pin(p.d, i, mine.Pin)
	far := 2 + p.rng.n(longestJump)
	dx, dy := there.at.X+far*sideX[there.side]-at.X, there.at.Y+far*sideY[there.side]-at.Y
	p.l.Items[i].At.X += dx
	p.l.Items[i].At.Y += dy
	is := p.l.Items[i].At
	for _, j := range c.items {
		if j != i {
			p.l.Items[j].At.X += is.X - was.X
			p.l.Items[j].At.Y += is.Y - was.Y
		}
	}
	return true
}

// longestJump is how far before the other end an item may land, in units.
const longestJump = 16

// landing is the point before which an item may be put for a wire, and its side.
func (p *plan) landing(t Terminal) (tip, bool) {
	if !t.IsBar() {
		return p.tip(t), true
	}
	s := p.l.Bars[t.Pin]
	at := s.Cell(p.rng.n(s.Length + 1))
	switch {
	case p.d.Bars[t.Pin].Row == TopRow:
		return tip{at, symbol.Bottom}, true
	case p.d.Bars[t.Pin].Row == BottomRow:
		return tip{at, symbol.Top}, true
	case s.Upright:
		return tip{at, [2]symbol.Side{symbol.Left, symbol.Right}[p.rng.n(2)]}, true
	}
	return tip{at, [2]symbol.Side{symbol.Top, symbol.Bottom}[p.rng.n(2)]}, true
}

// pickForm picks a random form among those in which a pin stands on a side; without one
// the form stays.
func (p *plan) pickForm(i, pin int, side symbol.Side) {
	forms := p.d.Items[i].Forms
	slot := pin
	if s := p.l.Items[i].Slot; s != nil {
		slot = s[pin]
	}
	from := p.rng.n(len(forms))
	for k := range forms {
		f := (from + k) % len(forms)
		if forms[f].Pins[slot].Side == side {
			if f != p.l.Items[i].Form {
				p.l.Items[i].Form = f
				p.l.Items[i].Caption = p.captionFor(i)
			}
			return
		}
	}
}

// swap lets two items trade places.
func (p *plan) swap(c *change) bool {
	i, ok := p.some()
	j, ok2 := p.some()
	if !ok || !ok2 || i == j || p.d.Items[i].Role == Flag || p.d.Items[j].Role == Flag || p.d.Items[i].Level != p.d.Items[j].Level {
		return false
	}
	a, b := p.middle(i), p.middle(j)
	p.take(c, i)
	n := len(c.items)
	p.take(c, j)
	p.remember(c)
	for k, m := range c.items {
		dx, dy := b.X-a.X, b.Y-a.Y
		if k >= n {
			dx, dy = -dx, -dy
		}
		p.l.Items[m].At.X += dx
		p.l.Items[m].At.Y += dy
	}
	return true
}

// middle is the cell in the middle of an item's bodies.
func (p *plan) middle(i int) symbol.Cell {
	place := &p.l.Items[i]
	h := Hull(p.d.Items[i].Forms[place.Form].Body)
	return symbol.Cell{X: place.At.X + int(math.Floor((h.X0+h.X1)/2)), Y: place.At.Y + int(math.Floor((h.Y0+h.Y1)/2))}
}

// turn draws an item in another form.
func (p *plan) turn(c *change) bool {
	i, ok := p.some()
	if !ok || len(p.d.Items[i].Forms) < 2 {
		return false
	}
	was := p.middle(i)
	c.items = append(c.items, i)
	p.remember(c)
	n := len(p.d.Items[i].Forms)
	p.l.Items[i].Form = (p.l.Items[i].Form + 1 + p.rng.n(n-1)) % n
	p.l.Items[i].Caption = p.captionFor(i)
	is := p.middle(i)
	p.l.Items[i].At.X += was.X - is.X
	p.l.Items[i].At.Y += was.Y - is.Y
	return true
}

// captionFor picks a caption that the form has.
func (p *plan) captionFor(i int) int {
	n := len(p.d.Items[i].Forms[p.l.Items[i].Form].Captions)
	if n < 2 {
		return 0
	}
	return p.rng.n(n)
}

func (p *plan) recaption(c *change) bool {
	i, ok := p.some()
	if !ok {
		return false
	}
	n := len(p.d.Items[i].Forms[p.l.Items[i].Form].Captions)
	if n < 2 {
		return false
	}
	c.items = append(c.items, i)
	p.remember(c)
	p.l.Items[i].Caption = (p.l.Items[i].Caption + 1 + p.rng.n(n-1)) % n
	return true
}

// shiftBar moves a free bar, makes it longer or shorter, or turns it; a rail keeps its row.
func (p *plan) shiftBar(c *change, reach int) bool {
	if len(p.d.Bars) == 0 {
		return false
	}
	b := p.rng.n(len(p.d.Bars))
	if p.d.Bars[b].Row != Free {
		return p.shiftBorder(c, b, reach)
	}
	c.bars = append(c.bars, b)
	switch p.rng.n(6) {
	case 0:
		p.by(c, p.offset(reach), 0)
	case 1:
		p.by(c, 0, p.offset(reach))
	case 2:
		p.by(c, p.offset(reach), p.offset(reach))
	case 3:
		p.remember(c)
		p.pivot(b)
	default:
		p.remember(c)
		p.stretch(b)
	}
	return p.barInside(b)
}

// pivot turns a bar about its middle.
func (p *plan) pivot(b int) {
	s := &p.l.Bars[b]
	m := s.Cell(s.Length / 2)
	s.Upright = !s.Upright
	if s.Upright {
		s.At = symbol.Cell{X: m.X, Y: m.Y - s.Length/2}
	} else {
		s.At = symbol.Cell{X: m.X - s.Length/2, Y: m.Y}
	}
}

// stretch moves one end of a bar, which keeps room for what lands on it.
func (p *plan) stretch(b int) {
	s := &p.l.Bars[b]
	by := p.offset(3)
	least := max(1, len(p.bars[b])-2)
	if s.Length+by < least {
		return
	}
	s.Length += by
	if p.rng.n(2) == 0 {
		if s.Upright {
			s.At.Y -= by
		} else {
			s.At.X -= by
		}
	}
}

func (p *plan) barInside(b int) bool {
	s := p.l.Bars[b]
	e := s.End()
	return s.At.X > 0 && s.At.Y > p.top+1 && e.X < p.w-1 && e.Y < p.foot-1
}

// cluster moves an item with those that stand in line with it.
func (p *plan) cluster(c *change, reach int) bool {
	i, ok := p.some()
	if !ok {
		return false
	}
	p.take(c, i)
	level := p.rng.n(2) == 0
	for k := 0; k < len(c.items) && len(c.items) < 12; k++ {
		for _, w := range p.wires[c.items[k]] {
			p.takeInLine(c, w, level)
		}
	}
	if level {
		p.by(c, 0, p.offset(reach))
	} else {
		p.by(c, p.offset(reach), 0)
	}
	return true
}

// takeInLine adds the items at the ends of a wire that runs straight in a direction.
func (p *plan) takeInLine(c *change, w int, level bool) {
	v := &p.ways[w]
	if v.n != 2 || (v.corners[0].Y == v.corners[1].Y) != level {
		return
	}
	for _, e := range p.d.Wires[w].Ends {
		if !e.IsBar() && !p.held[e.Item] {
			p.take(c, e.Item)
		}
	}
}

// openGap moves everything beyond a line, or between two lines, a little to one side: it
// gives room where it is wanted and takes it where there is some to spare.
func (p *plan) openGap(c *change) bool {
	level, by := p.rng.n(2) == 0, p.offset(5)
	size := p.w
	if level {
		size = p.h
	}
	from, to := p.rng.n(size), p.rng.n(size)
	switch p.rng.n(4) {
	case 0:
		to = size
	case 1:
		from = -1
	}
	if from > to {
		from, to = to, from
	}
	moves := func(m symbol.Cell) bool {
		v := m.X
		if level {
			v = m.Y
		}
		return from < v && v < to
	}
	for i := range p.d.Items {
		if !p.held[i] && moves(p.middle(i)) {
			p.take(c, i)
		}
	}
	for b := range p.d.Bars {
		if p.d.Bars[b].Row == Free && moves(p.l.Bars[b].Cell(p.l.Bars[b].Length/2)) {
			c.bars = append(c.bars, b)
		}
	}
	if len(c.items) == 0 {
		return false
	}
	if level {
		p.by(c, 0, by)
	} else {
		p.by(c, by, 0)
	}
	for _, b := range c.bars {
		if !p.barInside(b) {
			return false
		}
	}
	return true
}
