package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/wiring"
)

// addSupplies makes rails of the studs at the two ends of the source, if several lugs land
// there. A string of batteries has one rail at either end; its jumpers are wires.
func (c *circuit) addSupplies() {
	positive, negative := poles(c.h)
	for _, t := range c.terminalsOf(positive) {
		if c.isEnd(t, negative) {
			c.supply(t, arrange.TopRow)
		}
	}
	for _, t := range c.terminalsOf(negative) {
		if c.isEnd(t, positive) {
			c.supply(t, arrange.BottomRow)
		}
	}
}

// poles returns the nodes of the positive and negative poles of all sources.
func poles(h *wiring.Harness) (positive, negative map[wiring.NodeID]bool) {
	positive, negative = map[wiring.NodeID]bool{}, map[wiring.NodeID]bool{}
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if s, ok := e.(*wiring.Source); ok {
				positive[s.A], negative[s.B] = true, true
			}
		}
	}
	return positive, negative
}

// terminalsOf lists the terminals of nodes in the order of the harness.
func (c *circuit) terminalsOf(nodes map[wiring.NodeID]bool) []*wiring.Terminal {
	var ts []*wiring.Terminal
	for _, p := range c.h.Parts {
		for _, t := range p.Terminals {
			if t.Form.Type != wiring.Port && nodes[t.Node] {
				ts = append(ts, t)
			}
		}
	}
	return ts
}

// isEnd reports whether no wire joins the terminal to a pole of the other sort, as the
// jumpers of a string do.
func (c *circuit) isEnd(t *wiring.Terminal, others map[wiring.NodeID]bool) bool {
	for _, w := range t.Wires {
		if o := w.Other(t).Terminal; o != nil && o.Form.Type != wiring.Port && others[o.Node] {
			return false
		}
	}
	return true
}

// supply makes a stud a rail that its device owns.
func (c *circuit) supply(t *wiring.Terminal, row arrange.Row) {
	d := c.on[t].device
	if d == nil || len(t.Wires) < 2 {
		return
	}
	b := &bar{part: t.Part, name: t.Part.Designation + "." + minus(t.Name), terminals: []*wiring.Terminal{t}, thick: true, row: row, owner: d}
	c.bars = append(c.bars, b)
	c.on[t] = spot{bar: b}
	c.link(lineEnd{device: d, terminal: t}, lineEnd{bar: b})
}

// rows tells the bars that are wired straight to a rail; the thick ones among them lie in
// its row.
func (c *circuit) rows() {
	for changed := true; changed; {
		changed = false
		for _, b := range c.bars {
			row, ok := c.rowNear(b)
			if b.row != arrange.Free || b.railLike || !ok {
				continue
			}
			b.railLike, changed = true, true
			if b.thick {
				b.row = row
			}
		}
	}
}

// rowNear returns the row of a rail to which a bar is wired.
func (c *circuit) rowNear(b *bar) (arrange.Row, bool) {
	positive, negative := poles(c.h)
	for _, l := range b.lines {
		o := l.other(nil, b)
		switch {
		case o.bar != nil && o.bar.row != arrange.Free:
			return o.bar.row, true
		case o.terminal != nil && o.terminal.Form.Type != wiring.Port && positive[o.terminal.Node]:
			return arrange.TopRow, true
		case o.terminal != nil && o.terminal.Form.Type != wiring.Port && negative[o.terminal.Node]:
			return arrange.BottomRow, true
		}
	}
	return arrange.Free, false
}
