package arrange

// findTowers finds the lines of current between an upper and a lower rail, the heaviest
// first, and then those that hang between a splice and a rail.
func (s *starter) findTowers() {
	for i := range s.d.Items {
		if s.d.Items[i].Role == Source {
			s.raise(tower{nodes: []int{i}, above: -1, below: -1, order: -1000 + i, after: -1})
		}
	}
	for s.addTower(false) {
	}
	for s.addTower(true) {
	}
}

// lineage is a line of nodes between two ends.
type lineage struct {
	from, to int
	nodes    []int
}

// better prefers short lines.
func (a *lineage) better(b *lineage) bool {
	return len(a.nodes) > 0 && (len(b.nodes) == 0 || len(a.nodes) < len(b.nodes))
}

// addTower makes the best line that is left a tower: the traction cables first, then the
// other thick wires, then any. Lines begin at upper rails and end at lower ones; with
// splices, one of the two ends may be a free bar that stands already.
func (s *starter) addTower(splices bool) bool {
	for _, least := range [3]int{heavyWeight, 2, 1} {
		best := lineage{}
		for n := range s.links {
			if s.row(n) == TopRow || splices && s.isPlacedSplice(n) {
				if line := s.lineFrom(n, splices && s.row(n) == TopRow, least); line.better(&best) {
					best = line
				}
			}
		}
		if len(best.nodes) > 0 {
			s.raiseLine(best)
			return true
		}
	}
	return false
}

// raiseLine makes a line a tower, beside the splice from which it hangs.
func (s *starter) raiseLine(line lineage) {
	t := tower{nodes: line.nodes, above: -1, below: -1, after: -1}
	if s.row(line.from) == Free {
		t.above, t.after = line.from, s.tower[line.from]
	}
	if s.row(line.to) == Free {
		t.below, t.after = line.to, s.tower[line.to]
	}
	s.raise(t)
}

func (s *starter) isPlacedSplice(n int) bool {
	return s.isBar(n) && s.row(n) == Free && s.tower[n] >= 0
}

// lineFrom finds the shortest line from a node to a lower rail, or to a placed splice,
// through nodes without a tower, over wires of at least a weight.
func (s *starter) lineFrom(start int, toSplice bool, least int) lineage {
	type step struct{ node, back int }
	steps := []step{{start, -1}}
	seen := map[int]bool{start: true}
	for k := 0; k < len(steps); k++ {
		for _, ln := range s.byWeight(steps[k].node) {
			if s.d.Wires[ln.wire].Weight < least {
				continue
			}
			ends := s.row(ln.to) == BottomRow || toSplice && s.isPlacedSplice(ln.to)
			if ends && k > 0 {
				line := lineage{from: start, to: ln.to}
				for b := k; b > 0; b = steps[b].back {
					line.nodes = append([]int{steps[b].node}, line.nodes...)
				}
				return line
			}
			if !ends && !seen[ln.to] && s.stands(ln.to) {
				seen[ln.to] = true
				steps = append(steps, step{ln.to, k})
			}
		}
	}
	return lineage{}
}

// stands reports whether a node may become part of a tower.
func (s *starter) stands(n int) bool {
	r := s.role(n)
	return s.tower[n] < 0 && s.row(n) == Free && r != Flag && r != Source && r != Control && r != Companion
}

// byWeight lists the links of a node, the heaviest wires first.
func (s *starter) byWeight(n int) []link {
	var all []link
	for _, weight := range [3]int{heavyWeight, 2, 1} {
		for _, ln := range s.links[n] {
			if w := s.d.Wires[ln.wire].Weight; w >= weight && (weight == heavyWeight || w < 2*weight) {
				all = append(all, ln)
			}
		}
	}
	return all
}

// raise adds a tower.
func (s *starter) raise(t tower) {
	for _, n := range t.nodes {
		s.tower[n] = len(s.towers)
		if !s.isBar(n) {
			t.section = s.d.Items[n].Section
			if o := s.d.Items[n].Order; o > 0 {
				t.order = o
			}
		}
	}
	s.towers = append(s.towers, t)
}
