package route

import (
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// Result sums up the paths as they lie.
func (r *Router) Result() *Result {
	res := &Result{Paths: make([][]symbol.Cell, len(r.paths))}
	points := r.reachPins()
	for w, p := range points {
		if p == nil {
			res.Failed = append(res.Failed, w)
			continue
		}
		res.Paths[w] = r.corners(p)
		res.Bends += len(res.Paths[w]) - 2
	}
	res.Dots = r.dots(points)
	res.Crossing = r.crossings()
	return res
}

// reachPins returns the paths with one wire of each trunk drawn on to the pin: the one
// that lands farthest out, in line if there is one. The others then join it at tees.
func (r *Router) reachPins() [][]int {
	points := append([][]int(nil), r.paths...)
	for t := range r.terms {
		if r.terms[t].trunk == nil {
			continue
		}
		w, side, i := r.leader(t)
		if w < 0 {
			continue
		}
		points[w] = extended(points[w], side, r.terms[t].trunk[:i])
	}
	return points
}

// leader finds the wire that lands farthest out on a trunk, its end, and where on the trunk.
func (r *Router) leader(t int) (wire, side, at int) {
	wire = none
	best := none
	for w, p := range r.paths {
		if p == nil {
			continue
		}
		for s, e := range r.d.Wires[w].Ends {
			if r.number(e) != t {
				continue
			}
			rank := 2 * indexOf(r.terms[t].trunk, endPoint(p, s))
			if r.inLine(t, p, s) {
				rank++
			}
			if rank > best {
				best, wire, side, at = rank, w, s, rank/2
			}
		}
	}
	return wire, side, at
}

// inLine reports whether a path leaves its end in the direction of the trunk.
func (r *Router) inLine(t int, p []int, side int) bool {
	out := r.terms[t].gates[len(r.terms[t].gates)-1].out
	if side == 0 {
		return r.grid.dirTo(p[0], p[1]) == out
	}
	return r.grid.dirTo(p[len(p)-1], p[len(p)-2]) == out
}

func endPoint(p []int, side int) int {
	if side == 0 {
		return p[0]
	}
	return p[len(p)-1]
}

func indexOf(s []int, v int) int {
	for i, x := range s {
		if x == v {
			return i
		}
	}
	return 0
}

// extended adds the trunk up to the pin, which comes first in it, to one end of a path.
func extended(p []int, side int, trunk []int) []int {
	longer := make([]int, 0, len(p)+len(trunk))
	if side == 0 {
		longer = append(longer, trunk...)
		return append(longer, p...)
	}
	longer = append(longer, p...)
	for i := len(trunk) - 1; i >= 0; i-- {
		longer = append(longer, trunk[i])
	}
	return longer
}

// corners returns the ends and bends of a path.
func (r *Router) corners(p []int) []symbol.Cell {
	cs := []symbol.Cell{r.grid.cell(p[0])}
	for i := 1; i+1 < len(p); i++ {
		if p[i]-p[i-1] != p[i+1]-p[i] {
			cs = append(cs, r.grid.cell(p[i]))
		}
	}
	return append(cs, r.grid.cell(p[len(p)-1]))
}

// dots lists where wires join: every landing on a bar, and every point of a pin or trunk
// at which a wire ends beside another one.
func (r *Router) dots(points [][]int) []symbol.Cell {
	ends := map[int]int{}
	for w, p := range r.paths {
		if p == nil {
			continue
		}
		for s, e := range r.d.Wires[w].Ends {
			t := &r.terms[r.number(e)]
			at := endPoint(p, s)
			if t.bar != none {
				ends[at] = 2
				continue
			}
			if endPoint(points[w], s) == at && t.trunk != nil && r.shared(points, w, at) {
				ends[at] = 2
			}
		}
	}
	var cells []symbol.Cell
	for p := range ends {
		cells = append(cells, r.grid.cell(p))
	}
	sort.Slice(cells, func(i, j int) bool {
		if cells[i].Y != cells[j].Y {
			return cells[i].Y < cells[j].Y
		}
		return cells[i].X < cells[j].X
	})
	return cells
}

// shared reports whether another wire runs through or ends at the point.
func (r *Router) shared(points [][]int, w, at int) bool {
	for v, p := range points {
		if v == w {
			continue
		}
		for _, q := range p {
			if q == at {
				return true
			}
		}
	}
	return false
}

// crossings counts the points at which one wire passes over another.
func (r *Router) crossings() int {
	n := 0
	for p := range r.grid.metal {
		if r.grid.metal[p] != none {
			continue
		}
		h, v := r.grid.ownerOf(p, right), r.grid.ownerOf(p, down)
		if h != none && v != none && h != v && h == r.grid.ownerOf(p, left) && v == r.grid.ownerOf(p, up) {
			n++
		}
	}
	return n
}
