package route

import (
	"slices"

	"github.com/lugwright/lugwright/render/symbol"
)

// result sums up the paths as they lie.
func (r *Router) result() *Result {
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
	res.Crossing = r.crossings(points)
	return res
}

// reachPins returns the paths with the trunks drawn: the heaviest wire of each runs on to
// the pin, and one that lands farther out runs on to where the heaviest lands. The others
// join these at tees.
func (r *Router) reachPins() [][]int {
	points := append([][]int(nil), r.paths...)
	for t := range r.terms {
		trunk := r.terms[t].trunk
		if len(trunk) == 0 {
			continue
		}
		all := r.landings(t)
		if len(all) == 0 {
			continue
		}
		main, far := all[0], all[0]
		for _, l := range all[1:] {
			if l.rank(r) > main.rank(r) {
				main = l
			}
			if l.at > far.at || l.at == far.at && l.inLine && !far.inLine {
				far = l
			}
		}
		points[main.wire] = extended(points[main.wire], main.side, trunk[:main.at])
		if far.at > main.at {
			points[far.wire] = extended(points[far.wire], far.side, trunk[main.at:far.at])
		}
	}
	return points
}

// landing is the end of a wire on a trunk.
type landing struct {
	wire, side int
	at         int // index into the trunk, from the pin outwards
	inLine     bool
}

// rank orders landings by the weight of their wires; of equals the one in line and farthest
// out comes first.
func (l landing) rank(r *Router) int {
	rank := r.d.Wires[l.wire].Weight*1000 + 2*l.at
	if l.inLine {
		rank++
	}
	return rank
}

// landings lists the ends of the routed wires on a trunk.
func (r *Router) landings(t int) []landing {
	var all []landing
	for w, p := range r.paths {
		if p == nil {
			continue
		}
		for side, e := range r.d.Wires[w].Ends {
			if r.number(e) == t {
				all = append(all, landing{w, side, indexOf(r.terms[t].trunk, endPoint(p, side)), r.inLine(t, p, side)})
			}
		}
	}
	return all
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
	clear(r.passes)
	for _, p := range points {
		for _, at := range p {
			r.passes[at]++
		}
	}
	var ends []int
	for w, p := range points {
		if p == nil {
			continue
		}
		for s, e := range r.d.Wires[w].Ends {
			t := &r.terms[r.number(e)]
			if at := endPoint(p, s); t.bar != none || len(t.trunk) > 0 && r.passes[at] > 1 {
				ends = append(ends, at)
			}
		}
	}
	slices.Sort(ends) // row by row
	ends = slices.Compact(ends)
	var cells []symbol.Cell
	for _, p := range ends {
		cells = append(cells, r.grid.cell(p))
	}
	return cells
}

// crossings counts the points at which one wire passes over another.
func (r *Router) crossings(points [][]int) int {
	n := 0
	for w, p := range points {
		for i := 1; i+1 < len(p); i++ {
			if at := p[i]; r.grid.metal[at] == none && p[i]-p[i-1] == p[i+1]-p[i] && r.isCrossed(int32(w), at, r.grid.dirTo(p[i-1], at)) {
				n++
			}
		}
	}
	return n / 2
}

// isCrossed reports whether another wire passes through a point at a right angle.
func (r *Router) isCrossed(w int32, at, dir int) bool {
	a, b := r.grid.ownerOf(at, (dir+1)&3), r.grid.ownerOf(at, (dir+3)&3)
	return a != none && a == b && a != w
}
