package route

// scratch is what a search needs and the next one uses again. A state is a point with the
// direction in which it was reached: point * 4 + direction.
type scratch struct {
	cost   []int32
	from   []int32 // state before, or -1 at a start
	seen   []uint32
	goal   []int32 // price of ending in a state
	goalOf []uint32
	round  uint32
	queue  queue
}

func newScratch(points int) *scratch {
	return &scratch{cost: make([]int32, 4*points), from: make([]int32, 4*points), seen: make([]uint32, 4*points),
		goal: make([]int32, 4*points), goalOf: make([]uint32, 4*points)}
}

// quest is one search: a wire, whether it may tear up others, and how far it may look.
type quest struct {
	wire       int
	start, end int // terminals
	tear       bool
	effort     int
}

// search returns the points of the cheapest path of a wire and its price, or nil.
func (r *Router) search(q quest) ([]int, int) {
	s := r.scratch
	s.round++
	s.queue.reset()
	r.markGoals(q)
	r.openStarts(q)
	for effort := q.effort; s.queue.n > 0 && effort > 0; effort-- {
		state := s.queue.pop()
		if s.goalOf[state] == s.round && s.from[state] >= 0 {
			return r.trace(state), int(s.cost[state])
		}
		r.expand(q, state)
	}
	return nil, 0
}

// markGoals notes in which states the search may end.
func (r *Router) markGoals(q quest) {
	s := r.scratch
	set := func(at, dir, price int) {
		state := at*4 + dir
		if s.goalOf[state] == s.round && int(s.goal[state]) <= price {
			return
		}
		s.goalOf[state], s.goal[state] = s.round, int32(price)
	}
	t := &r.terms[q.end]
	for _, g := range t.gates {
		price, ok := r.gatePrice(q, t, g)
		if !ok {
			continue
		}
		set(g.at, opposite(g.out), price)
		if g.turn {
			set(g.at, (g.out+1)&3, price+priceBend)
			set(g.at, (g.out+3)&3, price+priceBend)
		}
	}
}

// openStarts queues the gates of the first terminal.
func (r *Router) openStarts(q quest) {
	s := r.scratch
	t := &r.terms[q.start]
	for _, g := range t.gates {
		price, ok := r.gatePrice(q, t, g)
		if !ok {
			continue
		}
		state := int32(g.at*4 + g.out)
		if s.seen[state] == s.round && int(s.cost[state]) <= price {
			continue
		}
		s.seen[state], s.cost[state], s.from[state] = s.round, int32(price), -1
		s.queue.push(price+r.estimate(q, g.at, g.out), state)
	}
}

// gatePrice returns what landing at a gate costs beside the wires that land there already.
func (r *Router) gatePrice(q quest, t *terminal, g gate) (int, bool) {
	if g.turn {
		return g.price, true
	}
	if t.bar == none && g.price > 0 && r.d.Wires[q.wire].Weight >= heavy {
		g.price += priceHeavyTee
	}
	if o := r.grid.ownerOf(g.at, g.out); o != none && !q.tear {
		return 0, false
	}
	across := r.grid.ownerOf(g.at, opposite(g.out)) != none
	if t.bar != none {
		if across {
			return g.price + priceFourWay, true
		}
		return g.price, true
	}
	// a trunk must not become a four-way joint: two offset tees instead
	last := t.trunk[len(t.trunk)-1]
	if g.at != last || r.trunkGoesOn(t, last) {
		return g.price, !across
	}
	return g.price, true
}

// trunkGoesOn reports whether a wire leaves the far end of a trunk in its own line.
func (r *Router) trunkGoesOn(t *terminal, last int) bool {
	return r.grid.ownerOf(last, t.gates[len(t.gates)-1].out) != none
}

// expand queues the neighbours of a state.
func (r *Router) expand(q quest, state int32) {
	s := r.scratch
	p, came := int(state>>2), int(state&3)
	start := s.from[state] < 0
	for turn := -1; turn <= 1; turn++ {
		dir := (came + turn) & 3
		price, ok := r.leavePrice(q, p, came, dir, start)
		if !ok {
			continue
		}
		next, price2, ok := r.stepPrice(q, p, dir)
		if !ok {
			continue
		}
		cost := s.cost[state] + int32(price+price2)
		to := int32(next*4 + dir)
		if s.goalOf[to] == s.round {
			cost += s.goal[to]
		}
		if s.seen[to] == s.round && s.cost[to] <= cost {
			continue
		}
		s.seen[to], s.cost[to], s.from[to] = s.round, cost, state
		s.queue.push(int(cost)+r.estimate(q, next, dir), to)
	}
}

