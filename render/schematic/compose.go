package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/route"
)

// composed is a sheet with everything in its place.
type composed struct {
	whole   *arrange.Layout // with rails at full length, to go on from
	layout  *arrange.Layout // with rails cut to what lands on them
	routes  *route.Result
	labels  *label.Result
	clashes int
}

// desk is what a diagram is laid out on, again and again.
type desk struct {
	d      *arrange.Diagram
	router *route.Router
	writer *label.Writer
	tinker *arrange.Tinker
}

func newDesk(d *arrange.Diagram) *desk {
	return &desk{d: d, router: route.New(d), writer: label.NewWriter(d)}
}

// How much a sheet is worked on, by counts: never by a clock, so that the same job gives
// the same drawing on any machine. Twice the wires take four times the changes.
const (
	changesPerPair = 32 // changes of the layout, at first sight, for each pair of wires; as many again at low heat
	leastChanges   = 3000
	mostChanges    = 9000
	refinePerWire  = 4 // changes that are really routed and labelled, for each wire
	leastRefine    = 40
	mostRefine     = 80
)

// firstSeed is where the chances of the first attempt begin: the first number with which
// all sheets of the examples come out whole at once, on A4 and Letter.
const firstSeed = 19

// compose lays out, routes and labels a diagram: the best of a few attempts. From the second
// on it is enough that everything is on the sheet.
func compose(d *arrange.Diagram, attempts int) *composed {
	k := newDesk(d)
	var best *composed
	least := 0.0
	for attempt := range attempts {
		c := k.try(uint64(2*attempt + firstSeed))
		q := k.quality(c)
		if best == nil || faults(c) < faults(best) || faults(c) == faults(best) && q < least {
			best, least = c, q
		}
		if best.isGood(d) || attempt > 0 && best.isWhole() {
			break
		}
	}
	return best
}

// try makes one attempt from a seed.
func (k *desk) try(seed uint64) *composed {
	start, firm := arrange.Start(k.d)
	n := len(k.d.Wires)
	changes := min(max(leastChanges, changesPerPair*n*n), mostChanges)
	// what stands in no line of current first finds its side of the sheet, at high heat
	l := arrange.Improve(k.d, start, arrange.Effort{Moves: changes, Hot: 100, Cold: 10, Reach: 24, Seed: seed, Held: firm})
	l = arrange.Improve(k.d, l, arrange.Effort{Moves: changes, Hot: 20, Cold: 0.4, Reach: 12, Seed: seed + 1})
	return k.refine(k.finish(l), min(max(leastRefine, refinePerWire*n), mostRefine))
}

// Shares of the wires of a good sheet that may have a leader, and that may cross.
const (
	goodLeaders   = 0.12
	goodCrossings = 0.15
)

// isWhole reports whether everything is on the sheet, and nothing on anything else.
func (c *composed) isWhole() bool { return faults(c) == 0 }

// isGood reports whether everything is on the sheet and reads well.
func (c *composed) isGood(d *arrange.Diagram) bool {
	n := float64(len(d.Wires))
	return c.isWhole() && float64(c.labels.Leaders) <= goodLeaders*n &&
		float64(c.routes.Crossing) <= goodCrossings*n
}

// finish routes and labels a layout.
func (k *desk) finish(l *arrange.Layout) *composed {
	n := l.Clone()
	hints := arrange.FitRails(k.d, n)
	r := k.router.Run(n, hints)
	arrange.Trim(k.d, n, r.Paths)
	return &composed{whole: l, layout: n, routes: r, labels: k.writer.Place(n, r.Paths, r.Dots, false), clashes: arrange.Clashes(k.d, n)}
}

// again routes and labels the layout of the tinker; what still fits of an earlier result
// stays.
func (k *desk) again(was *composed, leaders bool) *composed {
	n := k.tinker.Fitted()
	r := k.router.Again(n, was.routes.Paths)
	arrange.Trim(k.d, n, r.Paths)
	return &composed{layout: n, routes: r, labels: k.writer.Place(n, r.Paths, r.Dots, leaders), clashes: k.tinker.Clashes(n)}
}
