// Package label finds places for the words on a routed diagram: the label of each wire on
// its own run, the name of each bar, the marks beside landings, the titles of frames.
//
// Every request has a list of spots where it would be right, cheapest first, none of which
// touches a line, a body or fixed words. The scarcest request chooses first; one that finds
// all its spots taken may push out a label that has another place to go to (an ejection
// chain). What is left gets a leader: words in a free place nearby and a thin line to the
// wire.
package label

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// Measures of lettering, in units (one unit is the height of a capital).
const (
	capital    = 1.0
	Descent    = 0.2 // what hangs below the baseline of a label
	lineStep   = ink.LineSpacing
	gapOwn     = 0.22 // between a label and the edge of its own wire
	gapLine    = 0.36 // between a label and the middle of any other line
	gapWords   = 0.25 // between two labels
	gapBody    = 0.2
	gapDot     = 0.38
	slide      = 0.5 // step in which spots along a run are tried
	mostSlides = 10  // spots to either side of the middle
	endMargin  = 0.3 // from the end of a run
)

// What a spot costs beside the price of the wording. Each unit is a shade of legibility.
const (
	costBelow   = 4
	costBeside  = 2
	costLeft    = 0.5
	costPerLine = 2
	costTurned  = 9
	costOverrun = 3   // longer than its run
	costCentre  = 0.1 // for each unit from the middle of the run
	costNear    = 12  // a foreign wire is as near as the own one
	costLeader  = 40
	costReach   = 1.2 // for each unit of a leader
	costOver    = 6   // for each wire that a leader crosses
)

// Kind says what a label belongs to.
type Kind uint8

// The kinds.
const (
	OfWire  Kind = iota // the label of a wire
	OfMark              // a mark beside the end of a wire
	OfBar               // the name of a bar
	OfFrame             // the title of a frame
)

// Label is words in their place.
type Label struct {
	Kind   Kind
	Index  int // of the wire, bar or frame
	End    int // OfMark: which end of the wire
	Words  int // which wording
	Lines  []string
	At     ink.Point // baseline of the first line, in units
	Anchor ink.Anchor
	Turned bool // reads upwards
	Box    symbol.Box
	Leader []ink.Point // from the words to the wire; nil: none
	Cost   float64
}

// Result is where everything stands, and what found no place.
type Result struct {
	Labels  []Label
	Missing []Label // without a place
	Leaders int
}
