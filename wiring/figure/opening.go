package figure

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// OpeningClass says roughly when a fuse opens.
type OpeningClass uint8

// The classes, from no answer to the fastest.
const (
	OpeningUnknown OpeningClass = iota // no source speaks of this fuse at this current
	Holds                              // carries it for an hour at least
	MayOpen                            // between the gates: may open after a while, or never
	OpensInHours                       // has opened within some hours
	OpensInMinutes                     // within an hour
	OpensInSeconds                     // within a minute
	OpensAtOnce                        // within a second
)

// The ends of the classes. Our own choice of words.
const (
	leastHolding quantity.Second = 3600
	someMinutes  quantity.Second = 3600
	someSeconds  quantity.Second = 60
	anInstant    quantity.Second = 1
)

// String is the class in a few words: "opens within seconds".
func (c OpeningClass) String() string {
	return [...]string{
		"unknown", "holds", "may open, or never", "opens within hours",
		"opens within minutes", "opens within seconds", "opens at once",
	}[min(c, OpensAtOnce)]
}

// Opening is how a fuse takes a current that lasts.
type Opening struct {
	Class    OpeningClass
	Multiple float64         // current over rating
	Holds    quantity.Second // carries it for at least so long; 0: not bounded
	Opens    quantity.Second // has opened after at most so long; 0: not bounded
	Assumes  []Assumption
}

// FuseOpening says when a fuse of a style ("blade", "class T") and rating opens at a
// current that lasts, from cold and at 25 C.
//
// At its rating and below any fuse holds, for that is what a rating means. Above, the time
// gates of the handbook decide: for blades those of ISO 8820-3 at 110, 135, 160, 200, 350
// and 600 %, for class T those of UL 248-15, all from memory. A style without gates is
// unknown above its rating, and a fuse without a rating altogether.
func FuseOpening(t *handbook.Tables, style string, rating, amps quantity.Ampere) Opening {
	o := Opening{Assumes: gates(t)}
	if amps < 0 {
		amps = -amps
	}
	if !(rating > 0) || amps != amps {
		return o
	}
	o.Multiple = float64(amps / rating)
	if after, ok := t.FuseHolds(style, o.Multiple); ok {
		o.Holds = after
	}
	if after, ok := t.FuseOpens(style, o.Multiple); ok {
		o.Opens = after
	}
	o.Class = o.class(gated(t, style))
	return o
}

// FuseOpening says when a fuse of the cart opens at a current that lasts, by the tables of
// the cart. See the function of the same name.
func (c *Cart) FuseOpening(f *wiring.Fuse, amps quantity.Ampere) Opening {
	return FuseOpening(c.tables, f.Style, f.Rating, amps)
}

func (o Opening) class(gated bool) OpeningClass {
	switch {
	case o.Opens > 0 && o.Opens <= anInstant:
		return OpensAtOnce
	case o.Opens > 0 && o.Opens <= someSeconds:
		return OpensInSeconds
	case o.Opens > 0 && o.Opens <= someMinutes:
		return OpensInMinutes
	case o.Opens > 0:
		return OpensInHours
	case o.Multiple <= 1 || o.Holds >= leastHolding:
		return Holds
	case gated:
		return MayOpen
	}
	return OpeningUnknown
}

// gated reports whether the handbook has time gates for a style: beyond any current a
// fuse that has some opens.
func gated(t *handbook.Tables, style string) bool {
	_, ok := t.FuseOpens(style, never)
	return ok
}

func gates(t *handbook.Tables) []Assumption {
	all := []Assumption{
		{"the fuse is cold, at 25 C, and the current lasts", "the conditions of the time gates"},
	}
	if s, ok := t.Source("fuse_gates"); ok {
		all = append(all, Assumption{"times are those of the gates, not of the fuse that is fitted", fmt.Sprintf("%s; %s", s.Text, s.Status)})
	}
	return all
}
