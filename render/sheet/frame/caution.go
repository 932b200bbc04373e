package frame

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
)

// mostCautionRows bounds the cautions on a sheet; the hand-over sheet has them all.
const mostCautionRows = 4

// wordWide is the width of the field of a signal word, in millimetres.
const wordWide = 27.0

// cautions are sentences with signal words, over the title block.
type cautions struct {
	at    ink.Rect
	lines []cautionLine
}

type cautionLine struct {
	word  SignalWord
	first bool // the line that carries the signal word
	words string
}

func newCautions(list []Caution, width float64) cautions {
	room := fits(width - wordWide - 2*pad)
	var c cautions
	for n, w := range list {
		lines := ink.Wrap(w.Text, ink.Regular, letter, room, 2)
		left := len(list) - n
		// The last row says how many more there are, unless this is the last.
		if len(c.lines)+len(lines) > mostCautionRows || left > 1 && len(c.lines)+len(lines) == mostCautionRows {
			c.lines = append(c.lines, cautionLine{word: w.Word, first: true, words: fmt.Sprintf("and %d more: see the hand-over sheet", left)})
			return c
		}
		for i, words := range lines {
			c.lines = append(c.lines, cautionLine{w.Word, i == 0, words})
		}
	}
	return c
}

func (c cautions) rows() int { return len(c.lines) }

func (c cautions) draw(page ink.Page) {
	if c.rows() == 0 {
		return
	}
	page.Open(ink.Group{Class: "cautions"})
	page.Path(c.at.Path(), ink.Pen(ink.Wide))
	for i, line := range c.lines {
		y := c.at.Min.Y + float64(i)*lineHigh
		if line.first {
			drawSignal(page, c.at.Min.X, y, line.word)
		}
		page.Text(ink.Text{At: ink.At(c.at.Min.X+wordWide+pad, baseline(c.at.Min.Y, i)), String: line.words, Capital: letter})
	}
	page.Close()
}

// SignalWide and SignalHigh are the size of the field that [DrawSignal] draws, in
// millimetres.
const (
	SignalWide = wordWide
	SignalHigh = lineHigh
)

// DrawSignal draws a signal word in its field, whose upper left corner is given.
func DrawSignal(page ink.Page, x, y float64, w SignalWord) { drawSignal(page, x, y, w) }

// drawSignal draws a signal word on its safety colour (ANSI Z535.1), with the safety alert
// symbol before all but NOTICE. The word and its symbol say the same in grey.
func drawSignal(page ink.Page, x, y float64, w SignalWord) {
	ground, letters := safetyColours(w)
	field := ink.Rect{Min: ink.At(x, y), Max: ink.At(x+wordWide, y+lineHigh)}.Grow(-0.4)
	page.Path(field.Path(), ink.Pen(ink.Thin).Filled(ground))
	left := field.Min.X + 1
	if w != Notice {
		drawAlert(page, left+1.7, field.Min.Y+field.Height()/2, letters, ground)
		left += 4
	}
	page.Text(ink.Text{At: ink.At(left, y+(lineHigh+letter)/2), String: w.String(), Capital: letter, Face: ink.Bold, Color: letters})
}

// safetyColours are sRGB approximations of the safety colours of ANSI Z535.1; our own
// values, from memory of the colours.
func safetyColours(w SignalWord) (ground, letters ink.Color) {
	black, white := ink.Color{}, ink.White()
	switch w {
	case Danger:
		return ink.Color{R: 0xc8, G: 0x10, B: 0x2e}, white
	case Warning:
		return ink.Color{R: 0xff, G: 0x82, B: 0x00}, black
	case Careful:
		return ink.Color{R: 0xff, G: 0xd1, B: 0x00}, black
	}
	return ink.Color{R: 0x00, G: 0x4b, B: 0x87}, white
}

// drawAlert draws the triangle with the exclamation mark, centred on a point.
func drawAlert(page ink.Page, x, y float64, line, ground ink.Color) {
	page.Path(ink.Polygon(ink.At(x, y-1.5), ink.At(x+1.7, y+1.4), ink.At(x-1.7, y+1.4)), ink.Area(line))
	page.Path(ink.Polygon(ink.At(x-0.22, y-0.7), ink.At(x+0.22, y-0.7), ink.At(x+0.14, y+0.4), ink.At(x-0.14, y+0.4)), ink.Area(ground))
	page.Path(ink.Circle(ink.At(x, y+0.82), 0.22), ink.Area(ground))
}
