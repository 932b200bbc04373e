package figure

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Assumption is something that a figure takes for granted.
type Assumption struct {
	Text  string // "the pack's electronic protection is ignored"
	Basis string // where it comes from: a source, "from memory", "common practice, no published source"
}

// String returns the text and, in brackets, its basis.
func (a Assumption) String() string { return a.Text + " (" + a.Basis + ")" }

// Whence the assumptions come.
const (
	practice  = "common practice, no published source"
	memory    = "from memory"
	ownChoice = "own choice"
	circuits  = "circuit theory"
)

// conductors says how warm the wires are taken to be.
func conductors(h *wiring.Harness) Assumption {
	return Assumption{
		Text:  fmt.Sprintf("wires have their resistance at %v; lugs and joints have none", h.Assume.Conductor),
		Basis: "the job's assumed conductor temperature",
	}
}

// charged says how full the sources are taken to be.
func charged(charge quantity.Ratio) Assumption {
	return Assumption{
		Text:  fmt.Sprintf("every source stands at a state of charge of %v, rested", charge),
		Basis: "the voltage curves of the handbook",
	}
}

// listed joins names: "W1, W2 and W3", at most so many of them.
func listed(names []string, most int) string {
	if len(names) > most {
		names = append(names[:most-1:most-1], fmt.Sprintf("%d more", len(names)-most+1))
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
