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
func refine(d *arrange.Diagram, c *composed, tries int) *composed {
	tinker := arrange.NewTinker(d, refineReach, 1)
	best := quality(d, c)
	for i := range tries {
		items := sore(d, c)
		if i%4 == 3 {
			items = nil // and now and then anywhere
		}
		l, ok := tinker.Change(c.whole, items)
		if !ok {
			continue
		}
		n := finish(d, l, c)
		if q := quality(d, n); q < best {
			c, best = n, q
		}
	}
	if len(c.routes.Failed) > 0 {
		c = finish(d, c.whole, nil)
	}
	c.labels = label.Place(d, c.layout, c.routes.Paths, c.routes.Dots, true)
	return c
}

// sore lists the items at the ends of wires that have no label or no good one, or that bend
// often.
func sore(d *arrange.Diagram, c *composed) []int {
	seen := make([]bool, len(d.Items))
	var items []int
	add := func(w int) {
		for _, e := range d.Wires[w].Ends {
			if !e.IsBar() && !seen[e.Item] && !d.Items[e.Item].Fixed {
				seen[e.Item] = true
				items = append(items, e.Item)
			}
		}
	}
	for _, m := range c.labels.Missing {
		if m.Kind == label.OfWire || m.Kind == label.OfMark {
			add(m.Index)
		}
	}
	for _, l := range c.labels.Labels {
		if l.Kind == label.OfWire && l.Turned {
			add(l.Index)
		}
	}
	for w, p := range c.routes.Paths {
		if len(p) > manyCorners {
			add(w)
		}
	}
	return items
}

// manyCorners of a path, its ends included, call for a better place of what it joins.
const manyCorners = 4
