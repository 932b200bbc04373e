package report

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Shown is what a meter shows for a reading, to a tenth of a volt, and the sign for what the
// figure does not say; see [SignWords]. A pole of the mains has a sign alone.
func Shown(r meter.Reading) (volts, sign string) {
	switch {
	case r.Mains:
		return "", markMains
	case r.Floating:
		return meter.Tenths(r.Volts), markFloating
	case r.Proof.Nothing():
		return meter.Tenths(r.Volts), markNothing
	case r.Proof == meter.ThroughConsumer:
		return meter.Tenths(r.Volts), markConsumer
	}
	return meter.Tenths(r.Volts), ""
}

// SignWords explains the signs of readings, in the order in which legends list them.
func SignWords() (signs, words []string) {
	for _, l := range legends {
		signs, words = append(signs, l.mark), append(words, l.words)
	}
	return signs, words
}

// Wait is how long the readings of some states take to become true, one line a group of
// places.
type Wait struct {
	States []string
	Lines  []string
}

// Waits lists how long to wait, states of which the same is to be said together.
func (r Readings) Waits() []Wait {
	var all []Wait
	for _, one := range merged(r.Survey.Sheets, r.waitWords) {
		all = append(all, Wait{States: one.states, Lines: one.lines})
	}
	return all
}

func (r Readings) waitWords(s *meter.Sheet) []string {
	var lines []string
	for _, w := range r.Survey.Waits(s) {
		way := "run down from"
		if w.From < w.To {
			way = "charge from"
		}
		names := make([]string, len(w.Spots))
		for i, spot := range w.Spots {
			names[i] = spot.Name
		}
		lines = append(lines, fmt.Sprintf("%s before you believe %s: %v in %s %s %s V",
			patience(w.Time), oneLine(listed(names, "and")), w.Capacitor.Farads, oneLine(w.Capacitor.Part.Designation), way, meter.Tenths(w.From)))
	}
	return lines
}

// Reference is where the black probe sits but for places that say otherwise; NoNode if no
// state settles.
func (r Readings) Reference() wiring.NodeID {
	for _, s := range r.Survey.Sheets {
		return s.Point.ReferenceNode()
	}
	return wiring.NoNode
}

// Black is where the black probe sits for a place: the same in all states in which it reads
// anything.
func (r Readings) Black(spot meter.Spot) wiring.NodeID {
	for _, s := range r.Survey.Sheets {
		if reading := s.ReadAt(spot.Node); reading.Against != wiring.NoNode && reading.Against != r.Reference() {
			return reading.Against
		}
	}
	return r.Reference()
}

// charge names the state of charge, if all states have the same.
func (r Readings) charge() string {
	var at quantity.Ratio
	for i, s := range r.Survey.Sheets {
		soc := r.Survey.Bench.Charge(s.State)
		if i > 0 && soc != at {
			return ""
		}
		at = soc
	}
	if at == 0 {
		return ""
	}
	return "; batteries at " + at.String()
}
