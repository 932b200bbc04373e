package meter

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Proof is what a reading proves.
type Proof uint8

// The proofs.
const (
	// Sound readings are what they look like.
	Sound Proof = iota
	// Precharged is a voltage that comes through a resistor while a contact or a hand switch
	// beside it is open: it is there whether or not the contact will close.
	Precharged
	// Asleep is the post of a battery that its own protection or switch holds off: such posts
	// show anything between 0 V and full.
	Asleep
	// ThroughConsumer is a voltage that comes through a lamp, coil or other consumer that is
	// not switched on: it proves the consumer whole, and no feed able to carry current.
	ThroughConsumer
)

// String is the proof in a word: "sound", "pre-charged", "asleep", "through a consumer".
func (p Proof) String() string {
	switch p {
	case Precharged:
		return "pre-charged"
	case Asleep:
		return "asleep"
	case ThroughConsumer:
		return "through a consumer"
	}
	return "sound"
}

// Nothing reports whether the reading proves nothing about the way from the battery.
func (p Proof) Nothing() bool { return p == Precharged || p == Asleep }

// presentVolts is the voltage from which a terminal counts as live. Drops in a return stay
// below it, and the smallest supply of a cart, of a throttle, is 5 V. Our own choice.
const presentVolts = quantity.Volt(1)

func present(v quantity.Volt) bool { return v >= presentVolts || v <= -presentVolts }

func (s *Sheet) proof(n wiring.NodeID, v quantity.Volt) Proof {
	switch {
	case s.asleep(n):
		return Asleep
	case !present(v) || s.stiff.Has(n):
		return Sound
	}
	way, _, ok := s.way(n)
	if !ok || s.firstOpen(way) >= 0 {
		return Sound
	}
	switch {
	case way.Passes(path.Coil | path.Load):
		return ThroughConsumer
	case way.Passes(path.Resistor) && s.besideOpen(way):
		return Precharged
	}
	return Sound
}

// asleep reports whether wires and fuses alone join a node to the positive of a battery that
// is off, and nothing else holds it.
func (s *Sheet) asleep(n wiring.NodeID) bool {
	return s.sleep.Has(n) && !s.stiff.Has(n)
}

// besideOpen reports whether an open contact or switch leads from what a supply holds to the
// side of a way that lies behind its resistor.
func (s *Sheet) besideOpen(way path.Path) bool {
	behind := map[int]bool{}
	for i := len(way.Steps) - 1; i >= 0 && way.Steps[i].Edge.Sort != path.Resistor; i-- {
		behind[s.bench.graph.Copper(way.Steps[i].From)] = true
	}
	behind[s.bench.graph.Copper(way.End)] = true
	for _, e := range s.bench.graph.Edges() {
		if e.Sort&(path.Switch|path.Contact) == 0 || !s.open(e) {
			continue
		}
		a, b := behind[s.bench.graph.Copper(e.A)], behind[s.bench.graph.Copper(e.B)]
		if a && s.stiff.Has(e.B) || b && s.stiff.Has(e.A) {
			return true
		}
	}
	return false
}
