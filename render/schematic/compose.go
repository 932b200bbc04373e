package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/route"
)

// composed is a sheet with everything in its place.
type composed struct {
	layout *arrange.Layout
	routes *route.Result
	labels *label.Result
}

// compose lays out, routes and labels a diagram.
func compose(d *arrange.Diagram) *composed {
	l := arrange.Start(d)
	l = arrange.Improve(d, l, arrange.Effort{Moves: 30000, Hot: 20, Cold: 0.5, Reach: 24, Seed: 1})
	return finish(d, l)
}

// finish routes and labels a layout.
func finish(d *arrange.Diagram, l *arrange.Layout) *composed {
	arrange.FitRails(d, l)
	r := route.Run(d, l)
	arrange.Trim(d, l, r.Paths)
	return &composed{l, r, label.Place(d, l, r.Paths, r.Dots, true)}
}
