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
	changesPerPair = 40 // changes of the layout, at first sight, for each pair of wires; as many again at low heat
	leastChanges   = 3000
	mostChanges    = 60000
	refinePerWire  = 6 // changes that are really routed and labelled, for each wire
	leastRefine    = 40
	mostRefine     = 260
)

// compose lays out, routes and labels a diagram.
func compose(d *arrange.Diagram) *composed {
	l, firm := arrange.Start(d)
	n := len(d.Wires)
	changes := min(max(leastChanges, changesPerPair*n*n), mostChanges)
	// what stands in no line of current first finds its side of the sheet, at high heat
	l = arrange.Improve(d, l, arrange.Effort{Moves: changes, Hot: 25, Cold: 2, Reach: 24, Seed: 1, Held: firm})
	l = arrange.Improve(d, l, arrange.Effort{Moves: changes, Hot: 6, Cold: 0.4, Reach: 12, Seed: 2})
	c := finish(d, l, nil)
	return refine(d, c, min(max(leastRefine, refinePerWire*n), mostRefine))
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
