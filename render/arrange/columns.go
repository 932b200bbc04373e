package arrange

// findColumns divides all items and free bars into columns: first the lines of current
// between an upper and a lower rail, the heaviest first; then, again and again, the lines
// that begin and end on what already stands; at last whatever hangs on one end only.
func (s *starter) findColumns() {
	s.addSources()
	for s.addLine(true) {
	}
	for s.addLine(false) {
	}
	for s.addLoose() {
	}
}

// addSources gives each source a column of its own at the left.
func (s *starter) addSources() {
	for i := range s.d.Items {
		if s.d.Items[i].Role == Source {
			s.columns = append(s.columns, column{nodes: []int{i}, from: -1, to: -1, home: -1, order: -1000 + i})
			s.column[i] = len(s.columns) - 1
		}
	}
}

// addLine finds the best line of nodes without a column between two fixed ends and makes
// it a column. With rails, both ends must be rails. It reports whether there was one.
func (s *starter) addLine(rails bool) bool {
	best := lineage{}
	for n := range s.links {
		if s.isEnd(n, rails, true) {
			if c := s.lineFrom(n, rails); c.better(&best) {
				best = c
			}
		}
	}
	if len(best.nodes) == 0 {
		return false
	}
	s.addColumn(best)
	return true
}

// lineage is a line of nodes from a node to a node, both of which already stand.
type lineage struct {
	from, to int
	nodes    []int
	weight   int // of its lightest wire
	entry    []link
}

// better prefers heavy lines, then those with a host, then short ones.
func (a *lineage) better(b *lineage) bool {
	switch {
	case len(a.nodes) == 0:
		return false
	case len(b.nodes) == 0:
		return true
	case a.weight != b.weight:
		return a.weight > b.weight
	}
	return len(a.nodes) < len(b.nodes)
}

// isEnd reports whether lines may begin (or end) at a node.
func (s *starter) isEnd(n int, rails, begin bool) bool {
	if s.isRail(n) {
		row := s.d.Bars[n-len(s.d.Items)].Row
		return row == TopRow && begin || row == BottomRow && !begin
	}
	return !rails && s.column[n] >= 0 && s.role(n) != Source
}

// lineFrom finds the line from a node through nodes without a column to the nearest end,
// by breadth, heavier wires first.
func (s *starter) lineFrom(start int, rails bool) lineage {
	type step struct {
		node, back, weight int
		via                link
	}
	steps := []step{{start, -1, 1 << 20, link{}}}
	seen := map[int]bool{start: true}
	for k := 0; k < len(steps); k++ {
		for _, weight := range [3]int{4, 2, 1} {
			for _, ln := range s.links[steps[k].node] {
				if s.d.Wires[ln.wire].Weight/weight != 1 && !(weight == 4 && s.d.Wires[ln.wire].Weight >= 4) || seen[ln.to] {
					continue
				}
				w := min(steps[k].weight, s.d.Wires[ln.wire].Weight)
				if s.isEnd(ln.to, rails, false) {
					if k == 0 {
						continue
					}
					line := lineage{from: start, to: ln.to, weight: w}
					for b := k; b > 0; b = steps[b].back {
						line.nodes = append(line.nodes, steps[b].node)
					}
					for i, j := 0, len(line.nodes)-1; i < j; i, j = i+1, j-1 {
						line.nodes[i], line.nodes[j] = line.nodes[j], line.nodes[i]
					}
					return line
				}
				if s.column[ln.to] >= 0 || s.isRail(ln.to) || s.role(ln.to) == Flag || s.role(ln.to) == Source || rails && s.role(ln.to) == Control {
					continue
				}
				seen[ln.to] = true
				steps = append(steps, step{ln.to, k, w, ln})
			}
		}
	}
	return lineage{}
}

// addColumn makes a line a column beside the column that it belongs to.
func (s *starter) addColumn(line lineage) {
	c := column{nodes: line.nodes, from: line.from, to: line.to, home: -1}
	for _, n := range line.nodes {
		if !s.isBar(n) && s.d.Items[n].Order > 0 {
			c.order = s.d.Items[n].Order
		}
	}
	if s.isRail(line.from) {
		c.from = -1
	} else {
		c.home = s.column[line.from]
	}
	if s.isRail(line.to) {
		c.to = -1
	} else if c.home < 0 || s.role(line.to) == Host {
		c.home = s.column[line.to]
	}
	c.left = s.isLeft(line)
	s.append(c)
}

// isLeft reports whether a line belongs left of its home: commands do, what is driven and
// what carries much current does not.
func (s *starter) isLeft(line lineage) bool {
	for _, n := range line.nodes {
		switch s.role(n) {
		case Control:
			return true
		case Companion:
			return false
		}
	}
	return line.weight < heavyWeight && !s.isRail(line.from)
}

func (s *starter) append(c column) {
	s.columns = append(s.columns, c)
	for _, n := range c.nodes {
		s.column[n] = len(s.columns) - 1
	}
}

// addLoose gives a column to the first node that hangs on what stands by one end, or, if
// there is none, to any that is left.
func (s *starter) addLoose() bool {
	pick, home := -1, -1
	for n := range s.links {
		if s.column[n] >= 0 || s.isRail(n) || s.role(n) == Flag {
			continue
		}
		if pick < 0 {
			pick = n
		}
		for _, ln := range s.links[n] {
			if s.column[ln.to] >= 0 {
				pick, home = n, s.column[ln.to]
				break
			}
		}
		if home >= 0 {
			break
		}
	}
	if pick < 0 {
		return false
	}
	c := column{nodes: []int{pick}, from: -1, to: -1, home: home, left: s.role(pick) == Control}
	for _, ln := range s.links[pick] {
		if s.column[ln.to] >= 0 {
			c.from = ln.to
			break
		}
	}
	s.append(c)
	return true
}
