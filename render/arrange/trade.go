package arrange

import "sort"

// trade lets pins of an item trade places: two of them, one past some others, or all of a
// side into the order of their wires' other ends.
func (p *plan) trade(c *change) bool {
	if len(p.traders) == 0 {
		return false
	}
	i := p.traders[p.rng.n(len(p.traders))]
	set := p.d.Items[i].Trades[p.rng.n(len(p.d.Items[i].Trades))]
	slot := p.slots(i)
	switch p.rng.n(8) {
	case 0:
		p.sortPins(i, set, slot)
	case 1, 2, 3, 4:
		p.passPin(set, slot)
	default:
		a, b := set[p.rng.n(len(set))], set[p.rng.n(len(set))]
		slot[a], slot[b] = slot[b], slot[a]
	}
	p.take(c, i)
	riders, by := []int(nil), 0
	if p.rng.n(2) == 0 {
		riders, by = p.riders(c, i, set, slot)
	}
	p.remember(c)
	p.l.Items[i].Slot = slot
	for _, j := range riders {
		p.l.Items[j].At.Y += by
	}
	return true
}

// riders takes one item that hangs in a straight line on a pin that moves, with what hangs
// on it, so that it can go along. It returns them and how far the pin moves.
func (p *plan) riders(c *change, i int, set, slot []int) (items []int, by int) {
	pin := set[p.rng.n(len(set))]
	pins := p.d.Items[i].Forms[p.l.Items[i].Form].Pins
	was := pin
	if s := p.l.Items[i].Slot; s != nil {
		was = s[pin]
	}
	by = pins[slot[pin]].At.Y - pins[was].At.Y
	for _, w := range p.wires[i] {
		for k, e := range p.d.Wires[w].Ends {
			o := p.d.Wires[w].Ends[1-k]
			if e.IsBar() || e.Item != i || e.Pin != pin || o.IsBar() || o.Item == i || p.held[o.Item] {
				continue
			}
			n := len(c.items)
			p.take(c, o.Item)
			return append(items, c.items[n:]...), by
		}
	}
	return nil, 0
}

// slots returns a copy of the places of an item's pins.
func (p *plan) slots(i int) []int {
	slot := make([]int, len(p.d.Items[i].Forms[0].Pins))
	for k := range slot {
		slot[k] = k
	}
	copy(slot, p.l.Items[i].Slot)
	return slot
}

// passPin takes one pin out of its row and puts it back elsewhere.
func (p *plan) passPin(set, slot []int) {
	row := byPlace(set, slot)
	from, to := p.rng.n(len(row)), p.rng.n(len(row))
	pin := row[from]
	row = append(row[:from], row[from+1:]...)
	row = append(row[:to], append([]int{pin}, row[to:]...)...)
	deal(row, set, slot)
}

// byPlace lists the pins of a set in the order of their places.
func byPlace(set, slot []int) []int {
	row := append([]int(nil), set...)
	sort.Slice(row, func(a, b int) bool { return slot[row[a]] < slot[row[b]] })
	return row
}

// deal gives the pins of a row the places of their set, in order.
func deal(row, set, slot []int) {
	places := make([]int, len(set))
	for k, pin := range set {
		places[k] = slot[pin]
	}
	sort.Ints(places)
	for k, pin := range row {
		slot[pin] = places[k]
	}
}

// sortPins puts pins into the order of the heights at which their wires end.
func (p *plan) sortPins(i int, set, slot []int) {
	height := map[int]int{}
	for _, w := range p.wires[i] {
		for k, e := range p.d.Wires[w].Ends {
			if e.IsBar() || e.Item != i {
				continue
			}
			if t := p.d.Wires[w].Ends[1-k]; t.IsBar() {
				s := p.l.Bars[t.Pin]
				height[e.Pin] = s.Cell(s.Length / 2).Y
			} else {
				at, _ := p.l.Pin(p.d, t.Item, t.Pin)
				height[e.Pin] = at.Y
			}
		}
	}
	row := byPlace(set, slot)
	sort.SliceStable(row, func(a, b int) bool { return height[row[a]] < height[row[b]] })
	deal(row, set, slot)
}
