package schematic

import (
	"fmt"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/rank"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
)

// drafting makes the diagram of a sheet and remembers what each of its things stands for.
type drafting struct {
	set    *set
	c      *circuit
	s      *content
	d      arrange.Diagram
	items  []*part         // by index of the item
	itemOf map[*device]int //
	barOf  map[*bar]int    //
	wires  []*drawn        // by index of the wire
}

// part is what an item of the diagram is drawn from.
type part struct {
	device *device // nil: a flag
	flag   *flag
	ask    symbol.Ask
	symbol string
	shape  symbol.Shape
	tails  []bool // pins that reach farther than the symbol's, for several wires
}

// drawn is a wire of the diagram.
type drawn struct {
	line *line
	flag *flag // it ends in this flag
}

// draft makes the diagram of a sheet of a size in units.
func draft(set *set, s *content, width, height int) (*drafting, error) {
	g := &drafting{set: set, c: set.circuit, s: s, itemOf: map[*device]int{}, barOf: map[*bar]int{}}
	g.d.Width, g.d.Height, g.d.Ranker = width, height, rank.Dot{}
	for _, d := range s.devices {
		if err := g.addDevice(d); err != nil {
			return nil, fmt.Errorf("schematic: %s: %w", d.name, err)
		}
	}
	for _, b := range s.bars {
		g.addBar(b)
	}
	for _, l := range s.lines {
		g.addLine(l)
	}
	for _, f := range s.flags {
		if err := g.addFlag(f); err != nil {
			return nil, fmt.Errorf("schematic: %w", err)
		}
	}
	g.addFrames()
	g.own()
	return g, nil
}

// addDevice makes an item of a device.
func (g *drafting) addDevice(d *device) error {
	p := &part{device: d, symbol: d.symbol, ask: g.ask(d)}
	if err := p.build(); err != nil {
		return err
	}
	it := arrange.Item{Name: d.name, Role: roleOf(g.c, d), Section: d.cluster}
	if p.shape.Marked {
		// words stand inside, unless the symbol has no field for them
		p.ask.Lines = boxLines(d)
		if err := p.build(); err != nil {
			return err
		}
	}
	p.tails = g.tails(d)
	p.outfit(&it, d)
	switch {
	case d.channel > 0:
		it.Order, it.Level, it.Shelf = d.channel, 1, true
	case len(outputs(d.part)) > 0:
		it.Order = feederOrder
	}
	g.itemOf[d] = len(g.d.Items)
	g.d.Items = append(g.d.Items, it)
	g.items = append(g.items, p)
	return nil
}

// tails tells the pins of a device on which several lines of this sheet land.
func (g *drafting) tails(d *device) []bool {
	tails := make([]bool, len(g.ask(d).Terminals))
	count := make([]int, len(tails))
	for _, l := range d.lines {
		for k := range l.ends {
			if l.ends[k].device == d {
				count[g.pinOf(&l.ends[k])]++
			}
		}
	}
	for i, n := range count {
		tails[i] = n > 1
	}
	return tails
}

// feederOrder puts what feeds another section at the right end of its own.
const feederOrder = 1000

func (p *part) build() error {
	s, err := symbol.Build(p.symbol, p.ask)
	p.shape = s
	return err
}

// outfit gives an item its forms, with captions where its words stand outside, and the
// pins that may trade places.
func (p *part) outfit(it *arrange.Item, d *device) {
	if len(p.ask.Lines) > 0 {
		it.Forms = []arrange.Form{formOf(p.shape, symbol.Placement{}, p.tails, nil, 0)}
		it.Trades = trades(p.shape, p.tails)
		return
	}
	it.Forms = forms(p.shape, p.tails, captionsOf(d), d.channel > 0)
}

