// Package symbol draws the parts of a schematic after IEC 60617 and IEEE 315: one symbol
// a file, pins on whole units, a body that tells the truth about where ink may fall.
//
// A symbol is built for the terminals that a part really has, since a controller of
// twelve pins and one of twenty are the same symbol. Building is one step, placing
// another: a Shape lies at its own origin, in units, and a Placement puts it on a page.
package symbol

import "github.com/lugwright/lugwright/render/ink"

// Unit is the module of the drawing grid in millimetres (IEC 61082-1 practice: 2.5 mm,
// the height of a capital letter).
const Unit = 2.5

// Side is the side of a body on which a pin leaves it.
type Side uint8

// The sides. AnySide leaves the choice to the symbol.
const (
	AnySide Side = iota
	Left
	Right
	Top
	Bottom
)

// Terminal is one connection that a symbol has to offer.
type Terminal struct {
	Name  string // the part's terminal: "coil+", "J1-3", "1"
	Label string // what is printed beside the pin inside a box; empty: nothing
	Side  Side   // a wish: symbols with a fixed form ignore it
}

// Ask is what a shape is built from.
type Ask struct {
	Terminals []Terminal // in the order in which they shall stand
	Lines     []string   // words printed inside a box symbol, the first one bold; may be empty
	Closed    bool       // a switch or contact drawn operated
}

// Cell is a point of the unit grid.
type Cell struct{ X, Y int }

// Pin is where a wire meets a shape. A wire leaves it outwards on its side.
type Pin struct {
	Terminal string
	At       Cell
	Side     Side
}

// Box is an upright rectangle in units.
type Box struct{ X0, Y0, X1, Y1 float64 }

// Shape is a symbol built for one part, at its own origin, in units, y downwards. The
// stroke from body to pin belongs to the shape; nothing of it lies outside Body but those
// strokes. Shapes with two pins in line stand upright: the first pin on top.
type Shape struct {
	Symbol string
	Body   []Box    // all ink of the shape but the pin strokes: closed to wires and foreign text
	Pins   []Pin    //
	Words  []Box    // where text inside the body stands, so that a test can see that it fits
	Notes  []Spot   // good places for designation, rating and title, best first
	draw   func(d *drawing)
}

// Spot is a place beside a shape where its designation and title may stand.
type Spot struct {
	At     ink.Point  // in units, on the baseline of the first line
	Anchor ink.Anchor //
	Down   bool       // further lines go downwards from At; else the last line stands at At
}

// Placement puts a shape on the page.
type Placement struct {
	At     Cell // where the shape's origin goes
	Turns  int  // quarter turns clockwise, 0 to 3
	Mirror bool // mirrored left to right before turning
}
