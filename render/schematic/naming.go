package schematic

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
)

// figures are the ratings that stand beside a symbol, the telling one first.
var figures = []string{"rating", "cells", "ohms", "power", "amps", "half-power"}

// rating is the figure that a technician looks for on the part.
func rating(d *device) string {
	p := d.part
	if d.channel > 0 {
		return channelRating(d)
	}
	for _, name := range figures {
		r, ok := p.Ratings[name]
		switch {
		case !ok:
			continue
		case name == "cells" && r.Count > 0:
			return battery(p, r.Count)
		case r.Amount.Known():
			return r.Amount.String()
		case r.Pair != nil:
			return r.Pair.First.String()
		}
	}
	return ""
}

// battery writes cells in series and capacity: "16S 110 Ah".
func battery(p *wiring.Part, cells int) string {
	s := fmt.Sprintf("%dS", cells)
	if c, ok := p.Ratings["capacity"]; ok && c.Amount.Known() {
		s += " " + c.Amount.String()
	}
	return s
}

// channelRating is that of a fuse in a block.
func channelRating(d *device) string {
	for _, e := range d.part.Elements {
		f, ok := e.(*wiring.Fuse)
		if !ok || f.B != d.terminals[0].Node {
			continue
		}
		if !f.Fitted {
			return "no fuse"
		}
		return f.Rating.String()
	}
	return ""
}

// ref is a terminal as sheets write it: "G1.−", or the part alone where it has one.
func ref(t *wiring.Terminal) string { return minus(t.Ref()) }

// plainName is a terminal's name as it is written beside a pin.
func plainName(t *wiring.Terminal) string { return minus(t.Name) }