// ask lists the terminals of a device for its symbol.
func (g *drafting) ask(d *device) symbol.Ask {
	var a symbol.Ask
	if d.channel > 0 {
		a.Terminals = []symbol.Terminal{{Name: "in"}, {Name: plainName(d.terminals[0])}}
		return a
	}
	for _, t := range d.terminals {
		a.Terminals = append(a.Terminals, symbol.Terminal{Name: t.Name, Label: plainName(t), Side: g.sideOf(d, t)})
	}
	a.Closed = restClosed(d.part)
	return a
}

// restClosed reports whether the first control of a part stands closed at rest.
func restClosed(p *wiring.Part) bool {
	for _, e := range p.Elements {
		if s, ok := e.(*wiring.Switch); ok && s.Control != nil {
			return len(s.Closes[s.Control.Positions[0]]) > 0
		}
	}
	return false
}

// pinOf returns the index of the pin at which an end of a line stands.
func (g *drafting) pinOf(e *lineEnd) int {
	if e.device.channel > 0 {
		if e.terminal == nil {
			return 0
		}
		return 1
	}
	for i, t := range e.device.terminals {
		if t == e.terminal {
			return i
		}
	}
	return 0
}

func (g *drafting) terminal(e *lineEnd) arrange.Terminal {
	if e.bar != nil {
		return arrange.OnBar(g.barOf[e.bar])
	}
	return arrange.Terminal{Item: g.itemOf[e.device], Pin: g.pinOf(e)}
}

// addBar makes a bar.
func (g *drafting) addBar(b *bar) {
	g.barOf[b] = len(g.d.Bars)
	g.d.Bars = append(g.d.Bars, arrange.Bar{Name: b.name, Row: b.row, Owner: arrange.OnBar(0), Thick: b.thick, Captions: g.barWords(b)})
}

// barWords lists the ways to write the name of a bar.
func (g *drafting) barWords(b *bar) []arrange.Words {
	name := g.set.barName(g.s, b)
	if b.owner != nil || feeds(b) || b.part.Title == "" && b.thick {
		return []arrange.Words{nameWords(name)}
	}
	t := b.part.Short()
	all := []arrange.Words{nameWords(name + " " + t)}
	if lines := wrap(t, ink.Regular, 9); len(lines) > 0 {
		all = append(all, nameWords(append([]string{name}, lines...)...))
	}
	return all
}

// nameWords measures a block whose first line is set in the bold face.
func nameWords(lines ...string) arrange.Words {
	w := words(lines...)
	w.Width = max(w.Width, textWidth(lines[0], ink.Bold))
	return w
}

// feeds reports whether a bar is part of an unfolded block.
func feeds(b *bar) bool { return len(b.part.Terminals) != len(b.terminals) }

// own notes which pin is the metal of each rail.
func (g *drafting) own() {
	for b, i := range g.barOf {
		g.d.Bars[i].Owner = arrange.OnBar(0)
		if item, ok := g.itemOf[b.owner]; b.owner != nil && ok {
			e := lineEnd{device: b.owner, terminal: b.terminals[0]}
			g.d.Bars[i].Owner = arrange.Terminal{Item: item, Pin: g.pinOf(&e)}
		}
	}
}

// addLine makes a wire of a line both ends of which are here.
func (g *drafting) addLine(l *line) {
	w := arrange.Wire{Name: lineName(l), Ends: [2]arrange.Terminal{g.terminal(&l.ends[0]), g.terminal(&l.ends[1])}}
	g.dress(&w, l)
	for i := range l.ends {
		w.Marks[i] = g.markOf(&l.ends[i], l)
	}
	g.d.Wires = append(g.d.Wires, w)
	g.wires = append(g.wires, &drawn{line: l})
}

// lineName is the wire's name, or that of the metal inside a part.
func lineName(l *line) string {
	if l.wire != nil {
		return l.wire.Name()
	}
	for _, e := range l.ends {
		if e.bar != nil {
			return e.bar.name
		}
	}
	return ""
}

