package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/label"
)

// refineReach is how far one change moves things, in units.
const refineReach = 8

// refine tries changes of a layout near what is still wrong on the sheet, routes and labels
// each, and keeps what makes the sheet better. Labels without a place on their own wire get
// leaders at the end.
func (k *desk) refine(c *composed, tries int) *composed {
	k.tinker = arrange.NewTinker(k.d, c.whole, refineReach, 1)
	best := k.quality(c)
	for i := range tries {
		items := sore(k.d, c)
		if i%4 == 3 {
			items = nil // and now and then anywhere
		}
		if !k.tinker.Change(items) {
			continue
		}
		n := k.again(c, false)
		if q := k.quality(n); q < best {
			c, best = n, q
		} else {
			k.tinker.Undo()
		}
	}
	c.whole = k.tinker.Layout()
	if len(c.routes.Failed) > 0 {
		c = k.finish(c.whole)
	}
	c.labels = k.writer.Place(c.layout, c.routes.Paths, c.routes.Dots, true)
	return k.repair(c)
}

// mendable is how many faults of a sheet are worth repairing: with more of them another
// attempt gets further.
const mendable = 2

// mostRepairs bounds the changes that are tried for the last few words without a place.
const mostRepairs = 40

// repair goes on with changes near what still has no place, leaders allowed, until all is
// on the sheet.
func (k *desk) repair(c *composed) *composed {
	least := k.quality(c)
	for range mostRepairs {
		if n := faults(c); n == 0 || n > mendable {
			break
		}
		if !k.tinker.Change(unplaced(k.d, c)) {
			continue
		}
		n := k.again(c, true)
		if q := k.quality(n); faults(n) < faults(c) || faults(n) == faults(c) && q < least {
			c, least = n, q
		} else {
			k.tinker.Undo()
		}
	}
	c.whole = k.tinker.Layout()
	return c
}

// unplaced lists the items at the ends of wires whose words, or which themselves, have no
// place, and of wires on a bar without a name.
func unplaced(d *arrange.Diagram, c *composed) []int {
	p := newPicking(d)
	for _, w := range c.routes.Failed {
		p.wire(w)
	}
	for _, m := range c.labels.Missing {
		if m.Kind == label.OfWire || m.Kind == label.OfMark {
			p.wire(m.Index)
			continue
		}
		for w := range d.Wires {
			for _, e := range d.Wires[w].Ends {
				if m.Kind == label.OfBar && e.IsBar() && e.Pin == m.Index {
					p.wire(w)
				}
			}
		}
	}
	return p.items
}

// picking collects items, each once.
type picking struct {
	d     *arrange.Diagram
	seen  []bool
	items []int
}

func newPicking(d *arrange.Diagram) *picking {
	return &picking{d: d, seen: make([]bool, len(d.Items))}
}

// wire adds the items at the ends of a wire.
func (p *picking) wire(w int) {
	for _, e := range p.d.Wires[w].Ends {
		if !e.IsBar() && !p.seen[e.Item] && !p.d.Items[e.Item].Fixed {
			p.seen[e.Item] = true
			p.items = append(p.items, e.Item)
		}
	}
}

// sore lists the items at the ends of wires that have no label or no good one, or that bend
// often.
func sore(d *arrange.Diagram, c *composed) []int {
	p := newPicking(d)
	for _, m := range c.labels.Missing {
		if m.Kind == label.OfWire || m.Kind == label.OfMark {
			p.wire(m.Index)
		}
	}
	for _, l := range c.labels.Labels {
		if l.Kind == label.OfWire && l.Turned {
			p.wire(l.Index)
		}
	}
	for w, path := range c.routes.Paths {
		if len(path) > manyCorners {
			p.wire(w)
		}
	}
	return p.items
}

// manyCorners of a path, its ends included, call for a better place of what it joins.
const manyCorners = 4
