package position

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// crossing says how current may cross an edge.
type crossing uint8

const (
	barred  crossing = iota
	passed           // like a conductor
	through          // through something that current should not come through
	driven           // through a supply that drives it
)

// crosses says how current may leave a node by an edge.
type crosses func(e *path.Edge, from wiring.NodeID) crossing

// spot is a node that the search for a circuit has come to; fed: through a supply.
type spot struct {
	node wiring.NodeID
	fed  bool
}

// circuit finds the way of the current that leaves something at node `from` and comes back
// to it at node `to`, through at least one supply. Of ways it takes one that comes through
// as little as possible that it had better not come through, and of those one of the fewest
// edges.
func (c *Cart) circuit(from, to wiring.NodeID, by crosses) (Way, bool) {
	s := newRoam(c, spot{from, false})
	for len(s.level) > 0 {
		for i := 0; i < len(s.level); i++ {
			at := s.level[i]
			if at == (spot{to, true}) {
				return s.way(at), true
			}
			s.leave(at, by)
		}
		s.level, s.next = s.next, nil
	}
	return Way{}, false
}

// roam is a search at work.
type roam struct {
	cart  *Cart
	came  [2][]arrival // by fed and node: how the search came there
	seen  [2][]uint8   // how the search has come to know of a spot
	level []spot       // to be left; it grows while it is worked off
	next  []spot       // the same, one more thing come through
}

// arrival is the edge that led to a spot, from one that was fed or not; nil at the begin.
type arrival struct {
	edge *path.Edge
	fed  bool
}

// How the search knows a spot: not at all, for the next level, for good.
const (
	unknown uint8 = iota
	later
	reached
)

func newRoam(c *Cart, begin spot) *roam {
	s := &roam{cart: c}
	for fed := range s.came {
		s.came[fed] = make([]arrival, len(c.Harness.Nodes))
		s.seen[fed] = make([]uint8, len(c.Harness.Nodes))
	}
	if begin.node >= 0 && int(begin.node) < len(c.Harness.Nodes) {
		s.seen[index(begin.fed)][begin.node] = reached
		s.level = append(s.level, begin)
	}
	return s
}

func index(fed bool) int {
	if fed {
		return 1
	}
	return 0
}

func (s *roam) leave(at spot, by crosses) {
	if s.seen[index(at.fed)][at.node] == later {
		s.seen[index(at.fed)][at.node] = reached
	}
	for _, e := range s.cart.Graph.At(at.node) {
		how := by(e, at.node)
		to := spot{e.Other(at.node), at.fed || how == driven}
		known := s.seen[index(to.fed)][to.node]
		switch {
		case how == barred || known == reached:
		case how == through && known == unknown:
			s.enter(to, arrival{e, at.fed}, later)
			s.next = append(s.next, to)
		case how != through:
			s.enter(to, arrival{e, at.fed}, reached)
			s.level = append(s.level, to)
		}
	}
}

func (s *roam) enter(to spot, by arrival, as uint8) {
	s.seen[index(to.fed)][to.node] = as
	s.came[index(to.fed)][to.node] = by
}

// way goes back over the edges that led to a spot. Its Feed begins behind the last supply,
// its Back ends before the first.
func (s *roam) way(at spot) Way {
	var steps []path.Step
	first, last := -1, -1 // supplies, counted from the end
	for {
		by := s.came[index(at.fed)][at.node]
		if by.edge == nil {
			break
		}
		if isSupply(by.edge) {
			first = len(steps)
			if last < 0 {
				last = first
			}
		}
		before := by.edge.Other(at.node)
		steps = append(steps, path.Step{Edge: by.edge, From: before, To: at.node})
		at = spot{before, by.fed}
	}
	slices.Reverse(steps)
	first, last = len(steps)-1-first, len(steps)-1-last
	return Way{
		Feed: s.cart.path(steps[last].To, steps[last+1:]),
		Back: s.cart.path(steps[0].From, steps[:first]),
	}
}

func isSupply(e *path.Edge) bool { return e.Sort&(path.Source|path.Charger|path.Output) != 0 }

// path is the path of some steps.
func (c *Cart) path(begin wiring.NodeID, steps []path.Step) path.Path {
	p, _ := c.Graph.From(path.Through{}, begin).To(begin)
	if len(steps) == 0 {
		return p
	}
	return p.Then(path.Path{Begin: begin, End: steps[len(steps)-1].To, Steps: steps})
}
