package settle

import "github.com/lugwright/lugwright/wiring"

// switchOhms is a closed switch whose file says nothing else.
const switchOhms = 0.005

// switched is a switch. Each pair of nodes that any position joins is a branch.
type switched struct {
	unit
	control int32
	ohms    float64
	closed  map[string][]int32 // by position: branches, counted from first
}

func newSwitch(e *wiring.Switch, c *compiler) model {
	w := &switched{ohms: orElse(float64(e.Ohms), switchOhms), control: c.control(e.Control)}
	w.closed = make(map[string][]int32, len(e.Closes))
	var ways [][2]wiring.NodeID
	seen := map[[2]wiring.NodeID]int32{}
	for _, position := range sortedKeys(e.Closes) {
		for _, group := range e.Closes[position] {
			for _, pair := range star(group) {
				way, ok := seen[pair]
				if !ok {
					way = int32(len(ways))
					seen[pair] = way
					ways = append(ways, pair)
				}
				w.closed[position] = append(w.closed[position], way)
			}
		}
	}
	branches := make([]int32, len(ways))
	for i, pair := range ways {
		branches[i] = c.branch(pair[0], pair[1])
	}
	w.unit = c.unit(e, branches...)
	return w
}

// star pairs the first of a group with each other one.
func star(group []wiring.NodeID) [][2]wiring.NodeID {
	var pairs [][2]wiring.NodeID
	for i := 1; i < len(group); i++ {
		pairs = append(pairs, [2]wiring.NodeID{group[0], group[i]})
	}
	return pairs
}

func (w *switched) behave(s *solving) {
	for i := range w.count {
		s.set(w.first+i, law{})
	}
	for _, way := range w.closed[s.positions[w.control]] {
		s.set(w.first+way, ohmic(w.ohms))
	}
}

// holds: at least one way is closed.
func (w *switched) holds(s *solving) bool { return len(w.closed[s.positions[w.control]]) > 0 }
