// Package sheet says what the sheets of a packet are and joins them to a document.
//
// A sort of sheet is a [Kind]: a value with an id, a title, and a function that plans pages
// from a [Book], which is everything that is known about one cart. [Compose] plans all kinds
// of a list, numbers the pages and lays out those that are wanted; the [Document] that comes
// out is what formats write. The kinds themselves are in package sheets, one file each.
//
// Nothing electrical is computed here: the book asks the packages of wiring, when somebody
// first wants to know.
package sheet

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Kind is a sort of sheet.
type Kind struct {
	ID       string // plain words with hyphens, as --sheet takes it: "wire-list"
	Title    string // document type of the title block: "wire list"
	About    string // what it is for, in a line
	Surround Surround

	// Plan says which pages a cart needs: none if it has nothing to show. It must be quick,
	// since the number of every sheet depends on it; what takes long belongs in Page.Lay.
	// The error is that of a context that ends.
	Plan func(*Book, Room) ([]Page, error)
}

// Surround says what stands around the content of a sort of sheet besides the title block.
// The room for the content is what it leaves.
type Surround struct {
	Colours  bool // the legend of wire colours
	Cautions bool // what can hurt people
	Open     int  // most lines of open findings over the content, 1 to 3; 0: none
	Waived   bool // what the job lives with, over the content
}

// Room is what the content of a sheet may fill.
type Room struct {
	Width, Height float64                   // in millimetres
	First         int                       // number of the first page that is planned
	Zone          func(at ink.Point) string // name of the field of the frame at a point of the room
	Paper         frame.Paper
	Units         quantity.System
}

// Page is one page as it is planned.
type Page struct {
	Title string // supplementary title: "48 V", "2 of 3"; may be empty
	// Lay makes the content, once all pages of the document are planned.
	Lay func(*Document) (Laid, error)
}

// Laid is the content of a page, ready to be drawn.
type Laid struct {
	Draw       func(ink.Page) // from the upper left corner of the room
	Undrawn    []string       // what is not on the page and should be: "W37"
	Unlabelled []string       // words for which there was no place
}

// Whole reports whether everything is on the page. One that is not must not be built from.
func (l Laid) Whole() bool { return len(l.Undrawn)+len(l.Unlabelled) == 0 }

// Ready is a page that only has to be drawn.
func Ready(title string, draw func(ink.Page)) Page {
	return Page{Title: title, Lay: func(*Document) (Laid, error) { return Laid{Draw: draw}, nil }}
}
