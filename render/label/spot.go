package label

import (
	"math"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

type point = ink.Point

// spot is a place where the words of a request would be right.
type spot struct {
	box    symbol.Box
	at     point
	anchor ink.Anchor
	turned bool
	led    bool // stands apart, with a leader
	words  int
	cost   float64
	leader [2]point // from the words to the line
}

// run is a straight stretch of a wire.
type run struct {
	a, b  symbol.Cell // a is the left or upper end
	thick float64
}

func (r run) level() bool { return r.a.Y == r.b.Y }

func (r run) box() symbol.Box {
	return symbol.Box{X0: float64(r.a.X), Y0: float64(r.a.Y), X1: float64(r.b.X), Y1: float64(r.b.Y)}
}

// runOf returns the stretch between two points.
func runOf(a, b symbol.Cell, thick float64) run {
	if a.X > b.X || a.Y > b.Y {
		a, b = b, a
	}
	return run{a, b, thick}
}

// alongRun offers places along a run, for each wording on both sides.
func (r *request) alongRun(f *field, run run, turned bool) {
	for k := range r.words {
		if run.level() {
			r.alongLevel(f, run, k)
			continue
		}
		r.besideUpright(f, run, k)
		if turned && len(r.words[k].Lines) == 1 {
			r.turnedBeside(f, run, k)
		}
	}
}

func (r *request) alongLevel(f *field, run run, k int) {
	w := &r.words[k]
	base := costPerLine * float64(len(w.Lines)-1)
	gap := gapOwn + run.thick/2
	y := float64(run.a.Y)
	c := newCentres(float64(run.a.X), float64(run.b.X), w.Width)
	for above, below := 0, 0; c.next() && (above < enough || below < enough); {
		box := symbol.Box{X0: c.at - w.Width/2, X1: c.at + w.Width/2, Y0: y - gap - w.Height, Y1: y - gap}
		if above < enough && r.offer(f, spot{box: box, at: point{X: c.at, Y: box.Y0 + capital}, anchor: ink.Middle, words: k, cost: base + c.cost}, onBottom) {
			above++
		}
		box.Y0, box.Y1 = y+gap, y+gap+w.Height
		if below < enough && r.offer(f, spot{box: box, at: point{X: c.at, Y: box.Y0 + capital}, anchor: ink.Middle, words: k, cost: base + c.cost + costBelow}, onTop) {
			below++
		}
	}
}

func (r *request) besideUpright(f *field, run run, k int) {
	w := &r.words[k]
	base := costPerLine*math.Abs(float64(len(w.Lines)-2)) + costBeside
	gap := gapOwn + run.thick/2
	x := float64(run.a.X)
	c := newCentres(float64(run.a.Y), float64(run.b.Y), w.Height)
	for left, right := 0, 0; c.next() && (left < enough || right < enough); {
		box := symbol.Box{X0: x + gap, X1: x + gap + w.Width, Y0: c.at - w.Height/2, Y1: c.at + w.Height/2}
		if right < enough && r.offer(f, spot{box: box, at: point{X: box.X0, Y: box.Y0 + capital}, anchor: ink.Start, words: k, cost: base + c.cost}, onLeft) {
			right++
		}
		box.X0, box.X1 = x-gap-w.Width, x-gap
		if left < enough && r.offer(f, spot{box: box, at: point{X: box.X1, Y: box.Y0 + capital}, anchor: ink.End, words: k, cost: base + c.cost + costLeft}, onRight) {
			left++
		}
	}
}

// turnedBeside offers places for a line of words that reads upwards.
func (r *request) turnedBeside(f *field, run run, k int) {
	w := &r.words[k]
	gap := gapOwn + run.thick/2
	x := float64(run.a.X)
	c := newCentres(float64(run.a.Y), float64(run.b.Y), w.Width)
	for n := 0; c.next() && n < enough; {
		box := symbol.Box{X0: x - gap - w.Height, X1: x - gap, Y0: c.at - w.Width/2, Y1: c.at + w.Width/2}
		if r.offer(f, spot{box: box, at: point{X: box.X0 + capital, Y: c.at}, anchor: ink.Middle, turned: true, words: k, cost: costTurned + c.cost}, onRight) {
			n++
		}
	}
}

// enough free places of one wording on one side of a run are all that is looked for: more of
// them would be taken by none.
const enough = 5

// centres goes through the places for the middle of something along a run, from the middle
// outwards. What is a little longer than the run may overhang it evenly.
type centres struct {
	at, cost        float64
	mid, play, step float64
	k               int
}

func newCentres(lo, hi, size float64) centres {
	c := centres{mid: (lo + hi) / 2, play: (hi-lo-size)/2 - endMargin}
	if c.play < 0 {
		if over := -c.play; over <= size*mostOverhang {
			c.cost = costOverrun + over
		} else {
			c.k = -1
		}
		return c
	}
	c.step = max(slide, c.play/mostSlides)
	return c
}

// mostOverhang is how much of its size something may overhang its run at either end.
const mostOverhang = 0.3

// next goes to the next place and reports whether there is one.
func (c *centres) next() bool {
	switch {
	case c.k < 0:
		return false
	case c.k == 0:
		c.at = c.mid
	default:
		off := c.step * float64((c.k+1)/2)
		if c.step == 0 || off > c.play+0.01 {
			return false
		}
		c.at, c.cost = c.mid+off, costCentre*off
		if c.k%2 == 1 {
			c.at = c.mid - off
		}
	}
	c.k++
	return true
}
