package arrange

import "sort"

// fillFields gives every node without a tower to the field of the nearest one: right of it
// what it drives and what hangs on a source, left of it the rest. Nodes are filed in the
// order in which they are fed.
func (s *starter) fillFields() {
	for {
		queue := s.frontier()
		if len(queue) == 0 {
			first := s.firstHomeless()
			if first < 0 {
				break
			}
			s.raise(tower{nodes: []int{first}, above: -1, below: -1, after: -1})
			continue
		}
		for _, q := range queue {
			if s.tower[q.node] < 0 {
				s.file(q.node, q.tower, q.far)
			}
		}
	}
	s.orderFields()
}

// homeless is a node that could join a field.
type homeless struct{ node, tower, far int }

// frontier lists the nodes that are wired to what has a place, the nearest first.
func (s *starter) frontier() []homeless {
	var all []homeless
	for n := range s.links {
		if s.tower[n] >= 0 || s.row(n) != Free || s.role(n) == Flag {
			continue
		}
		best := homeless{node: n, tower: -1}
		for _, ln := range s.byWeight(n) {
			t := s.tower[ln.to]
			if t < 0 || s.role(ln.to) == Source && len(s.links[n]) > 1 {
				continue
			}
			if far := s.far[ln.to] + 1; best.tower < 0 || far < best.far {
				best.tower, best.far = t, far
			}
		}
		if best.tower >= 0 {
			all = append(all, best)
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].far < all[b].far })
	return all
}

// firstHomeless returns a node that nothing with a place is wired to, or -1.
func (s *starter) firstHomeless() int {
	for n := range s.links {
		if s.tower[n] < 0 && s.row(n) == Free && s.role(n) != Flag {
			return n
		}
	}
	return -1
}

// file puts a node into a field.
func (s *starter) file(n, t, far int) {
	s.tower[n], s.far[n] = t, far
	side := 0
	if s.role(n) == Companion || s.role(s.towers[t].nodes[0]) == Source {
		side = 1
	}
	s.towers[t].field[side] = append(s.towers[t].field[side], n)
}

// fed is how many hops a node is from a rail, not counting ways through a host: the order
// in which current comes to it.
func (s *starter) fed(n int) int {
	far := map[int]int{n: 0}
	queue := []int{n}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, ln := range s.links[at] {
			if s.row(ln.to) == TopRow {
				return far[at]
			}
			if _, ok := far[ln.to]; ok || s.row(ln.to) == BottomRow || s.role(ln.to) == Host || s.role(ln.to) == Source || s.role(ln.to) == Flag {
				continue
			}
			far[ln.to] = far[at] + 1
			queue = append(queue, ln.to)
		}
	}
	return len(s.links)
}
