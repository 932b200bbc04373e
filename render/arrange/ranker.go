package arrange

import "sort"

// Ranker orders nodes that no rail holds. Package rank has one.
type Ranker interface {
	// Rank gives each of n nodes its layer in the direction of the edges, and its place
	// within the layer, both from 0.
	Rank(n int, edges [][2]int) (layer, place []int, err error)
}

// orderFields brings the nodes of each field into the order in which they are fed. Among
// those that are fed alike the ranker decides, so that their wires need not cross; without
// one, or where it fails, they keep the order of the diagram.
func (s *starter) orderFields() {
	n := len(s.links)
	fed := make([]int, n)
	for i := range fed {
		fed[i] = s.fed(i)
	}
	layer, place := s.rank(fed)
	for i := range s.towers {
		for _, f := range s.towers[i].field {
			sort.SliceStable(f, func(a, b int) bool {
				x, y := f[a], f[b]
				switch {
				case fed[x] != fed[y]:
					return fed[x] < fed[y]
				case layer[x] != layer[y]:
					return layer[x] < layer[y]
				}
				return place[x] < place[y]
			})
		}
	}
}

// rank asks the ranker for all nodes but the rails, each wire directed away from the feed.
// Without an answer all ranks are alike.
func (s *starter) rank(fed []int) (layer, place []int) {
	none := make([]int, len(fed))
	if s.d.Ranker == nil {
		return none, none
	}
	var edges [][2]int
	for w := range s.d.Wires {
		a, b := s.node(s.d.Wires[w].Ends[0]), s.node(s.d.Wires[w].Ends[1])
		if s.row(a) != Free || s.row(b) != Free {
			continue
		}
		if fed[b] < fed[a] {
			a, b = b, a
		}
		edges = append(edges, [2]int{a, b})
	}
	layer, place, err := s.d.Ranker.Rank(len(fed), edges)
	if err != nil || len(layer) != len(fed) || len(place) != len(fed) {
		return none, none
	}
	return layer, place
}
