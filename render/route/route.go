package route

import (
	"slices"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// Router routes one diagram, laid out in one way after the other. It holds the field and
// the paths found so far.
type Router struct {
	d       *arrange.Diagram
	l       *arrange.Layout
	grid    *grid
	base    []int // number of the first pin of each item
	pins    int
	count   []int // wires on each terminal
	terms   []terminal
	paths   [][]int // points of each wire from end 0 to end 1; nil: not routed
	price   []int
	scratch *scratch
	fresh   []bool  // wires worth laying anew
	arena   []int   // memory for the points of paths, used up until the next layout
	passes  []uint8 // of Result: how many wires run through or end at a point
}

// Run routes all wires of a laid-out diagram. Hints are paths to begin with, by wire; they
// may be nil.
func Run(d *arrange.Diagram, l *arrange.Layout, hints [][]symbol.Cell) *Result {
	return New(d).Run(l, hints)
}

// Again routes a diagram that is little changed: paths that still fit stay as they are, and
// only the others are looked at.
func Again(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell) *Result {
	return New(d).Again(l, paths)
}

// New makes a router for a diagram, which must not change afterwards.
func New(d *arrange.Diagram) *Router {
	r := &Router{d: d, grid: newGrid(d.Width+1, d.Height+1),
		paths: make([][]int, len(d.Wires)), price: make([]int, len(d.Wires)), fresh: make([]bool, len(d.Wires))}
	r.scratch = newScratch(r.grid.w * r.grid.h)
	r.passes = make([]uint8, r.grid.w*r.grid.h)
	r.countTerminals()
	return r
}

// Run is what the function of that name does.
func (r *Router) Run(l *arrange.Layout, hints [][]symbol.Cell) *Result {
	r.lay(l)
	r.Keep(hints)
	for w := range r.fresh {
		r.fresh[w] = true
	}
	r.layMissing(firstEffort)
	r.tearUp(tearRounds)
	r.improve()
	r.layMissing(lastEffort)
	return r.result()
}

// Again is what the function of that name does.
func (r *Router) Again(l *arrange.Layout, paths [][]symbol.Cell) *Result {
	r.lay(l)
	r.Keep(paths)
	for w := range r.fresh {
		r.fresh[w] = r.paths[w] == nil
	}
	r.layMissing(firstEffort)
	r.tearUp(1)
	r.improve()
	return r.result()
}

// lay puts everything but the wires of a layout on the field.
func (r *Router) lay(l *arrange.Layout) {
	r.l = l
	r.grid.reset()
	r.arena = r.arena[:0]
	clear(r.paths)
	for i := range r.d.Items {
		place := &l.Items[i]
		form := &r.d.Items[i].Forms[place.Form]
		for _, b := range form.Body {
			b = arrange.Shifted(b, place.At)
			r.grid.block(arrange.Grown(b, bodyMargin))
			r.grid.shade(b)
		}
		if c, ok := l.CaptionBox(r.d, i); ok {
			r.grid.block(arrange.Grown(c, captionMargin))
		}
	}
	r.closeRows()
	r.openTerminals()
}

// closeRows closes what lies above the upper and below the lower rails.
func (r *Router) closeRows() {
	top, foot := r.d.Rows()
	for y := range r.grid.h {
		if y >= top && y <= foot {
			continue
		}
		for x := range r.grid.w {
			r.grid.solid[y*r.grid.w+x] = true
		}
	}
}

// layMissing routes the wires without a path, those with the shortest way first.
func (r *Router) layMissing(effort int) {
	for _, w := range r.missing() {
		r.find(w, false, effort)
	}
}

// missing lists the wires without a path, those with the shortest way first.
func (r *Router) missing() []int {
	var ws []int
	for w := range r.paths {
		if r.paths[w] == nil {
			ws = append(ws, w)
		}
	}
	slices.SortStableFunc(ws, func(a, b int) int { return r.span(a) - r.span(b) })
	return ws
}

// find finds a path for a wire and puts it on the field; with tear, wires in its way lose
// theirs. It reports whether it found one.
func (r *Router) find(w int, tear bool, effort int) bool {
	q := r.quest(w)
	q.tear, q.effort = tear, effort
	points, price := r.search(q)
	if points == nil {
		return false
	}
	if tear {
		r.clear(w, points)
	}
	r.put(w, points, price)
	return true
}

// quest is the search for a wire as it is.
func (r *Router) quest(w int) quest {
	ends := r.d.Wires[w].Ends
	return quest{wire: w, start: r.number(ends[0]), end: r.number(ends[1])}
}

// span is the shortest way that a wire could take, in units.
func (r *Router) span(w int) int {
	a := r.terms[r.number(r.d.Wires[w].Ends[0])].box
	b := r.terms[r.number(r.d.Wires[w].Ends[1])].box
	return max(a[0]-b[2], b[0]-a[2], 0) + max(a[1]-b[3], b[1]-a[3], 0)
}

// bound is the price below which the path of a wire cannot come.
func (r *Router) bound(w int) int { return priceStep * r.span(w) }
