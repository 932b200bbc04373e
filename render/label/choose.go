package label

import (
	"slices"

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
	rs    []*request
	order []*request
}

// run lets every request choose, the scarcest first, and then improves.
func (c *choice) run() {
	c.order = append(c.order[:0], c.rs...)
	slices.SortStableFunc(c.order, func(a, b *request) int { return len(a.spots) - len(b.spots) })
	for _, r := range c.order {
		c.settle(r, depth)
	}
	for range rounds {
		if !c.improve() {
			return
		}
	}
}

// settle finds a place for a request, if need be by moving others out of the way.
func (c *choice) settle(r *request, depth int) bool {
	for k := range r.spots {
		if n, _ := c.hits(r, k, 1); n == 0 {
			r.taken = k
			return true
		}
	}
	if depth == 0 {
		return false
	}
	for k := range r.spots {
		n, other := c.hits(r, k, 2)
		if n != 1 {
			continue
		}
		was := other.taken
		r.taken, other.taken = k, -1
		if c.settle(other, depth-1) {
			return true
		}
		r.taken, other.taken = -1, was
	}
	return false
}

// hits counts the requests whose words a spot would touch, at most limit of them, and
// returns the first.
func (c *choice) hits(r *request, k, limit int) (n int, first *request) {
	box := arrange.Grown(r.spots[k].box, gapWords)
	for _, o := range c.rs {
		if o == r || o.taken < 0 || !o.touches(box) {
			continue
		}
		if n == 0 {
			first = o
		}
		if n++; n == limit {
			break
		}
	}
	return n, first
}

// touches reports whether the words of a request, where they stand, touch a box.
func (r *request) touches(b symbol.Box) bool {
	s := &r.spots[r.taken]
	return arrange.Touch(s.box, b) || s.led && cuts(s.leader[0], s.leader[1], b)
}

// improve moves each request to its cheapest free place and reports whether any moved.
func (c *choice) improve() bool {
	moved := false
	for _, r := range c.order {
		if r.taken < 0 {
			moved = c.settle(r, depth) || moved
			continue
		}
		for k := 0; k < r.taken; k++ {
			if n, _ := c.hits(r, k, 1); n == 0 {
				r.taken, moved = k, true
				break
			}
		}
	}
	return moved
}
