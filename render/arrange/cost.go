package arrange

import "slices"

// Cost is what a layout comes to at first sight, in units of wire.
type Cost struct {
	Total     float64
	Length    int // of all wires, in units
	Bends     int //
	Crossings int //
	Backward  int // ends that leave a pin backwards or sideways
	Hits      int // points of wires in bodies, words and foreign bars
	NoRoom    int // labels without room
	Overlaps  int // pairs of items
}

// CostOf measures a layout. Wires are laid one after the other, each the cheapest way among
// those that lie; so the figure is a little dearer than what annealing arrived at.
func CostOf(d *Diagram, l *Layout) Cost {
	p := newPlan(d, l.Clone())
	p.settleWays()
	var c Cost
	for w := range d.Wires {
		v := &p.ways[w]
		c.Total += p.erase(w)
		for i := 1; i < v.n; i++ {
			c.Length += v.length(i)
		}
		c.Bends += max(0, v.n-2)
		c.Backward += v.back
		if v.missing {
			c.NoRoom++
		}
		c.Crossings += p.count(v, &c.Hits)
	}
	for i := range d.Items {
		p.stand(i, -1)
		c.Total += p.itemCost(i)
		for j := range i {
			if clash(&p.hulls[i], &p.hulls[j]) > 0 {
				c.Overlaps++
			}
		}
	}
	return c
}

// count returns the wires that a way crosses, and adds the points that it hits.
func (p *plan) count(v *way, hits *int) int {
	n := 0
	for i := 1; i < v.n; i++ {
		a, b := ordered(v.corners[i-1], v.corners[i])
		step, across, axis := p.w, 1, 1
		if a.Y == b.Y {
			step, across, axis = 1, p.w, 0
		}
		for k, q := 1, a.Y*p.w+a.X+step; k < v.length(i); k, q = k+1, q+step {
			if o := p.run[1-axis]; o[q] > 0 && q >= across && o[q-across] > 0 {
				n++
			}
			if p.price[q] > 0 {
				*hits++
			}
		}
	}
	return n
}

// Clashes counts the pairs of items, of items and splices, and of items and the frames of
// others, that do not keep their distance.
func Clashes(d *Diagram, l *Layout) int {
	p := &plan{d: d, hulls: make([]footprint, len(d.Items)), l: l}
	for i := range d.Items {
		p.hulls[i] = p.measure(i)
	}
	return p.clashes(l)
}

// Clashes counts what the function of that name does, for a layout in which the items stand
// where the tinker has put them.
func (t *Tinker) Clashes(l *Layout) int { return t.p.clashes(l) }

// clashes counts them for the items as they stand on the plan, among the bars of a layout.
func (p *plan) clashes(l *Layout) int {
	n := 0
	for i := range p.hulls {
		for j := range i {
			if Touch(p.hulls[i].all, p.hulls[j].all) && clash(&p.hulls[i], &p.hulls[j]) > 0 {
				n++
			}
		}
		for b := range p.d.Bars {
			if box := barBox(l.Bars[b]); p.d.Bars[b].Row == Free && onPins(&p.hulls[i], box) || p.hulls[i].named && Touch(p.hulls[i].caption, box) {
				n++
			}
		}
	}
	for f := range p.d.Frames {
		box := Grown(l.FrameBox(p.d, f), 0.2)
		for i := range p.hulls {
			if Touch(p.hulls[i].all, box) && !slices.Contains(p.d.Frames[f].Items, i) {
				n++
			}
		}
	}
	return n
}
