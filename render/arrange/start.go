package arrange

import (
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// RailInset is how far the rails lie from the upper and lower edge, in units.
const RailInset = 3

// Start makes a first layout from what the parts are to each other. What stands in the
// line of current from an upper to a lower rail becomes a tower; what commands or feeds a
// tower stands in a field left of it, what it drives in a field right of it. The source
// stands at the left. Towers of a section stay together.
//
// The second result tells the items that stand in towers, or are driven by them: their
// places are good from the start, while those in the fields are only a beginning.
func Start(d *Diagram) (*Layout, []bool) {
	s := newStarter(d)
	s.layRails()
	s.findTowers()
	s.fillFields()
	s.orderTowers()
	s.spread()
	s.shareRows()
	s.hangFlags()
	for i := range d.Items {
		s.l.Pull(d, i)
	}
	firm := make([]bool, len(d.Items))
	for i := range s.towers {
		for _, n := range s.towers[i].nodes {
			if !s.isBar(n) {
				firm[n] = true
			}
		}
	}
	for i := range d.Items {
		firm[i] = firm[i] || d.Items[i].Role == Companion
	}
	return s.l, firm
}

// starter is a first layout under way. A node is an item, or a bar counted on from them.
type starter struct {
	d      *Diagram
	l      *Layout
	links  [][]link // of each node
	tower  []int    // of each node; -1: none yet
	far    []int    // hops of a field's node from its tower
	towers []tower
}

// link is a wire seen from one of its ends.
type link struct {
	wire, to int // node at the other end
	pin, far int // pins at this and the other end
}

// tower is a column of nodes with the fields beside it.
type tower struct {
	nodes   []int    // from top to bottom
	field   [2][]int // nodes left and right of it, the ones that feed it first
	above   int      // free bar or item from which it hangs; -1: a rail or nothing
	below   int      // and to which it leads
	section int
	order   int
	after   int // tower beside which it stands; -1: none
}

func newStarter(d *Diagram) *starter {
	s := &starter{d: d, l: &Layout{Items: make([]Place, len(d.Items)), Bars: make([]Span, len(d.Bars))}}
	n := len(d.Items) + len(d.Bars)
	s.links, s.tower, s.far = make([][]link, n), make([]int, n), make([]int, n)
	for i := range s.tower {
		s.tower[i] = -1
	}
	for w := range d.Wires {
		e := d.Wires[w].Ends
		a, b := s.node(e[0]), s.node(e[1])
		s.links[a] = append(s.links[a], link{w, b, e[0].Pin, e[1].Pin})
		s.links[b] = append(s.links[b], link{w, a, e[1].Pin, e[0].Pin})
	}
	return s
}

func (s *starter) node(t Terminal) int {
	if t.IsBar() {
		return len(s.d.Items) + t.Pin
	}
	return t.Item
}

func (s *starter) isBar(node int) bool { return node >= len(s.d.Items) }

func (s *starter) row(node int) Row {
	if s.isBar(node) {
		return s.d.Bars[node-len(s.d.Items)].Row
	}
	return Free
}

func (s *starter) role(node int) Role {
	if s.isBar(node) {
		return InChain
	}
	return s.d.Items[node].Role
}

// layRails puts the rails in their rows, each over the whole breadth: where it really
// begins and ends is known when the wires have landed.
func (s *starter) layRails() {
	for b := range s.d.Bars {
		switch s.d.Bars[b].Row {
		case TopRow:
			s.l.Bars[b] = Span{At: symbol.Cell{X: 1, Y: RailInset}, Length: s.d.Width - 2}
		case BottomRow:
			s.l.Bars[b] = Span{At: symbol.Cell{X: 1, Y: s.d.Height - RailInset}, Length: s.d.Width - 2}
		}
	}
}

// orderTowers brings the towers into the order in which they stand from left to right: by
// section and wanted order, each of those that belong beside another one after it.
func (s *starter) orderTowers() {
	var roots []int
	beside := make([][]int, len(s.towers))
	for i := range s.towers {
		if a := s.towers[i].after; a >= 0 {
			beside[a] = append(beside[a], i)
		} else {
			roots = append(roots, i)
		}
	}
	sort.SliceStable(roots, func(a, b int) bool {
		x, y := &s.towers[roots[a]], &s.towers[roots[b]]
		if x.section != y.section {
			return x.section < y.section
		}
		return x.order < y.order
	})
	var order []tower
	var visit func(i int)
	visit = func(i int) {
		order = append(order, s.towers[i])
		for _, k := range beside[i] {
			visit(k)
		}
	}
	for _, i := range roots {
		visit(i)
	}
	s.towers = order
	for i := range order {
		for _, n := range order[i].nodes {
			s.tower[n] = i
		}
	}
}
