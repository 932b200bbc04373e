// Package arrangetest builds small invented diagrams for the tests of arrange, route, label and
// schematic, without any symbol or harness.
package arrangetest

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Builder collects a diagram.
type Builder struct {
	D    arrange.Diagram
	item map[string]int
	bar  map[string]int
	pins []map[string]int // of each item, by name
}

// New begins a diagram of a size in units.
func New(width, height int) *Builder {
	return &Builder{D: arrange.Diagram{Width: width, Height: height}, item: map[string]int{}, bar: map[string]int{}}
}

// Two adds an upright part of two pins, "1" on top and "2" at the bottom.
func (b *Builder) Two(name string, role arrange.Role) *Builder {
	body := []symbol.Box{{X0: -0.6, Y0: 0.5, X1: 0.6, Y1: 3.5}}
	pins := []symbol.Pin{{Terminal: "1", Side: symbol.Top}, {Terminal: "2", At: symbol.Cell{Y: 4}, Side: symbol.Bottom}}
	return b.add(name, role, body, pins, true)
}

// Box adds a box with pins on its four sides, two units apart; each text names the pins of
// a side, separated by blanks.
func (b *Builder) Box(name string, role arrange.Role, left, right, top, bottom string) *Builder {
	ls, rs, ts, bs := strings.Fields(left), strings.Fields(right), strings.Fields(top), strings.Fields(bottom)
	h := 2*max(len(ls), len(rs)) + 4
	w := max(12, 4*max(len(ts), len(bs))+4)
	var pins []symbol.Pin
	for i, n := range ls {
		pins = append(pins, symbol.Pin{Terminal: n, At: symbol.Cell{Y: 3 + 2*i}, Side: symbol.Left})
	}
	for i, n := range rs {
		pins = append(pins, symbol.Pin{Terminal: n, At: symbol.Cell{X: w, Y: 3 + 2*i}, Side: symbol.Right})
	}
	for i, n := range ts {
		pins = append(pins, symbol.Pin{Terminal: n, At: symbol.Cell{X: w * (i + 1) / (len(ts) + 1)}, Side: symbol.Top})
	}
	for i, n := range bs {
		pins = append(pins, symbol.Pin{Terminal: n, At: symbol.Cell{X: w * (i + 1) / (len(bs) + 1), Y: h}, Side: symbol.Bottom})
	}
	body := []symbol.Box{{X0: 0.5, Y0: 0.5, X1: float64(w) - 0.5, Y1: float64(h) - 0.5}}
	b.add(name, role, body, pins, false)
	var trade []int
	for i := range ls {
		trade = append(trade, i)
	}
	if len(trade) > 1 {
		b.D.Items[len(b.D.Items)-1].Trades = [][]int{trade}
	}
	return b
}

// add makes an item; parts that may turn get four forms.
func (b *Builder) add(name string, role arrange.Role, body []symbol.Box, pins []symbol.Pin, turns bool) *Builder {
	it := arrange.Item{Name: name, Role: role}
	n := 1
	if turns {
		n = 4
	}
	index := map[string]int{}
	for i, p := range pins {
		index[p.Terminal] = i
	}
	for t := range n {
		place := symbol.Placement{Turns: t}
		f := arrange.Form{Placement: place}
		for _, box := range body {
			f.Body = append(f.Body, place.Box(box))
		}
		for _, p := range pins {
			f.Pins = append(f.Pins, symbol.Pin{Terminal: p.Terminal, At: place.Cell(p.At), Side: place.Side(p.Side)})
		}
		if turns {
			f.Captions = captions(arrange.Hull(f.Body), name)
		}
		it.Forms = append(it.Forms, f)
	}
	b.item[name] = len(b.D.Items)
	b.D.Items = append(b.D.Items, it)
	b.pins = append(b.pins, index)
	return b
}

// captions offers a place on either side of a body that has no pins: right and left of an
// upright part, above and below a lying one.
func captions(h symbol.Box, name string) []arrange.Caption {
	w := ink.Width(name, ink.Bold, 1)
	at := func(x, y float64) arrange.Caption {
		return arrange.Caption{Box: symbol.Box{X0: x, Y0: y, X1: x + w, Y1: y + 1.2},
			Lines: []arrange.Line{{At: ink.Point{X: x, Y: y + 1}, Text: name, Face: ink.Bold}}}
	}
	mx, my := (h.X0+h.X1)/2, (h.Y0+h.Y1)/2
	if h.X1-h.X0 > h.Y1-h.Y0 {
		return []arrange.Caption{at(mx-w/2, h.Y0-1.7), at(mx-w/2, h.Y1+0.5)}
	}
	return []arrange.Caption{at(h.X1+0.5, my-0.6), at(h.X0-0.5-w, my-0.6)}
}

// Bar adds a bar; one in a row is a thick rail.
func (b *Builder) Bar(name string, row arrange.Row) *Builder {
	b.bar[name] = len(b.D.Bars)
	b.D.Bars = append(b.D.Bars, arrange.Bar{Name: name, Row: row, Owner: arrange.OnBar(0), Thick: row != arrange.Free, Captions: []arrange.Words{Words(name)}})
	return b
}

// Wire adds a wire between two ends, each "item.pin" or the name of a bar.
func (b *Builder) Wire(name, from, to, text string, weight int) *Builder {
	w := arrange.Wire{Name: name, Ends: [2]arrange.Terminal{b.Terminal(from), b.Terminal(to)}, Weight: weight, Thick: 0.14}
	if text != "" {
		w.Labels = []arrange.Words{Words(name + " " + text), Words(name, text)}
	}
	b.D.Wires = append(b.D.Wires, w)
	return b
}

// Terminal finds an end by its name. It panics if there is none: the diagram is wrong.
func (b *Builder) Terminal(ref string) arrange.Terminal {
	if i, ok := b.bar[ref]; ok {
		return arrange.OnBar(i)
	}
	part, pin, _ := strings.Cut(ref, ".")
	i, ok := b.item[part]
	if !ok {
		panic(fmt.Sprintf("arrangetest: no item %q", part))
	}
	p, ok := b.pins[i][pin]
	if !ok {
		panic(fmt.Sprintf("arrangetest: %s has no pin %q", part, pin))
	}
	return arrange.Terminal{Item: i, Pin: p}
}

// Index returns the index of an item. It panics if there is none.
func (b *Builder) Index(name string) int {
	i, ok := b.item[name]
	if !ok {
		panic(fmt.Sprintf("arrangetest: no item %q", name))
	}
	return i
}

// Words measures lines of words.
func Words(lines ...string) arrange.Words {
	w := arrange.Words{Lines: lines, Height: 1.25 + ink.LineSpacing*float64(len(lines)-1)}
	for _, l := range lines {
		w.Width = max(w.Width, ink.Width(l, ink.Regular, 1))
	}
	return w
}
