package figure

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Ending says how a transient ends.
type Ending uint8

// The endings.
const (
	Rests     Ending = iota + 1 // comes to a final voltage
	Hiccups                     // goes to and fro for ever
	Undecided                   // the network has no answer with the capacitor there
)

// String is the ending in a word: "rests".
func (e Ending) String() string {
	switch e {
	case Rests:
		return "rests"
	case Hiccups:
		return "hiccups"
	case Undecided:
		return "undecided"
	}
	return "not found yet"
}

// Transient is the way of a capacitor's voltage after a state has been set, stage by
// stage.
//
// Everything else is taken as quicker than the capacitor: at each of its voltages the
// network is the settled one, with the memory of contacts and senses that the way so far
// has left. A stage whose time constant is under 10 ms is the exception: no contact moves
// in so little time. Where the current is not a straight line of the voltage, as with
// loads of constant power, stages follow it within a thousandth.
type Transient struct {
	Capacitor *wiring.Capacitor
	State     *wiring.State
	Stages    []Stage
	Ending    Ending
	Final     quantity.Volt // Rests: the voltage that it comes to
	Low, High quantity.Volt // Hiccups: between these
	Why       string        // Undecided: what is wrong
	// Restless lists what goes to and fro faster than anyone can follow at some voltage on
	// the way, such as a reducer that its own load pulls under. It is taken as off from
	// there on, so that a capacitor which it drains runs down sooner than is said.
	Restless []wiring.Element
	Assumes  []Assumption
}

// Until is the time at which the voltage is first reached; false if it never is.
func (t Transient) Until(v quantity.Volt) (quantity.Second, bool) {
	after := quantity.Second(0)
	for _, s := range t.Stages {
		if s.reaches(v) {
			after += s.until(v)
			return after, !math.IsInf(float64(after), 1)
		}
		after += s.Lasts
	}
	return 0, false
}

// At is the voltage at a time.
func (t Transient) At(after quantity.Second) quantity.Volt {
	for _, s := range t.Stages {
		if after <= s.Lasts {
			return s.at(after)
		}
		after -= s.Lasts
	}
	if len(t.Stages) == 0 {
		return t.Final
	}
	return t.Stages[len(t.Stages)-1].To
}

// Most is the largest current into the capacitor, or out of it: its magnitude.
func (t Transient) Most() quantity.Ampere {
	most := quantity.Ampere(0)
	for _, s := range t.Stages {
		most = max(most, s.First, -s.First, s.Last, -s.Last)
	}
	return most
}

// Lasts is the time until the last change in the network; what comes after it is one
// exponential.
func (t Transient) Lasts() quantity.Second {
	sum := quantity.Second(0)
	for _, s := range t.Stages {
		if !math.IsInf(float64(s.Lasts), 1) {
			sum += s.Lasts
		}
	}
	return sum
}
