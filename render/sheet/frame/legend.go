package frame

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring/colour"
)

// Measures of the legend in millimetres.
const (
	swatch    = 6.5 // length of a line in its colour
	swatchGap = 1.0 // from the line to its code
	entryGap  = 2.2 // between entries
	swatchMM2 = 2.0 // conductor that a swatch stands for: wide enough for a tracer
)

// mostLegendRows bounds the legend.
const mostLegendRows = 3

// legend explains the wire colours that are used.
type legend struct {
	at      ink.Rect
	inPanel bool // in the free lines beside the title block
	lines   [][]legendEntry
}

type legendEntry struct {
	colour colour.Colour // zero: words only
	code   string
	words  string
	x      float64 // of the entry's left edge from that of the legend
}

// newLegend breaks the legend into rows, in the panel if all of it fits there.
func newLegend(c Content, beside ink.Rect, free int) legend {
	entries := legendEntries(c.Legend)
	if len(entries) == 0 {
		return legend{}
	}
	if lines := breakEntries(entries, beside.Width()-2*pad); len(lines) <= free {
		top := beside.Max.Y - panelLines*lineHigh - (stripHigh-panelLines*lineHigh)/2
		return legend{at: ink.Rect{Min: ink.At(beside.Min.X, top), Max: beside.Max}, inPanel: true, lines: lines}
	}
	width := beside.Width() + blockWide - 2*pad
	lines := breakEntries(entries, width)
	if len(lines) <= mostLegendRows {
		return legend{lines: lines}
	}
	// Count what has no place, leaving room for the count.
	for n := len(entries) - 1; ; n-- {
		more := legendEntry{words: fmt.Sprintf("and %d more colours", len(entries)-n)}
		lines = breakEntries(append(entries[:n:n], more), width)
		if len(lines) <= mostLegendRows {
			return legend{lines: lines}
		}
	}
}

func legendEntries(colours []colour.Colour) []legendEntry {
	var entries []legendEntry
	ours := false
	for _, c := range colours {
		if !c.Known() {
			continue
		}
		e := legendEntry{colour: c, code: ink.Clean(c.String()), words: ink.Clean(c.Name())}
		if e.words != e.code && (!c.Base.Standard() || c.Tracer != "" && !c.Tracer.Standard()) {
			e.words += " *"
			ours = true
		}
		if e.words == e.code {
			e.words = "" // bare
		}
		entries = append(entries, e)
	}
	if ours {
		entries = append(entries, legendEntry{words: "* no code of IEC 60757"})
	}
	return entries
}

// wide is the width of an entry, with room for a replaced font.
func (e legendEntry) wide() float64 {
	w := ink.Width(e.words, ink.Regular, letter)
	if e.code != "" {
		w += ink.Width(e.code+" ", ink.Bold, letter)
	}
	w *= 1 + ink.Slack
	if e.colour.Known() {
		w += swatch + swatchGap
	}
	return w
}

// breakEntries puts as many entries on a line as fit.
func breakEntries(entries []legendEntry, width float64) [][]legendEntry {
	var lines [][]legendEntry
	x := 0.0
	for _, e := range entries {
		if len(lines) == 0 || x+e.wide() > width {
			lines = append(lines, nil)
			x = 0
		}
		e.x = x
		x += e.wide() + entryGap
		lines[len(lines)-1] = append(lines[len(lines)-1], e)
	}
	return lines
}

func (l legend) rows() int { return len(l.lines) }

func (l legend) draw(page ink.Page, show wirepen.Palette) {
	if l.rows() == 0 {
		return
	}
	page.Open(ink.Group{Class: "legend", Title: "Wire colours, IEC 60757"})
	if !l.inPanel {
		page.Path(l.at.Path(), ink.Pen(ink.Wide))
	}
	for i, line := range l.lines {
		for _, e := range line {
			e.draw(page, l.at.Min.X+pad+e.x, baseline(l.at.Min.Y, i), show)
		}
	}
	page.Close()
}

func (e legendEntry) draw(page ink.Page, x, y float64, show wirepen.Palette) {
	page.Open(ink.Group{Class: "colour", Name: e.code})
	if e.colour.Known() {
		middle := y - letter/2
		wirepen.New(e.colour, swatchMM2, show).Draw(page, ink.At(x, middle), ink.At(x+swatch, middle))
		x += swatch + swatchGap
	}
	if e.code != "" {
		page.Text(ink.Text{At: ink.At(x, y), String: e.code, Capital: letter, Face: ink.Bold})
		x += ink.Width(e.code+" ", ink.Bold, letter) * (1 + ink.Slack)
	}
	if e.words != "" {
		page.Text(ink.Text{At: ink.At(x, y), String: e.words, Capital: letter})
	}
	page.Close()
}
