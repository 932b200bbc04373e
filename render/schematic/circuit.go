package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/wiring"
)

// circuit is a harness as a schematic shows it: devices with terminals, bars on which
// wires land anywhere, and the lines between them.
type circuit struct {
	h       *wiring.Harness
	devices []*device
	bars    []*bar
	lines   []*line
	on      map[*wiring.Terminal]spot
	parent  []int // of each cluster: the one that it was divided from, or itself
}

// spot is where a terminal is drawn: on a device or on a bar.
type spot struct {
	device *device
	bar    *bar
}

// device is what one symbol stands for: a part, or one fuse of a block.
type device struct {
	part      *wiring.Part
	name      string // "K1", "A1.3"
	symbol    string
	terminals []*wiring.Terminal
	channel   int // number of a fuse in its block; 0: a part of its own
	lines     []*line
	cluster   int
}

// bar is metal on which wires land side by side: a stud of the source with several lugs, a
// bus bar, the studs of a fuse block, a splice.
type bar struct {
	part      *wiring.Part
	name      string
	terminals []*wiring.Terminal
	thick     bool
	row       arrange.Row
	owner     *device // draws the pin that is the same metal; nil: none
	lines     []*line
	cluster   int
	railLike  bool // wired straight to a rail: no circuit leads through it
}

// line is a wire, or the metal between a bar and a device that belongs to it.
type line struct {
	wire *wiring.Wire // nil: metal inside a part
	ends [2]lineEnd
}

// lineEnd is where a line ends. Without a terminal the wire is capped or loose there.
type lineEnd struct {
	terminal *wiring.Terminal
	device   *device
	bar      *bar
	end      *wiring.End
}

// newCircuit reads a harness.
func newCircuit(h *wiring.Harness) *circuit {
	c := &circuit{h: h, on: map[*wiring.Terminal]spot{}}
	for _, p := range h.Parts {
		c.addPart(p)
	}
	c.addSupplies()
	for _, w := range h.Wires {
		c.addWire(w)
	}
	c.rows()
	return c
}

// addPart makes a part a device, a bar, or, if it is a block of fuses, both.
func (c *circuit) addPart(p *wiring.Part) {
	if feed, ok := feedOfBlock(p); ok {
		c.unfold(p, feed)
		return
	}
	if isBar(p) {
		c.addBar(p, p.Designation, p.Terminals).thick = len(p.Terminals) > 1
		return
	}
	d := &device{part: p, name: p.Designation, symbol: p.Kind.Symbol, terminals: p.Terminals}
	c.devices = append(c.devices, d)
	for _, t := range p.Terminals {
		c.on[t] = spot{device: d}
	}
}

func (c *circuit) addBar(p *wiring.Part, name string, terminals []*wiring.Terminal) *bar {
	b := &bar{part: p, name: name, terminals: terminals}
	c.bars = append(c.bars, b)
	for _, t := range terminals {
		c.on[t] = spot{bar: b}
	}
	return b
}

// isBar reports whether a part is nothing but metal to land on: a joint, or terminals that
// are all linked.
func isBar(p *wiring.Part) bool {
	if len(p.Terminals) == 1 {
		return p.Terminals[0].Form.Type == wiring.Joint
	}
	if len(p.Terminals) < 2 || len(p.Elements) != 1 {
		return false
	}
	l, ok := p.Elements[0].(*wiring.Link)
	return ok && len(l.Join) == len(p.Terminals)
}

// leastFuses is how many fuses on one terminal make a block of it.
const leastFuses = 3

// feedOfBlock returns the node that feeds the fuses of a block.
func feedOfBlock(p *wiring.Part) (wiring.NodeID, bool) {
	count := map[wiring.NodeID]int{}
	for _, e := range p.Elements {
		if f, ok := e.(*wiring.Fuse); ok {
			if count[f.A]++; count[f.A] == leastFuses {
				return f.A, true
			}
		}
	}
	return wiring.NoNode, false
}

