package report

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
)

// Comparison is two carts and what changed from one to the other, ready to be set.
type Comparison struct {
	Version  string // of the program
	Old, New Compared
	difference.Difference
}

// Compared is one of the two carts.
type Compared struct {
	File    string
	AsFound bool // the cart as it came, before the job of the file
	Harness *wiring.Harness
}

// noteWidth is what a revision note may take: a line of the title block's list holds no more
// (ISO 7200 leaves it to the drawing; this is ours).
const noteWidth = 80

// nextRevision is the index of the revision that the changes make: the last one of the new
// cart's list if that has grown already, else the one that comes next.
func (c Comparison) nextRevision() string {
	history := c.New.Harness.Identity.History
	if n := len(history); n > len(c.Old.Harness.Identity.History) {
		return history[n-1].Index
	}
	return difference.NextIndex(history)
}
