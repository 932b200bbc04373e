package frame

import (
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring/colour"
)

// Content is what the frame says. Empty fields stay empty; an empty approval field is
// there to be signed.
type Content struct {
	// Fields of the title block (ISO 7200). The first eight are mandatory there.
	Owner        string // legal owner: the shop
	Number       string // identification number of the drawing
	Date         string // date of issue, as ISO 8601 writes it
	Sheet        int    // number of this sheet, from 1
	Title        string
	Approver     string
	Creator      string
	DocumentType string // "circuit diagram"
	Sheets       int    // number of all sheets; 0: not said
	Subtitle     string // supplementary title
	Revision     string // revision index

	Legend    []colour.Colour // wire colours on this sheet, in the order to show them
	Palette   wirepen.Palette // nil: colours for print
	Revisions []Revision      // oldest first
	Findings  []string        // what is still open, most serious first; none: no banner
	MostShown int             // lines of the banner, 1 to 3; 0: 3
	Waived    []string        // what is lived with, and why; none: no banner of its own
	Cautions  []Caution       // most serious first
	Note      string          // a line at the foot
	Centring  bool            // centring marks for copying (ISO 5457)
}

// Revision is one line of the list of revisions.
type Revision struct{ Index, Date, By, Note string }

// Caution is a sentence with its signal word.
type Caution struct {
	Word SignalWord
	Text string
}

// SignalWord says how bad a hazard is (ANSI Z535.6).
type SignalWord uint8

// The signal words, most serious first.
const (
	Danger  SignalWord = iota // will cause death or serious injury if not avoided
	Warning                   // could cause death or serious injury
	Careful                   // "CAUTION": could cause minor or moderate injury
	Notice                    // damage to property
)

// String returns the word as it is printed.
func (w SignalWord) String() string {
	switch w {
	case Danger:
		return "DANGER"
	case Warning:
		return "WARNING"
	case Careful:
		return "CAUTION"
	}
	return "NOTICE"
}

func (c Content) palette() wirepen.Palette {
	if c.Palette != nil {
		return c.Palette
	}
	return colour.Code.Print
}
