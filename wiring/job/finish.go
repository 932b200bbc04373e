package job

import (
	"github.com/lugwright/lugwright/wiring"
)

// finish turns the drafts into the harness.
func (r *reading) finish() *wiring.Harness {
	h := r.h
	h.Files = r.files
	for _, l := range r.layers {
		h.Layers = append(h.Layers, l.Layer)
	}
	r.identity()
	r.limitsAndAssume()
	r.placesAndRuns()
	r.looms()
	r.finishWires()
	h.Index()
	r.landWires()
	r.checkGroups()
	r.finishPoints()
	r.interlock()
	r.stacks()
	r.testPoints()
	r.waivers()
	r.states()
	r.before()
	r.finishPlanned()
	r.fillAuto()
	return h
}

// finishPoints lists the points of the finished harness in the order of their definition.
// A point whose terminal went with its part is as good as none.
func (r *reading) finishPoints() {
	for _, name := range r.order {
		p := r.points[name]
		t := p.terminal
		if t != nil && r.built[t.Part].gone != still {
			t = nil
		}
		r.h.Points = append(r.h.Points, wiring.Point{Name: name, Terminal: t, At: p.at})
	}
}

// before lists what lower layers had and higher ones took away.
func (r *reading) before() {
	onPart := map[*wiring.Part][]*wiring.Wire{}
	for _, d := range r.dropped {
		w := d.wire
		r.finishEnds(w)
		w.wire.Pieces = r.pieces(w, false)
		r.h.BeforeWires = append(r.h.BeforeWires, wiring.RemovedWire{Wire: w.wire, By: d.by.Layer, At: d.at})
		for _, e := range w.end {
			if p := r.partOf(e); p != nil && p.gone != still {
				onPart[p.part] = append(onPart[p.part], w.wire)
			}
		}
	}
	for _, d := range r.allParts() {
		if d.gone != still {
			r.h.Before = append(r.h.Before, wiring.RemovedPart{
				Part: d.part, By: r.layers[d.gone].Layer, At: d.goneAt, Wires: onPart[d.part], Replaced: d.heir != nil,
			})
		}
	}
	wiring.SortRemoved(r.h.BeforeWires)
}
