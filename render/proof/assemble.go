package proof

import (
	"math"
	"sort"

	"github.com/lugwright/lugwright/render/ink"
)

// assemble makes one line of the strokes of a conductor, which may lie on top of each other
// (edge, colour, tracer) or follow each other (pieces of several colours).
func assemble(name string, strokes []stroke) Wire {
	w := Wire{Name: name}
	var level, upright []Run
	for _, s := range strokes {
		w.Width = max(w.Width, s.width)
		for _, run := range s.runs {
			for i := 1; i < len(run); i++ {
				a, b := run[i-1], run[i]
				switch {
				case near(a, b):
				case math.Abs(a.Y-b.Y) <= tolerance:
					level = append(level, Run{ink.At(min(a.X, b.X), a.Y), ink.At(max(a.X, b.X), a.Y)})
				case math.Abs(a.X-b.X) <= tolerance:
					upright = append(upright, Run{ink.At(a.X, min(a.Y, b.Y)), ink.At(a.X, max(a.Y, b.Y))})
				default:
					w.Slant = true
				}
			}
		}
	}
	w.Runs = append(merge(level), merge(upright)...)
	w.Ends, w.Bends = w.endsAndBends()
	return w
}

// merge joins runs that lie on one line and touch.
func merge(runs []Run) []Run {
	sort.Slice(runs, func(i, j int) bool {
		a, b := runs[i], runs[j]
		if a.Level() {
			if math.Abs(a.A.Y-b.A.Y) > tolerance {
				return a.A.Y < b.A.Y
			}
			return a.A.X < b.A.X
		}
		if math.Abs(a.A.X-b.A.X) > tolerance {
			return a.A.X < b.A.X
		}
		return a.A.Y < b.A.Y
	})
	var out []Run
	for _, r := range runs {
		if n := len(out); n > 0 && out[n-1].touches(r) {
			out[n-1].B = ink.At(max(out[n-1].B.X, r.B.X), max(out[n-1].B.Y, r.B.Y))
			continue
		}
		out = append(out, r)
	}
	return out
}

// touches reports whether r, which begins no earlier, continues o on one line.
func (o Run) touches(r Run) bool {
	if o.Level() {
		return math.Abs(o.A.Y-r.A.Y) <= tolerance && r.A.X <= o.B.X+tolerance
	}
	return math.Abs(o.A.X-r.A.X) <= tolerance && r.A.Y <= o.B.Y+tolerance
}

// holds reports whether a point lies on the run, its ends included.
func (o Run) holds(p ink.Point) bool {
	return p.X >= o.A.X-tolerance && p.X <= o.B.X+tolerance && p.Y >= o.A.Y-tolerance && p.Y <= o.B.Y+tolerance
}

// endsAndBends tells the free ends of the runs from those that meet another one.
func (w *Wire) endsAndBends() (ends, bends []ink.Point) {
	for i, r := range w.Runs {
		for _, p := range [2]ink.Point{r.A, r.B} {
			met, first := false, true
			for j, o := range w.Runs {
				if j != i && o.holds(p) {
					met = true
					first = first && j > i
				}
			}
			switch {
			case !met:
				ends = append(ends, p)
			case first:
				bends = append(bends, p)
			}
		}
	}
	return ends, bends
}

// holds reports whether a point lies on the wire.
func (w *Wire) holds(p ink.Point) bool {
	for _, r := range w.Runs {
		if r.holds(p) {
			return true
		}
	}
	return false
}

// endsAt reports whether a free end of the wire lies at a point.
func (w *Wire) endsAt(p ink.Point) bool {
	for _, e := range w.Ends {
		if near(e, p) {
			return true
		}
	}
	return false
}
