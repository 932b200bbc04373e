package label

import (
	"math"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// spot is a place where the words of a request would be right.
type spot struct {
	box    symbol.Box
	at     ink.Point
	anchor ink.Anchor
	turned bool
	words  int
	cost   float64
	leader []ink.Point
}

// run is a straight stretch of a wire.
type run struct {
	a, b  symbol.Cell // a is the left or upper end
	thick float64
}

func (r run) level() bool { return r.a.Y == r.b.Y }

// runs returns the stretches of a path.
func runs(path []symbol.Cell, thick float64) []run {
	var rs []run
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		if a.X > b.X || a.Y > b.Y {
			a, b = b, a
		}
		rs = append(rs, run{a, b, thick})
	}
	return rs
}

// spotsAlong lists where words may stand along a run, unchecked, best first for each
// wording and side.
func spotsAlong(r run, all []arrange.Words, visit func(s spot, own edge)) {
	for k, w := range all {
		if r.level() {
			alongLevel(r, k, w, visit)
		} else {
			alongUpright(r, k, w, visit)
		}
	}
}

func alongLevel(r run, k int, w arrange.Words, visit func(spot, edge)) {
	base := costPerLine * float64(len(w.Lines)-1)
	gap := gapOwn + r.thick/2
	y := float64(r.a.Y)
	centres(float64(r.a.X), float64(r.b.X), w.Width, func(x, cost float64) {
		box := symbol.Box{X0: x - w.Width/2, X1: x + w.Width/2}
		box.Y0, box.Y1 = y-gap-w.Height, y-gap
		visit(spot{box: box, at: ink.Point{X: x, Y: box.Y0 + capital}, anchor: ink.Middle, words: k, cost: base + cost}, onBottom)
		box.Y0, box.Y1 = y+gap, y+gap+w.Height
		visit(spot{box: box, at: ink.Point{X: x, Y: box.Y0 + capital}, anchor: ink.Middle, words: k, cost: base + cost + costBelow}, onTop)
	})
}

func alongUpright(r run, k int, w arrange.Words, visit func(spot, edge)) {
	base := costPerLine*math.Abs(float64(len(w.Lines)-2)) + costBeside
	gap := gapOwn + r.thick/2
	x := float64(r.a.X)
	centres(float64(r.a.Y), float64(r.b.Y), w.Height, func(y, cost float64) {
		box := symbol.Box{X0: x + gap, X1: x + gap + w.Width, Y0: y - w.Height/2, Y1: y + w.Height/2}
		visit(spot{box: box, at: ink.Point{X: box.X0, Y: box.Y0 + capital}, anchor: ink.Start, words: k, cost: base + cost}, onLeft)
		box.X0, box.X1 = x-gap-w.Width, x-gap
		visit(spot{box: box, at: ink.Point{X: box.X1, Y: box.Y0 + capital}, anchor: ink.End, words: k, cost: base + cost + costLeft}, onRight)
	})
	if len(w.Lines) > 1 {
		return
	}
	centres(float64(r.a.Y), float64(r.b.Y), w.Width, func(y, cost float64) {
		box := symbol.Box{X0: x - gap - w.Height, X1: x - gap, Y0: y - w.Width/2, Y1: y + w.Width/2}
		visit(spot{box: box, at: ink.Point{X: box.X0 + capital, Y: y}, anchor: ink.Middle, turned: true, words: k, cost: costTurned + cost}, onRight)
	})
}

// centres visits the places for the middle of something of a size along a run, from the
// middle outwards. What is a little longer than the run may overhang it evenly.
func centres(lo, hi, size float64, visit func(at, cost float64)) {
	mid := (lo + hi) / 2
	play := (hi-lo-size)/2 - endMargin
	if play < 0 {
		if over := -play; over <= size*0.3 {
			visit(mid, costOverrun+over)
		}
		return
	}
	visit(mid, 0)
	step := max(slide, play/mostSlides)
	for off := step; off <= play+0.01; off += step {
		visit(mid-off, costCentre*off)
		visit(mid+off, costCentre*off)
	}
}
