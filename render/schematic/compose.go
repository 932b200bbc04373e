package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/route"
)

// composed is a sheet with everything in its place.
type composed struct {
	whole  *arrange.Layout // with rails at full length, to go on from
	layout *arrange.Layout // with rails cut to what lands on them
	routes *route.Result
	labels *label.Result
}

// How much a sheet is worked on, by counts: never by a clock, so that the same job gives
// the same drawing on any machine. Twice the wires take four times the changes.
const (
	changesPerPair = 32 // changes of the layout, at first sight, for each pair of wires; as many again at low heat
	leastChanges   = 3000
	mostChanges    = 60000
	refinePerWire  = 6 // changes that are really routed and labelled, for each wire
	leastRefine    = 40
	mostRefine     = 260
)

// firstSeed is where the chances of the first attempt begin: the first number with which
// all sheets of the examples come out whole at once, on A4 and Letter.
const firstSeed = 19

// compose lays out, routes and labels a diagram: the best of a few attempts. From the second
// on it is enough that everything is on the sheet.
func compose(d *arrange.Diagram, attempts int) *composed {
	var best *composed
	least := 0.0
	for attempt := range attempts {
		c := try(d, uint64(2*attempt+firstSeed))
		q := quality(d, c)
		if best == nil || faults(c) < faults(best) || faults(c) == faults(best) && q < least {
			best, least = c, q
		}
		if best.isGood(d) || attempt > 0 && best.isWhole() {
			break
		}
	}
	return best
}

// drafts is how many layouts an attempt begins with; the best of them is refined.
const drafts = 2

// try makes one attempt from a seed.
func try(d *arrange.Diagram, seed uint64) *composed {
	start, firm := arrange.Start(d)
	n := len(d.Wires)
	changes := min(max(leastChanges, changesPerPair*n*n), mostChanges)
	var best *composed
	least := 0.0
	for k := range uint64(drafts) {
		// what stands in no line of current first finds its side of the sheet, at high heat
		l := arrange.Improve(d, start, arrange.Effort{Moves: changes, Hot: 100, Cold: 10, Reach: 24, Seed: seed + 1000*k, Held: firm})
		l = arrange.Improve(d, l, arrange.Effort{Moves: changes, Hot: 20, Cold: 0.4, Reach: 12, Seed: seed + 1000*k + 1})
		c := finish(d, l, nil)
		if q := quality(d, c); best == nil || q < least {
			best, least = c, q
		}
	}
	return refine(d, best, min(max(leastRefine, refinePerWire*n), mostRefine))
}

// Shares of the wires of a good sheet that may have a leader, and that may cross.
const (
	goodLeaders   = 0.12
	goodCrossings = 0.15
)

// isWhole reports whether everything is on the sheet.
func (c *composed) isWhole() bool { return len(c.routes.Failed) == 0 && len(c.labels.Missing) == 0 }

// isGood reports whether everything is on the sheet and reads well.
func (c *composed) isGood(d *arrange.Diagram) bool {
	n := float64(len(d.Wires))
	return c.isWhole() && float64(c.labels.Leaders) <= goodLeaders*n &&
		float64(c.routes.Crossing) <= goodCrossings*n
}

// finish routes and labels a layout; with an earlier result, what still fits of that stays.
func finish(d *arrange.Diagram, l *arrange.Layout, was *composed) *composed {
	n := l.Clone()
	hints := arrange.FitRails(d, n)
	var r *route.Result
	if was == nil {
		r = route.Run(d, n, hints)
	} else {
		r = route.Again(d, n, was.routes.Paths)
	}
	arrange.Trim(d, n, r.Paths)
	return &composed{l, n, r, label.Place(d, n, r.Paths, r.Dots, false)}
}
