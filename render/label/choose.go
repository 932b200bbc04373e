package label

import (
	"sort"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// depth bounds the ejection chains, rounds the passes that look for cheaper places.
const (
	depth  = 3
	rounds = 3
)

// choice is the state of choosing: which request stands where.
type choice struct {
	rs []*request
}

// run lets every request choose, the scarcest first, and then improves.
func (c *choice) run() {
	order := make([]*request, len(c.rs))
	copy(order, c.rs)
	sort.SliceStable(order, func(a, b int) bool { return len(order[a].spots) < len(order[b].spots) })
	for _, r := range order {
		c.settle(r, depth)
	}
	for range rounds {
		if !c.improve(order) {
			return
		}
	}
}

// settle finds a place for a request, if need be by moving others out of the way.
func (c *choice) settle(r *request, depth int) bool {
	for k := range r.spots {
		if len(c.hits(r, k, 1)) == 0 {
			r.taken = k
			return true
		}
	}
	if depth == 0 {
		return false
	}
	for k := range r.spots {
		hit := c.hits(r, k, 2)
		if len(hit) != 1 {
			continue
		}
		other := hit[0]
		was := other.taken
		r.taken, other.taken = k, -1
		if c.settle(other, depth-1) {
			return true
		}
		r.taken, other.taken = -1, was
	}
	return false
}

// hits lists the requests whose words a spot would touch, at most limit of them.
func (c *choice) hits(r *request, k, limit int) []*request {
	var hit []*request
	box := arrange.Grown(r.spots[k].box, gapWords)
	for _, o := range c.rs {
		if o == r || o.taken < 0 || !o.touches(box) {
			continue
		}
		hit = append(hit, o)
		if len(hit) == limit {
			return hit
		}
	}
	return hit
}

// touches reports whether the words of a request, where they stand, touch a box.
func (r *request) touches(b symbol.Box) bool {
	s := &r.spots[r.taken]
	return arrange.Touch(s.box, b) || len(s.leader) > 0 && cuts(s.leader[0], s.leader[1], b)
}

// improve moves each request to its cheapest free place and reports whether any moved.
func (c *choice) improve(order []*request) bool {
	moved := false
	for _, r := range order {
		if r.taken < 0 {
			moved = c.settle(r, depth) || moved
			continue
		}
		for k := 0; k < r.taken; k++ {
			if len(c.hits(r, k, 1)) == 0 {
				r.taken, moved = k, true
				break
			}
		}
	}
	return moved
}
