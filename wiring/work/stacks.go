package work

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/stack"
)

// lugsOf lists the strands on a terminal of the bench as one of the carts has them, from the
// face outwards; p is the part as that cart has it, nil if it has not.
func (b *bench) lugsOf(t *wiring.Terminal, p *wiring.Part, h *wiring.Harness) lugs {
	own := originalTerminal(b.device(t), t, p)
	if own == nil {
		return nil
	}
	var all lugs
	for _, l := range stack.Of(h, own, b.tables, nil) {
		if s := b.strandOf[l.Wire]; s != nil {
			all = append(all, s)
		}
	}
	return all
}

// originalTerminal is a terminal of the bench as a cart has it.
func originalTerminal(d *Device, t *wiring.Terminal, p *wiring.Part) *wiring.Terminal {
	if p == nil {
		return nil
	}
	for i, mine := range d.Terminals {
		if mine == t && i < len(p.Terminals) {
			return p.Terminals[i]
		}
	}
	return nil
}

// finalStack is the order of lugs on a terminal when the work is done.
func (b *bench) finalStack(t *wiring.Terminal) lugs {
	d := b.device(t)
	if !d.New {
		return nil
	}
	return b.lugsOf(t, d.Part, b.new)
}
