package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Verdict says how a check ended.
type Verdict uint8

// Verdicts.
const (
	Holds    Verdict = iota + 1 // proved of every position
	Broken                      // Result.Counterexamples has the positions
	Unproved                    // Result.Why says what stands in the way of a proof
	Idle                        // the property does not speak of this cart; Result.Why says why
)

// String is the verdict in a word or two.
func (v Verdict) String() string {
	switch v {
	case Holds:
		return "holds"
	case Broken:
		return "broken"
	case Unproved:
		return "not proved"
	case Idle:
		return "does not apply"
	}
	return "not checked yet"
}

// Result is the outcome of a check.
type Result struct {
	Property *Property
	Verdict  Verdict
	Why      string // of Unproved and Idle: a sentence
	Pruned   string // why fewer positions than the product were enough; empty if they were not
	Product  int64  // positions that the property speaks of: the full product
	Looked   int64  // positions that were looked at for this verdict
	Settled  int64  // points that were settled for it

	// Counterexamples has for each thing that breaks the property a position with the
	// fewest controls away from rest, in the order of positions.
	Counterexamples []Counterexample

	Unsettled Doubt // positions without an operating point
	Races     Doubt // positions whose outcome depends on which of several elements acts first
}

// Counterexample is a position that breaks a property. No position in which fewer controls
// are away from rest breaks it in this way.
type Counterexample struct {
	State  *wiring.State // its Name lists what the property fixes, and the controls that are not at rest
	Charge quantity.Ratio
	Point  *settle.Point
	Violation
	Ways []Way // what explains it, the most direct one first
}

// Doubt counts points of which a property can say nothing.
type Doubt struct {
	Count int64
	First *wiring.State // one of those with the fewest controls away from rest; nil: none
	Why   string        // of First
}
