package symbol

import "github.com/lugwright/lugwright/render/ink"

// drawing is what a symbol's draw function gets: it draws in the shape's own units and
// the placement is applied on the way to the page.
type drawing struct {
	page  ink.Page
	place Placement
	unit  float64 // millimetres a unit, after any reduction of the sheet
}
