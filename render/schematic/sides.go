package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
)

// sideOf wishes a side of the box for a terminal: up and down to the rails, right to what
// the device drives or feeds, left for what commands it.
func (g *drafting) sideOf(d *device, t *wiring.Terminal) symbol.Side {
	if b := g.c.on[t].bar; b != nil && b.owner == d {
		return sideOfRow(b.row)
	}
	for _, out := range outputs(d.part) {
		if out == t {
			return symbol.Right
		}
	}
	switch row := g.rowBehind(d, t); {
	case row != arrange.Free:
		return sideOfRow(row)
	case g.c.isSource(d):
		return symbol.Right
	}
	if g.drives(d, t) {
		return symbol.Right
	}
	return symbol.Left
}

func sideOfRow(row arrange.Row) symbol.Side {
	switch row {
	case arrange.TopRow:
		return symbol.Top
	case arrange.BottomRow:
		return symbol.Bottom
	}
	return symbol.AnySide
}

// rowBehind returns the row of the rail that a terminal reaches by wires and fuses, and a
// traction cable by contacts, not through hand-operated things.
func (g *drafting) rowBehind(d *device, t *wiring.Terminal) arrange.Row {
	seen := map[*wiring.Terminal]bool{t: true}
	queue := []*wiring.Terminal{t}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, w := range at.Wires {
			o := w.Other(at).Terminal
			if o == nil || seen[o] || o.Form.Type == wiring.Port {
				continue
			}
			seen[o] = true
			s := g.c.on[o]
			if s.bar != nil {
				if s.bar.row != arrange.Free {
					return s.bar.row
				}
				continue
			}
			queue = append(queue, through(o, seen, weightOf(w) >= heavyWeight)...)
		}
	}
	return arrange.Free
}

// through lists the terminals behind a fuse, or behind a contact where traction current
// goes that way.
func through(t *wiring.Terminal, seen map[*wiring.Terminal]bool, heavy bool) []*wiring.Terminal {
	var ts []*wiring.Terminal
	for _, e := range t.Part.Elements {
		var a, b wiring.NodeID
		switch x := e.(type) {
		case *wiring.Fuse:
			a, b = x.A, x.B
		case *wiring.Contact:
			if !heavy {
				continue
			}
			a, b = x.A, x.B
		default:
			continue
		}
		far := b
		if t.Node == b {
			far = a
		} else if t.Node != a {
			continue
		}
		for _, o := range t.Part.Terminals {
			if o.Node == far && !seen[o] {
				seen[o] = true
				ts = append(ts, o)
			}
		}
	}
	return ts
}

// drives reports whether a terminal is wired to what moves the cart, straight or through
// the contacts of a drum.
func (g *drafting) drives(d *device, t *wiring.Terminal) bool {
	for _, w := range t.Wires {
		o := w.Other(t).Terminal
		if o != nil && o.Part != d.part && (o.Part.Kind.Traction || weightOf(w) >= heavyWeight && !d.part.Kind.Traction) {
			return true
		}
	}
	return false
}

// manyPins makes a box that others gather round.
const manyPins = 5

// roleOf says what a device is to the layout.
func roleOf(c *circuit, d *device) arrange.Role {
	switch {
	case c.isSource(d):
		return arrange.Source
	case d.part.Kind.Traction:
		return arrange.Companion
	case len(d.part.Controls) > 0 && d.channel == 0 && !charges(d.part):
		if d.cluster == traction {
			return arrange.Control
		}
		return arrange.InChain
	case len(outputs(d.part)) > 0 || charges(d.part) || len(d.terminals) >= manyPins && !hasContact(d.part):
		return arrange.Host
	}
	return arrange.InChain
}

func hasContact(p *wiring.Part) bool {
	for _, e := range p.Elements {
		if _, ok := e.(*wiring.Contact); ok {
			return true
		}
	}
	return false
}
