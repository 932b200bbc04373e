// Package symbol draws the parts of a schematic after IEC 60617 and IEEE 315: one symbol
// a file, pins on whole units, a body that tells the truth about where ink may fall.
//
// The numbers of IEC 60617 (those of its printed parts, 04-01-01 and so on) and the clauses
// of IEEE 315 are named with each symbol, from memory. Contacts are drawn without power and
// not operated, as IEC 61082-1 wants it, unless Ask says otherwise.
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
	Closed    bool       // a contact is drawn closed: one that rests closed, or one drawn operated
	Operator  Operator   // what works a switch; AnyOperator: what is usual for the symbol
	Sign      string     // one or two characters inside a meter's circle: "V"; empty: a needle
	// Electronic marks a coil with electronics of its own, such as an economiser.
	Electronic bool
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
//
// Pins stand in the order of Ask.Terminals, half a unit outside the body. No edge of a body
// lies on a whole unit, so a wire on the grid either runs clear of it or is seen to enter.
type Shape struct {
	Symbol string
	Body   []Box  // all ink of the shape but the pin strokes: closed to wires and foreign text
	Pins   []Pin  //
	Words  []Box  // where text inside the body stands, so that a test can see that it fits
	Notes  []Spot // good places for designation, rating and title, best first
	Marked bool   // it prints the labels of its pins; else they belong beside the wires

	draw   func(d *drawing)
	beside []Side // sides for Notes, best first
}

// Spot is a place beside a shape where its designation and title may stand: up to three
// lines with capitals one unit high, ink.LineSpacing units apart.
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
