package route

import (
	"sort"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// Router holds the field of one laid-out diagram and the paths found so far.
type Router struct {
	d       *arrange.Diagram
	l       *arrange.Layout
	grid    *grid
	base    []int // number of the first pin of each item
	pins    int
	terms   []terminal
	paths   [][]int // points of each wire from end 0 to end 1; nil: not routed
	price   []int
	scratch *scratch
	fresh   []bool // wires worth laying anew; nil: all
}

// Run routes all wires of a laid-out diagram. Hints are paths to begin with, by wire; they
// may be nil.
func Run(d *arrange.Diagram, l *arrange.Layout, hints [][]symbol.Cell) *Result {
	r := New(d, l)
	r.Keep(hints)
	r.RouteAll()
	return r.Result()
}

// Again routes a diagram that is little changed: paths that still fit stay as they are, and
// only the others are looked at.
func Again(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell) *Result {
	r := New(d, l)
	r.Keep(paths)
	r.fresh = make([]bool, len(d.Wires))
	for w := range r.paths {
		r.fresh[w] = r.paths[w] == nil
	}
	r.layMissing(firstEffort)
	r.tearUp(1)
	r.improve()
	return r.Result()
}

// New makes a router with everything but the wires on its field.
func New(d *arrange.Diagram, l *arrange.Layout) *Router {
	r := &Router{d: d, l: l, grid: newGrid(d.Width+1, d.Height+1),
		paths: make([][]int, len(d.Wires)), price: make([]int, len(d.Wires))}
	r.scratch = newScratch(r.grid.w * r.grid.h)
	for i := range d.Items {
		r.base = append(r.base, r.pins)
		r.pins += len(d.Items[i].Forms[0].Pins)
		for _, b := range l.Bodies(d, i) {
			r.grid.block(arrange.Grown(b, bodyMargin))
			r.grid.shade(b)
		}
		if c, ok := l.CaptionBox(d, i); ok {
			r.grid.block(arrange.Grown(c, captionMargin))
		}
	}
	r.closeRows()
	r.openTerminals()
	return r
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

// RouteAll routes every wire that has no path yet, and then mends what came out dear.
func (r *Router) RouteAll() {
	r.layMissing(firstEffort)
	r.tearUp(tearRounds)
	r.improve()
	r.layMissing(lastEffort)
}

// layMissing routes the wires without a path, those with the shortest way first.
func (r *Router) layMissing(effort int) {
	for _, w := range r.missing() {
		r.lay(w, false, effort)
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
	sort.SliceStable(ws, func(i, j int) bool { return r.span(ws[i]) < r.span(ws[j]) })
	return ws
}

// lay finds a path for a wire and puts it on the field; with tear, wires in its way lose
// theirs. It reports whether it found one.
func (r *Router) lay(w int, tear bool, effort int) bool {
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
