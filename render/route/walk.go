package route

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

// Keep puts paths from an earlier run back, corner by corner as Result gives them, where
// they still fit.
func (r *Router) Keep(paths [][]int) {
	for w, p := range paths {
		if p == nil || r.paths[w] != nil {
			continue
		}
		if price, ok := r.walk(w, p); ok {
			r.put(w, p, price)
		}
	}
}
