package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// island says which nodes hang together by some edges, whatever their direction: a first
// answer that costs next to nothing, and is final where it is no.
type island []int32

// islands joins the ends of the edges that may count and, of those that open and close, are
// closed.
func islands(g *path.Graph, may func(*path.Edge) bool, closed path.Setting) island {
	is := make(island, len(g.Harness.Nodes))
	for i := range is {
		is[i] = int32(i)
	}
	for _, e := range g.Edges() {
		if !may(e) || e.Sort&(path.Switch|moving) != 0 && !closed(e) {
			continue
		}
		is[is.root(e.A)] = is.root(e.B)
	}
	return is
}

func (is island) root(n wiring.NodeID) int32 {
	i := int32(n)
	for is[i] != i {
		is[i] = is[is[i]]
		i = is[i]
	}
	return i
}

func (is island) together(a, b wiring.NodeID) bool {
	return a >= 0 && b >= 0 && int(a) < len(is) && int(b) < len(is) && is.root(a) == is.root(b)
}