// dress gives a wire its weight, breadth and labels.
func (g *drafting) dress(w *arrange.Wire, l *line) {
	if l.wire == nil {
		w.Weight, w.Thick = 2, lineThick(nil)
		if l.ends[0].bar != nil && l.ends[0].bar.owner != nil || l.ends[1].bar != nil && l.ends[1].bar.owner != nil {
			w.Weight, w.Thick = 4, arrange.RailWidth
		}
		return
	}
	w.Weight, w.Thick = weightOf(l.wire), lineThick(l.wire)
	w.Labels = wireWords(l.wire)
}

// markOf is the name of a terminal that stands beside the end of a wire, where the symbol
// does not say it: once for each terminal.
func (g *drafting) markOf(e *lineEnd, l *line) arrange.Words {
	if e.terminal == nil || l.wire == nil {
		return arrange.Words{}
	}
	if e.bar != nil {
		if len(e.bar.terminals) < 2 || feeds(e.bar) && len(e.terminal.Wires) > 1 {
			return arrange.Words{}
		}
		return words(plainName(e.terminal))
	}
	p := g.items[g.itemOf[e.device]]
	if p.shape.Marked || e.terminal.Form.Type == wiring.Port || unnamed[p.symbol] || e.device.channel > 0 || firstOn(e.terminal) != l.wire {
		return arrange.Words{}
	}
	return words(plainName(e.terminal))
}

// unnamed are the symbols that say by themselves which terminal is which, or on which it
// does not matter.
var unnamed = map[string]bool{"fuse": true, "breaker": true, "resistor": true, "diode": true, "capacitor": true, "frame": true, "splice": true}

func firstOn(t *wiring.Terminal) *wiring.Wire {
	if len(t.Wires) == 0 {
		return nil
	}
	return t.Wires[0]
}

// addFlag makes an item and a wire of a line that ends elsewhere.
func (g *drafting) addFlag(f *flag) error {
	p := &part{flag: f, symbol: "reference", ask: symbol.Ask{Terminals: []symbol.Terminal{{Name: "to"}}}}
	if f.there().terminal == nil {
		p.symbol = "capped"
	}
	if err := p.build(); err != nil {
		return err
	}
	it := arrange.Item{Name: lineName(f.line), Role: arrange.Flag, Forms: forms(p.shape, nil, g.flagWords(f), false)}
	plain(it.Forms)
	here := g.terminal(&f.line.ends[f.here])
	w := arrange.Wire{Name: it.Name, Ends: [2]arrange.Terminal{here, {Item: len(g.d.Items)}}}
	g.dress(&w, f.line)
	w.Labels = nil
	w.Marks[0] = g.markOf(&f.line.ends[f.here], f.line)
	g.d.Items = append(g.d.Items, it)
	g.items = append(g.items, p)
	g.d.Wires = append(g.d.Wires, w)
	g.wires = append(g.wires, &drawn{line: f.line, flag: f})
	return nil
}

// addFrames draws a dash-dot line round what is left together of an unfolded block.
func (g *drafting) addFrames() {
	for _, b := range g.s.bars {
		if !feeds(b) || b.owner != nil || b.row != arrange.TopRow {
			continue
		}
		f := arrange.Frame{Name: b.part.Designation, Bars: []int{g.barOf[b]}, Caption: words(blockWords(b.part))}
		for _, d := range g.s.devices {
			if d.part == b.part && d.channel > 0 {
				f.Items = append(f.Items, g.itemOf[d])
			}
		}
		g.d.Frames = append(g.d.Frames, f)
	}
}

// blockWords is the title of a block's frame: what it is, and which channels are free.
func blockWords(p *wiring.Part) string {
	text := p.Designation + " " + p.Short()
	free := ""
	for _, e := range p.Elements {
		f, ok := e.(*wiring.Fuse)
		if !ok || f.Fitted {
			continue
		}
		for _, t := range p.Terminals {
			if t.Node == f.B && len(t.Wires) == 0 {
				free += " " + t.Name
			}
		}
	}
	if free != "" {
		text += ", free:" + free
	}
	return text
}
