package route

import (
	"slices"

	"github.com/lugwright/lugwright/render/symbol"
)

// walk returns what a path costs among the wires that lie now, its own lifted, and whether
// it may be taken at all.
func (r *Router) walk(w int, points []int) (int, bool) {
	if len(points) < 2 {
		return 0, false
	}
	q := r.quest(w)
	r.scratch.round++
	r.markGoals(q)
	came, price, ok := r.startOf(q, points)
	if !ok {
		return 0, false
	}
	for i := 0; i+1 < len(points); i++ {
		dir := r.grid.dirTo(points[i], points[i+1])
		leave, ok := r.leavePrice(q, points[i], came, dir, i == 0)
		if !ok {
			return 0, false
		}
		_, step, ok := r.stepPrice(q, points[i], dir)
		if !ok {
			return 0, false
		}
		price += leave + step
		came = dir
	}
	last := points[len(points)-1]*4 + came
	if r.scratch.goalOf[last] != r.scratch.round {
		return 0, false
	}
	return price + int(r.scratch.goal[last]), true
}

// startOf returns the direction in which the path's gate lets it out, and its price.
func (r *Router) startOf(q quest, points []int) (out, price int, ok bool) {
	t := &r.terms[q.start]
	first := r.grid.dirTo(points[0], points[1])
	for _, g := range t.gates {
		if g.at != points[0] || g.out != first && !(g.turn && first != opposite(g.out)) {
			continue
		}
		if price, ok := r.gatePrice(q, t, g); ok {
			return g.out, price, true
		}
	}
	return 0, 0, false
}

// Keep lays paths that were found elsewhere, given by their corners from end to end, where
// they may be taken: the cheapest first, each among those that lie.
func (r *Router) Keep(paths [][]symbol.Cell) {
	for w, corners := range paths {
		if r.paths[w] != nil || len(corners) < 2 {
			continue
		}
		points := r.points(corners)
		if points == nil {
			continue
		}
		points = r.cut(w, points)
		if price, ok := r.walk(w, points); ok {
			r.put(w, points, price)
		}
	}
}

// points lists all points of a path given by its corners; nil if it leaves the field.
func (r *Router) points(corners []symbol.Cell) []int {
	start := len(r.arena)
	for i, c := range corners {
		if !r.grid.inside(c.X, c.Y) {
			return nil
		}
		p := r.grid.point(c)
		if i == 0 {
			r.arena = append(r.arena, p)
			continue
		}
		step := r.grid.delta[towards(corners[i-1], c)]
		for at := r.arena[len(r.arena)-1]; at != p; {
			at += step
			r.arena = append(r.arena, at)
		}
	}
	return r.arena[start:len(r.arena):len(r.arena)]
}

// towards is the direction from a point to another one in its row or column.
func towards(from, to symbol.Cell) int {
	switch {
	case to.X > from.X:
		return right
	case to.X < from.X:
		return left
	case to.Y > from.Y:
		return down
	}
	return up
}

// cut takes the trunks of its pins off a path that runs to the pins themselves.
func (r *Router) cut(w int, points []int) []int {
	first, last := 0, len(points)-1
	for side, e := range r.d.Wires[w].Ends {
		trunk := r.terms[r.number(e)].trunk
		for len(trunk) > 0 && first < last {
			if side == 0 && slices.Contains(trunk, points[first+1]) {
				first++
			} else if side == 1 && slices.Contains(trunk, points[last-1]) {
				last--
			} else {
				break
			}
		}
	}
	if first >= last {
		return nil
	}
	return points[first : last+1]
}
