package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// What a column keeps free beside its axis for labels, in units, and between two nodes.
const (
	labelRoom = 8
	stackGap  = 4
)

// strip is a column of nodes on the sheet: a tower, or a column of a field.
type strip struct {
	nodes []int
	wide  [2]float64 // what it needs left and right of its axis
	tower int        // index of the tower that it is; -1: part of a field
}

// strips lists the columns of all towers and fields from left to right.
func (s *starter) strips() (all []strip, total float64) {
	for i := range s.towers {
		t := &s.towers[i]
		for _, nodes := range s.columns(t.field[0]) {
			all = append(all, s.strip(nodes, -1))
		}
		all = append(all, s.strip(t.nodes, i))
		for _, nodes := range s.columns(t.field[1]) {
			all = append(all, s.strip(nodes, -1))
		}
	}
	for _, st := range all {
		total += st.wide[0] + st.wide[1]
	}
	return all, total
}

// Breadth is how wide a sheet should be, in units, to show a diagram of its height without
// crowding.
func Breadth(d *Diagram) float64 {
	s := newStarter(d)
	s.findTowers()
	s.fillFields()
	_, total := s.strips()
	return total + 4
}

// spread gives the strips their places over the whole breadth of the sheet, and their
// nodes heights.
func (s *starter) spread() {
	strips, total := s.strips()
	scale := min(1, (float64(s.d.Width)-4)/total)
	play := max(0, (float64(s.d.Width)-4-total)/float64(max(1, len(strips))))
	x := 2.0
	axis := make([]float64, len(strips))
	for i, st := range strips {
		axis[i] = x + scale*st.wide[0] + play/2
		x += scale*(st.wide[0]+st.wide[1]) + play
	}
	// what hangs on others comes after them
	for _, hanging := range [2]bool{false, true} {
		for i, st := range strips {
			if hangs := st.tower >= 0 && (s.towers[st.tower].above >= 0 || s.towers[st.tower].below >= 0); hangs == hanging {
				s.stack(st, axis[i])
			}
		}
	}
}

// columns breaks a field into columns that fit the height of the sheet.
func (s *starter) columns(nodes []int) [][]int {
	room := float64(s.d.Height - 2*RailInset - 4)
	var cols [][]int
	need := room + 1
	for _, n := range nodes {
		h := s.height(n) + stackGap
		if need+h > room {
			cols = append(cols, nil)
			need = 0
		}
		cols[len(cols)-1] = append(cols[len(cols)-1], n)
		need += h
	}
	return cols
}

// strip measures a column.
func (s *starter) strip(nodes []int, tower int) strip {
	st := strip{nodes: nodes, tower: tower, wide: [2]float64{1, labelRoom}}
	for _, n := range nodes {
		if s.isBar(n) {
			continue
		}
		axis, box := float64(s.axis(n)), s.reach(n)
		st.wide[0] = max(st.wide[0], axis-box.X0+1)
		st.wide[1] = max(st.wide[1], box.X1-axis+1)
	}
	return st
}

// reach is the hull of an item's body and words, relative to its origin.
func (s *starter) reach(n int) symbol.Box {
	at := s.l.Items[n].At
	s.l.Items[n].At = symbol.Cell{}
	box := s.l.Reach(s.d, n)
	s.l.Items[n].At = at
	return box
}

// axis is the column of an item's first upper pin, else of its first lower one, else of
// its middle.
func (s *starter) axis(n int) int {
	form := &s.d.Items[n].Forms[s.l.Items[n].Form]
	for _, side := range [2]symbol.Side{symbol.Top, symbol.Bottom} {
		for _, p := range form.Pins {
			if p.Side == side {
				return p.At.X
			}
		}
	}
	h := Hull(form.Body)
	return int(math.Round((h.X0 + h.X1) / 2))
}

// stack puts the nodes of a strip above each other, evenly between its limits; what sits on
// a shelf goes close under its rail.
func (s *starter) stack(st strip, x float64) {
	lo, hi := s.limits(st)
	nodes := st.nodes
	if len(nodes) > 0 && !s.isBar(nodes[0]) && s.d.Items[nodes[0]].Shelf {
		y := float64(RailInset) + shelfDrop
		s.put(nodes[0], x, y)
		lo = y + s.height(nodes[0])
		nodes = nodes[1:]
	}
	need := 0.0
	for _, n := range nodes {
		need += s.height(n)
	}
	gap := max(0.5, (hi-lo-need)/float64(len(nodes)+1))
	y := lo + gap
	for _, n := range nodes {
		s.put(n, x, y)
		y += s.height(n) + gap
	}
}

// shelfDrop is how far below its rail a shelf lies, in units.
const shelfDrop = 2

// limits returns between which heights a strip stands.
func (s *starter) limits(st strip) (lo, hi float64) {
	lo, hi = RailInset+1, float64(s.d.Height-RailInset-1)
	if st.tower < 0 {
		return lo, hi
	}
	if a := s.towers[st.tower].above; a >= 0 {
		lo = min(hi-8, float64(s.l.Bars[a-len(s.d.Items)].At.Y)+1)
	}
	if b := s.towers[st.tower].below; b >= 0 {
		hi = max(lo+8, float64(s.l.Bars[b-len(s.d.Items)].At.Y)-1)
	}
	return lo, hi
}

// height is what a node needs of a strip.
func (s *starter) height(n int) float64 {
	if s.isBar(n) {
		return 1
	}
	e := s.reach(n)
	return e.Y1 - e.Y0
}

// put stands a node on an axis with its upper edge at y.
func (s *starter) put(n int, x, y float64) {
	if s.isBar(n) {
		b := n - len(s.d.Items)
		long := max(2, len(s.links[n])-1)
		s.l.Bars[b] = Span{At: symbol.Cell{X: min(max(1, int(x)-long/2), s.d.Width-long-1), Y: int(y)}, Length: long}
		return
	}
	if s.d.Items[n].Shelf {
		y = RailInset + shelfDrop
	}
	s.l.Items[n].At = symbol.Cell{X: int(math.Round(x)) - s.axis(n), Y: int(math.Round(y - s.reach(n).Y0))}
}