// unfold makes a fuse block a feed rail, its fuses, and a negative rail for what is linked.
func (c *circuit) unfold(p *wiring.Part, feed wiring.NodeID) {
	var feeds, rest []*wiring.Terminal
	channel := map[wiring.NodeID]*wiring.Fuse{}
	for _, e := range p.Elements {
		if f, ok := e.(*wiring.Fuse); ok && f.A == feed {
			channel[f.B] = f
		}
	}
	var fuses []*device
	for i, t := range p.Terminals {
		f := channel[t.Node]
		switch {
		case t.Node == feed:
			feeds = append(feeds, t)
		case f != nil && (f.Fitted || len(t.Wires) > 0):
			n := f.Channel
			if n == 0 {
				n = i + 1
			}
			d := &device{part: p, name: p.Designation + "." + t.Name, symbol: "fuse", terminals: []*wiring.Terminal{t}, channel: n}
			fuses = append(fuses, d)
			c.on[t] = spot{device: d}
		case f == nil:
			rest = append(rest, t)
		}
	}
	b := c.addBar(p, p.Designation+"."+names(feeds), feeds)
	b.thick, b.row = true, arrange.TopRow
	c.devices = append(c.devices, fuses...)
	for _, d := range fuses {
		c.link(lineEnd{bar: b}, lineEnd{device: d})
	}
	c.unfoldRest(p, rest)
}

// unfoldRest makes bars of the other terminals of a block, one for what is linked.
func (c *circuit) unfoldRest(p *wiring.Part, rest []*wiring.Terminal) {
	of := map[wiring.NodeID]wiring.NodeID{}
	for _, e := range p.Elements {
		if l, ok := e.(*wiring.Link); ok {
			for _, n := range l.Join {
				of[n] = l.Join[0]
			}
		}
	}
	root := func(n wiring.NodeID) wiring.NodeID {
		if r, ok := of[n]; ok {
			return r
		}
		return n
	}
	for len(rest) > 0 {
		var mine, others []*wiring.Terminal
		for _, t := range rest {
			if root(t.Node) == root(rest[0].Node) {
				mine = append(mine, t)
			} else {
				others = append(others, t)
			}
		}
		b := c.addBar(p, p.Designation+"."+names(mine), mine)
		b.thick, b.row = true, arrange.BottomRow
		rest = others
	}
}

// names joins the names of terminals.
func names(ts []*wiring.Terminal) string {
	s := ""
	for i, t := range ts {
		if i > 0 {
			s += " "
		}
		s += minus(t.Name)
	}
	return s
}

// minus writes a hyphen at the end of a terminal's name as the sign that it means.
func minus(name string) string {
	if n := len(name); n > 0 && name[n-1] == '-' {
		return name[:n-1] + "−"
	}
	return name
}

// addWire adds a wire and its ends.
func (c *circuit) addWire(w *wiring.Wire) {
	l := &line{wire: w}
	for i, e := range w.Ends() {
		l.ends[i] = lineEnd{terminal: e.Terminal, end: e}
		if e.Terminal != nil {
			s := c.on[e.Terminal]
			l.ends[i].device, l.ends[i].bar = s.device, s.bar
		}
	}
	c.add(l)
}

// link adds the metal between a bar and a device.
func (c *circuit) link(a, b lineEnd) { c.add(&line{ends: [2]lineEnd{a, b}}) }

func (c *circuit) add(l *line) {
	c.lines = append(c.lines, l)
	for _, e := range l.ends {
		switch {
		case e.device != nil:
			e.device.lines = append(e.device.lines, l)
		case e.bar != nil:
			e.bar.lines = append(e.bar.lines, l)
		}
	}
}

// other returns the end of a line that is not the given device or bar.
func (l *line) other(d *device, b *bar) *lineEnd {
	if d != nil && l.ends[0].device == d || b != nil && l.ends[0].bar == b {
		return &l.ends[1]
	}
	return &l.ends[0]
}
