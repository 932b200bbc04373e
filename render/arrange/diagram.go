package arrange

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Diagram is what one sheet has to show. Lengths are in units of the grid; x counts to
// the right from 0 to Width, y downwards from 0 to Height.
type Diagram struct {
	Width, Height int
	Items         []Item
	Bars          []Bar
	Wires         []Wire
	Frames        []Frame
	Ranker        Ranker // orders what no rail holds; nil: by the feed alone
}

// Rows returns the first and last row in which wires may run: from the upper rails to the
// lower ones, or the sheet but for its edge.
func (d *Diagram) Rows() (top, foot int) {
	top, foot = 1, d.Height-1
	for i := range d.Bars {
		switch d.Bars[i].Row {
		case TopRow:
			top = RailInset
		case BottomRow:
			foot = d.Height - RailInset
		}
	}
	return top, foot
}

// Item is a thing with a body and pins.
type Item struct {
	Name    string
	Forms   []Form  // the ways in which it may be drawn, best first; all have the same pins
	Trades  [][]int // sets of pins that may trade places, as the signal pins of one side of a box
	Role    Role
	Order   int  // place among items of its role from left to right, where the cart has such an order; 0: none
	Section int  // items of a section stand together, the lowest at the left
	Level   int  // items of one level above 0 stand in one row
	Fixed   bool // stays where the start or the caller has put it
	Shelf   bool // keeps the height at which the start puts it, close under its rail
}

// Form is an item turned or mirrored in one way. Boxes and pins are relative to its origin.
type Form struct {
	Placement symbol.Placement // turns and mirror; At is not used
	Body      []symbol.Box     // closed to wires and words
	Pins      []symbol.Pin
	Captions  []Caption // where the item's own words may stand, best first; none: it has no words outside
	Cost      float64   // how much worse than the best form, in units of wire
}

// Caption is a place for the words that belong to an item.
type Caption struct {
	Box   symbol.Box // what the words cover, relative to the origin of the form
	Lines []Line
}

// Line is one line of words, already measured.
type Line struct {
	At     ink.Point // on the baseline, relative to the origin of the form
	Anchor ink.Anchor
	Text   string
	Face   ink.Face
	Slot   int // which of the item's texts it is, so that a caller may replace it
}

// Role says what an item is to the sheet, and so where it is first put.
type Role uint8

// The roles.
const (
	InChain   Role = iota // stands in the line of current between two bars, or beside what it is wired to
	Source                // feeds the bars; stands at the left
	Host                  // a box that others gather round
	Companion             // stands right of the host that drives it
	Control               // stands left of the host that it commands
	Flag                  // hangs on one pin: a capped end, a reference to another sheet
)

// Bar is a conductor drawn as a straight line on which wires land anywhere: a supply rail,
// a bus bar, a splice.
type Bar struct {
	Name     string
	Row      Row
	Owner    Terminal // pin that is the same metal as the bar; Item < 0: none
	Thick    bool     // a supply rail: others may cross it, at a price
	Captions []Words  // ways to write its name, best first; none: it has none
}

// Width is the breadth of a bar's line, in units.
func (b *Bar) Width() float64 {
	if b.Thick {
		return RailWidth
	}
	return BarWidth
}

// Breadths of the lines of bars, in units: 1 mm and 0.7 mm at the usual unit of 2.5 mm
// (ISO 128-20).
const (
	RailWidth = 0.4
	BarWidth  = 0.28
)

// Row says in which row a bar lies.
type Row uint8

// The rows. A free bar may stand anywhere, level or upright.
const (
	Free Row = iota
	TopRow
	BottomRow
)

// Terminal is where a wire ends: a pin of an item, or a bar.
type Terminal struct {
	Item int // -1: a bar
	Pin  int // pin of the item, or index of the bar
}

// OnBar returns the terminal of a bar.
func OnBar(bar int) Terminal { return Terminal{Item: -1, Pin: bar} }

// IsBar reports whether the terminal is a bar.
func (t Terminal) IsBar() bool { return t.Item < 0 }

// Wire is a line from a terminal to a terminal.
type Wire struct {
	Name   string
	Ends   [2]Terminal
	Weight int     // 1 for a signal; the thicker the conductor, the more a bend of it hurts
	Thick  float64 // breadth of the line on the sheet, in units
	Labels []Words // ways to write its label, best first; none: it needs no label
	Marks  [2]Words
}

// Words is a block of words of a known size.
type Words struct {
	Lines         []string
	Width, Height float64
}

// Empty reports whether there are no words.
func (w Words) Empty() bool { return len(w.Lines) == 0 }

// Frame is a dash-dot line round items and bars that are one device.
type Frame struct {
	Name    string
	Items   []int
	Bars    []int
	Caption Words
}
