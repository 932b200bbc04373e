package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Prices of drawing a symbol otherwise than it stands, in units of wire.
const (
	costTurned   = 3 // lying
	costOver     = 5 // upside down
	costMirrored = 1
)

// forms lists the ways to draw a symbol whose words stand beside it. What hangs in a row
// stays upright.
func forms(s symbol.Shape, tails []bool, captions [][]string, upright bool) []arrange.Form {
	turns := [4]float64{0, costTurned, costOver, costTurned}
	var fs []arrange.Form
	for _, mirror := range [2]bool{false, true} {
		for t, cost := range turns {
			if upright && (t > 0 || mirror) {
				continue
			}
			if mirror {
				cost += costMirrored
			}
			f := formOf(s, symbol.Placement{Turns: t, Mirror: mirror}, tails, captions, cost)
			if !known(fs, &f) {
				fs = append(fs, f)
			}
		}
	}
	return fs
}

// known reports whether a form looks like one that is there.
func known(fs []arrange.Form, f *arrange.Form) bool {
	for i := range fs {
		if sameForm(&fs[i], f) {
			return true
		}
	}
	return false
}

func sameForm(a, b *arrange.Form) bool {
	for i := range a.Body {
		if a.Body[i] != b.Body[i] {
			return false
		}
	}
	for i := range a.Pins {
		if a.Pins[i] != b.Pins[i] {
			return false
		}
	}
	return true
}

// formOf turns a symbol and finds places for its words.
func formOf(s symbol.Shape, at symbol.Placement, tails []bool, captions [][]string, cost float64) arrange.Form {
	p := s.Place(at)
	f := arrange.Form{Placement: at, Body: p.Body, Pins: p.Pins, Cost: cost}
	for i, tail := range tails {
		if tail {
			f.Pins[i].At = outward(f.Pins[i].At, f.Pins[i].Side, tailLength)
		}
	}
	for _, spot := range p.Notes {
		for _, lines := range captions {
			f.Captions = append(f.Captions, caption(spot, lines))
		}
	}
	return f
}

// aboveLine is how much higher words stand than the symbol offers, so that what hangs below
// their baseline keeps off the wire beside it, in units.
const aboveLine = 0.2

// tailLength is how much farther a pin reaches on which several wires land, in units, so
// that they can leave to the side without passing over the pins beside it.
const tailLength = 1

// outward is the cell some units before a pin.
func outward(c symbol.Cell, side symbol.Side, by int) symbol.Cell {
	switch side {
	case symbol.Left:
		c.X -= by
	case symbol.Right:
		c.X += by
	case symbol.Top:
		c.Y -= by
	case symbol.Bottom:
		c.Y += by
	}
	return c
}

// caption sets lines at a spot, the first one bold.
func caption(spot symbol.Spot, lines []string) arrange.Caption {
	var c arrange.Caption
	var boxes []symbol.Box
	for i, text := range lines {
		face := ink.Regular
		if i == 0 {
			face = ink.Bold
		}
		at := spot.Baseline(i, len(lines))
		if !spot.Down {
			at.Y -= aboveLine
		}
		c.Lines = append(c.Lines, arrange.Line{At: at, Anchor: spot.Anchor, Text: text, Face: face, Slot: i})
		boxes = append(boxes, lineBox(at, spot.Anchor, textWidth(text, face)))
	}
	c.Box = arrange.Hull(boxes)
	return c
}

// lineBox is what a line of words covers.
func lineBox(at ink.Point, anchor ink.Anchor, width float64) symbol.Box {
	x := at.X
	switch anchor {
	case ink.Middle:
		x -= width / 2
	case ink.End:
		x -= width
	}
	return symbol.Box{X0: x, X1: x + width, Y0: at.Y - 1.05, Y1: at.Y + descent + 0.05}
}

// trades lists the pins of a box that may trade places: those of one upright side that
// reach equally far.
func trades(s symbol.Shape, tails []bool) [][]int {
	var sets [][]int
	for _, side := range [2]symbol.Side{symbol.Left, symbol.Right} {
		for _, tail := range [2]bool{false, true} {
			var set []int
			for i, p := range s.Pins {
				if p.Side == side && tails[i] == tail {
					set = append(set, i)
				}
			}
			if len(set) > 1 {
				sets = append(sets, set)
			}
		}
	}
	return sets
}

// columnWidth is how wide the words beside a symbol become before they are broken, in units.
const columnWidth = 9.5

// captionsOf lists the ways to write what stands beside a symbol.
func captionsOf(d *device) [][]string {
	if d.channel > 0 {
		return [][]string{{d.name, rating(d)}}
	}
	t, r := d.part.Short(), rating(d)
	lines := append([]string{d.name}, wrap(t, ink.Regular, columnWidth)...)
	if r == "" {
		return [][]string{lines}
	}
	ways := [][]string{append(append([]string{}, lines...), r)}
	if len(lines) > 2 && textWidth(t, ink.Regular) < longColumn {
		ways = append(ways, []string{d.name, t, r})
	}
	return ways
}

// longColumn is how wide they may stay in a second way to write them.
const longColumn = 16

// boxWidth is the same for words inside a box.
const boxWidth = 11

// boxLines are the words inside a box.
func boxLines(d *device) []string {
	lines := append([]string{d.name}, wrap(d.part.Short(), ink.Regular, boxWidth)...)
	if r := rating(d); r != "" {
		lines = append(lines, r)
	}
	return lines
}

// flagWords lists the ways to write what stands beside a flag: the wire, and where it goes.
func (g *drafting) flagWords(f *flag) [][]string {
	where := g.set.where(f)
	var ways [][]string
	for _, w := range wireWords(f.line.wire) {
		if len(w.Lines) <= 2 {
			ways = append(ways, append(append([]string{}, w.Lines...), where))
		}
	}
	if len(ways) > 2 {
		ways = ways[:2]
	}
	return ways
}

// plain sets all words beside the forms in the regular face.
func plain(fs []arrange.Form) {
	for i := range fs {
		for j := range fs[i].Captions {
			for k := range fs[i].Captions[j].Lines {
				fs[i].Captions[j].Lines[k].Face = ink.Regular
			}
		}
	}
}
