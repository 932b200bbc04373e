package arrange

import "github.com/lugwright/lugwright/render/symbol"

// keepRoom reserves a box for the label of a wire beside the longest run that has room.
func (p *plan) keepRoom(w int) {
	v := &p.ways[w]
	v.label, v.missing = symbol.Box{}, false
	labels := p.d.Wires[w].Labels
	if len(labels) == 0 {
		return
	}
	for _, i := range longest(v) {
		a, b := ordered(v.corners[i-1], v.corners[i])
		for _, words := range labels {
			if box, ok := p.roomAlong(a, b, words); ok {
				v.label = box
				return
			}
		}
	}
	v.missing = true
}

// longest lists the runs of a way by their end corner, the longest first.
func longest(v *way) []int {
	var order [5]int
	n := 0
	for i := 1; i < v.n; i++ {
		order[n] = i
		n++
		for k := n - 1; k > 0 && v.length(order[k]) > v.length(order[k-1]); k-- {
			order[k], order[k-1] = order[k-1], order[k]
		}
	}
	return order[:n]
}

func (w *way) length(i int) int {
	a, b := w.corners[i-1], w.corners[i]
	return abs(a.X-b.X) + abs(a.Y-b.Y)
}

// gap between a wire and its label, in units.
const gap = 0.35

// roomAlong looks for room for words along a run: its middle first, then towards the ends.
func (p *plan) roomAlong(a, b symbol.Cell, words Words) (symbol.Box, bool) {
	if a.Y == b.Y {
		play := (float64(b.X-a.X) - words.Width) / 2
		if play < 0 {
			return symbol.Box{}, false
		}
		mid := float64(a.X+b.X) / 2
		return p.firstRoom(play, func(off float64) [2]symbol.Box {
			x, y := mid+off-words.Width/2, float64(a.Y)
			return [2]symbol.Box{
				{X0: x, X1: x + words.Width, Y0: y - gap - words.Height, Y1: y - gap},
				{X0: x, X1: x + words.Width, Y0: y + gap, Y1: y + gap + words.Height},
			}
		})
	}
	play := (float64(b.Y-a.Y) - words.Height) / 2
	if play < 0 {
		return symbol.Box{}, false
	}
	mid := float64(a.Y+b.Y) / 2
	return p.firstRoom(play, func(off float64) [2]symbol.Box {
		x, y := float64(a.X), mid+off-words.Height/2
		return [2]symbol.Box{
			{X0: x + gap, X1: x + gap + words.Width, Y0: y, Y1: y + words.Height},
			{X0: x - gap - words.Width, X1: x - gap, Y0: y, Y1: y + words.Height},
		}
	})
}

// firstRoom returns the first free box of a few offsets.
func (p *plan) firstRoom(play float64, boxes func(off float64) [2]symbol.Box) (symbol.Box, bool) {
	for _, off := range [5]float64{0, -play / 2, play / 2, -play, play} {
		for _, b := range boxes(off) {
			if p.isFree(b) {
				return b, true
			}
		}
		if play < 1 {
			break
		}
	}
	return symbol.Box{}, false
}

// isFree reports whether nothing covers a box.
func (p *plan) isFree(b symbol.Box) bool {
	if b.X0 < 0 || b.Y0 < 0 || b.X1 > float64(p.d.Width) || b.Y1 > float64(p.d.Height) {
		return false
	}
	x0, x1, y0, y1 := p.cells(Grown(b, 0.2))
	for y := y0; y <= y1; y++ {
		for q := y*p.w + x0; q <= y*p.w+x1; q++ {
			if p.body[q]|p.text[q]|p.words[q]|p.metal[q]|p.run[0][q]|p.run[1][q] != 0 {
				return false
			}
		}
	}
	return true
}