// leavePrice is what passing through point p costs: straight on, or with a bend; across a
// wire or a rail only straight on.
func (r *Router) leavePrice(q quest, p, came, dir int, start bool) (int, bool) {
	if start {
		return r.startPrice(q, p, came, dir)
	}
	if m := r.grid.metal[p]; m != none {
		// only a rail is ever entered, and only to cross it
		return priceRail, dir == came && int(m) != q.end && int(m) != q.start
	}
	bend := 0
	if dir != came {
		bend = priceBend * r.weight(q.wire)
	}
	a, b := r.grid.ownerOf(p, (came+1)&3), r.grid.ownerOf(p, (came+3)&3)
	switch {
	case a == none && b == none:
		if ahead := r.grid.ownerOf(p, came); ahead != none {
			return priceTorn + bend, q.tear // a foreign wire begins or ends its line here
		}
		return bend, true
	case a == b && dir == came && r.crossable(p, came, int(a)):
		return priceCrossing, true
	}
	return priceTorn + bend, q.tear
}

// crossable reports whether the wire passes through p at a right angle to a direction.
func (r *Router) crossable(p, came, wire int) bool {
	return r.grid.ownerOf(p, came) == none && r.grid.ownerOf(p, opposite(came)) == none
}

// startPrice is what the first step from a gate costs.
func (r *Router) startPrice(q quest, p, came, dir int) (int, bool) {
	if dir == came {
		return 0, true
	}
	t := &r.terms[q.start]
	return priceBend, len(t.gates) == 1 && t.gates[0].turn
}

// stepPrice is what the stretch from p in a direction and its far point cost.
func (r *Router) stepPrice(q quest, p, dir int) (next, price int, ok bool) {
	g := r.grid
	next = g.next(p, dir)
	axis, at := g.stretch(p, dir)
	if g.shut[axis][at] {
		return 0, 0, false
	}
	price = priceStep
	if g.owner[axis][at] != none {
		if !q.tear {
			return 0, 0, false
		}
		price += priceTorn + priceHistory*int(g.fights[axis][at])
	}
	entry, ok := r.entryPrice(q, next, dir)
	if !ok {
		return 0, 0, false
	}
	return next, price + entry + r.company(next, dir), true
}

// entryPrice is what being at a point costs for what stands there.
func (r *Router) entryPrice(q quest, p, dir int) (int, bool) {
	g := r.grid
	if m := g.metal[p]; m != none {
		if int(m) == q.end {
			return 0, r.scratch.goalOf[p*4+dir] == r.scratch.round
		}
		return 0, int(m) != q.start && r.isRailAcross(int(m), dir) && !g.solid[p]
	}
	if g.solid[p] {
		return 0, false
	}
	price := 0
	if f := g.front[p]; f != none && int(f) != q.start && int(f) != q.end {
		price += priceFront
	}
	return price + int(g.beside[p]), true
}

// isRailAcross reports whether the metal is a supply rail that lies across the direction.
func (r *Router) isRailAcross(metal, dir int) bool {
	t := &r.terms[metal]
	if t.bar == none || !r.d.Bars[t.bar].Thick {
		return false
	}
	return r.l.Bars[t.bar].Upright == (dir == right || dir == left)
}

// company is what foreign wires close beside the line cost.
func (r *Router) company(p, dir int) int {
	price := 0
	for _, side := range [2]int{(dir + 1) & 3, (dir + 3) & 3} {
		if r.grid.ownerOf(r.grid.next(p, side), opposite(dir)) != none {
			price += priceParallel
		}
	}
	return price
}

// weight is how many times a bend of the wire counts.
func (r *Router) weight(wire int) int {
	if r.d.Wires[wire].Weight >= heavy {
		return 3
	}
	return 1
}

// heavy is the weight from which on a wire counts as a traction cable.
const heavy = 4

// estimate is a lower bound of what is left from a point reached in a direction: the way
// to the hull of the goal, and a bend where it does not lie ahead.
func (r *Router) estimate(q quest, p, dir int) int {
	box := &r.terms[q.end].box
	x, y := int(r.grid.xs[p]), int(r.grid.ys[p])
	dx := max(box[0]-x, x-box[2], 0)
	dy := max(box[1]-y, y-box[3], 0)
	price := priceStep * (dx + dy)
	ahead := true
	switch {
	case dx > 0 && dy > 0:
		ahead = false
	case dx > 0:
		ahead = dir == right && x < box[0] || dir == left && x > box[2]
	case dy > 0:
		ahead = dir == down && y < box[1] || dir == up && y > box[3]
	}
	if !ahead {
		price += priceBend
	}
	return price
}

// trace returns the points from the start to a state.
func (r *Router) trace(state int32) []int {
	from := len(r.arena)
	for s := state; s >= 0; s = r.scratch.from[s] {
		r.arena = append(r.arena, int(s>>2))
	}
	points := r.arena[from:len(r.arena):len(r.arena)]
	for i, j := 0, len(points)-1; i < j; i, j = i+1, j-1 {
		points[i], points[j] = points[j], points[i]
	}
	return points
}
