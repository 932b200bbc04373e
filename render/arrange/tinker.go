package arrange

import (
	"slices"

	"github.com/lugwright/lugwright/render/symbol"
)

// Tinker makes small changes of a layout for someone who judges them by better means than
// a first sight. Each change is made on the layout before it, unless that was taken back.
type Tinker struct {
	p     *plan
	c     change
	all   []int // items that may move
	reach int
}

// NewTinker makes a source of changes of a layout, which move things at most reach units.
// The layout that is given stays as it is.
func NewTinker(d *Diagram, l *Layout, reach int, seed uint64) *Tinker {
	t := &Tinker{p: newPlan(d, l.Clone()), reach: reach}
	t.p.rng = newRandom(seed)
	t.p.hold(nil)
	t.all = t.p.loose
	t.p.settleWays()
	return t
}

// tinkerHeat is how much dearer, in units of wire, a proposal may look at first sight: much
// of what really helps does not look it.
const (
	tinkerHeat  = 12
	tinkerTries = 40
)

// Change changes the layout; items are those from which to pick what moves, nil for all. It
// reports whether it found anything plausible.
func (t *Tinker) Change(items []int) bool {
	t.p.loose = t.all
	if len(items) > 0 {
		t.p.loose = items
	}
	for range tinkerTries {
		if _, ok := t.p.try(&t.c, t.reach, tinkerHeat); ok {
			return true
		}
	}
	return false
}

// Undo takes the last change back. It must not be called twice for one.
func (t *Tinker) Undo() { t.p.undo(&t.c) }

// Fitted copies the layout with each rail shortened to where wires will land on it, with
// some room to slide.
func (t *Tinker) Fitted() *Layout {
	l := &Layout{Items: slices.Clone(t.p.l.Items), Bars: slices.Clone(t.p.l.Bars)}
	t.p.fitRails(l)
	return l
}

// Ways returns the ways that the wires take at first sight, by their corners.
func (t *Tinker) Ways() [][]symbol.Cell { return t.p.corners() }

// Layout copies the layout, rails at full length.
func (t *Tinker) Layout() *Layout { return t.p.l.Clone() }

// Chance returns a number from 0 to below 1.
func (t *Tinker) Chance() float64 { return t.p.rng.unit() }
