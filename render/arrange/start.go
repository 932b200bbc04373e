package arrange

import (
	"sort"

	"github.com/lugwright/lugwright/render/symbol"
)

// Rows of the rails, in units from the upper and lower edge.
const (
	RailInset = 3
	rowStep   = 3 // between two rows of rails on one side
)

// Start makes a first layout from what the parts are to each other: the source at the
// left; what stands in the line of current from an upper to a lower rail as a column, each
// box the heart of one; what commands a box left of it, what it drives right of it.
func Start(d *Diagram) *Layout {
	s := newStarter(d)
	s.layRails()
	s.findColumns()
	s.orderColumns()
	s.spreadColumns()
	s.hangFlags()
	for i := range d.Items {
		s.l.Pull(d, i)
	}
	return s.l
}

// starter is a first layout under way.
type starter struct {
	d       *Diagram
	l       *Layout
	links   [][]link // of each node: items first, then bars
	column  []int    // of each node; -1: none yet
	columns []column
}

// link is a wire seen from one of its ends.
type link struct {
	wire, to int // node at the other end
	pin, far int // pins at this and the other end
}

// column is a set of nodes that stand above each other.
type column struct {
	nodes []int // from top to bottom
	from  int   // node above the first one; -1: a rail
	to    int   // node below the last one; -1: a rail
	home  int   // column beside which it belongs; -1: none
	left  bool  // left of home
	order int   // wanted place among the columns that have one; 0: none
	x     float64
	wide  [2]float64 // what it needs left and right of its axis
}

func newStarter(d *Diagram) *starter {
	s := &starter{d: d, l: &Layout{Items: make([]Place, len(d.Items)), Bars: make([]Span, len(d.Bars))}}
	n := len(d.Items) + len(d.Bars)
	s.links, s.column = make([][]link, n), make([]int, n)
	for i := range s.column {
		s.column[i] = -1
	}
	for w := range d.Wires {
		e := d.Wires[w].Ends
		a, b := s.node(e[0]), s.node(e[1])
		s.links[a] = append(s.links[a], link{w, b, e[0].Pin, e[1].Pin})
		s.links[b] = append(s.links[b], link{w, a, e[1].Pin, e[0].Pin})
	}
	return s
}

// node numbers items and bars in one row.
func (s *starter) node(t Terminal) int {
	if t.IsBar() {
		return len(s.d.Items) + t.Pin
	}
	return t.Item
}

func (s *starter) isRail(node int) bool {
	return node >= len(s.d.Items) && s.d.Bars[node-len(s.d.Items)].Row != Free
}

func (s *starter) isBar(node int) bool { return node >= len(s.d.Items) }

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

// orderColumns brings the columns into the order in which they stand from left to right:
// those that have a wanted order by it, the others beside their home.
func (s *starter) orderColumns() {
	var free []int
	beside := make([][2][]int, len(s.columns)) // left and right neighbours of each column
	for i := range s.columns {
		c := &s.columns[i]
		switch {
		case c.home < 0:
			free = append(free, i)
		case c.left:
			beside[c.home][0] = append(beside[c.home][0], i)
		default:
			beside[c.home][1] = append(beside[c.home][1], i)
		}
	}
	sort.SliceStable(free, func(a, b int) bool { return s.columns[free[a]].order < s.columns[free[b]].order })
	var order []column
	place := make([]int, len(s.columns))
	var visit func(i int)
	visit = func(i int) {
		for k := len(beside[i][0]) - 1; k >= 0; k-- {
			visit(beside[i][0][k])
		}
		place[i] = len(order)
		order = append(order, s.columns[i])
		for _, k := range beside[i][1] {
			visit(k)
		}
	}
	for _, i := range free {
		visit(i)
	}
	for i := range order {
		if order[i].home >= 0 {
			order[i].home = place[order[i].home]
		}
		for _, n := range order[i].nodes {
			s.column[n] = i
		}
	}
	s.columns = order
}

// hangFlags puts each flag straight before the pin that it hangs on.
func (s *starter) hangFlags() {
	for i := range s.d.Items {
		if s.d.Items[i].Role != Flag || len(s.links[i]) == 0 {
			continue
		}
		to := s.links[i][0]
		if s.isBar(to.to) {
			s.flagOnBar(i, to.to-len(s.d.Items))
			continue
		}
		at, side := s.l.Pin(s.d, to.to, to.far)
		s.flagOnPin(i, at, side)
	}
}

// flagReach is the length of the wire to a flag, in units.
const flagReach = 3

// flagOnPin turns a flag so that it looks away from the pin, and puts it there.
func (s *starter) flagOnPin(i int, at symbol.Cell, side symbol.Side) {
	want := facing(side)
	for f := range s.d.Items[i].Forms {
		if s.d.Items[i].Forms[f].Pins[0].Side == want {
			s.l.Items[i].Form = f
			break
		}
	}
	pin := s.d.Items[i].Forms[s.l.Items[i].Form].Pins[0].At
	s.l.Items[i].At = symbol.Cell{X: at.X + flagReach*sideX[side] - pin.X, Y: at.Y + flagReach*sideY[side] - pin.Y}
}

// flagOnBar puts a flag beside a bar, on a free column of the sheet's right end.
func (s *starter) flagOnBar(i, b int) {
	bar := s.l.Bars[b]
	at, side := bar.End(), symbol.Right
	switch s.d.Bars[b].Row {
	case TopRow:
		side = symbol.Bottom
	case BottomRow:
		side = symbol.Top
	}
	if s.d.Bars[b].Row != Free {
		at.X = bar.At.X + bar.Length*(i+1)/(len(s.d.Items)+1)
	}
	s.flagOnPin(i, at, side)
}

func facing(side symbol.Side) symbol.Side {
	switch side {
	case symbol.Left:
		return symbol.Right
	case symbol.Right:
		return symbol.Left
	case symbol.Top:
		return symbol.Bottom
	}
	return symbol.Top
}
