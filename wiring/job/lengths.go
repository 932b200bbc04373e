package job

import (
	"container/heap"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// reckonLength fills the length of the wire that is cut where nobody stated it: the way
// along the runs between the places of both ends, with slack, less the other pieces. It is
// an estimate, and marked so.
func (r *reading) reckonLength(w *draftWire) {
	cut := -1
	rest := quantity.Metre(0)
	for i, p := range w.wire.Pieces {
		switch {
		case p.Kind == wiring.CutPiece || p.Kind == wiring.CordPiece:
			cut = i
		case !p.Length.Known():
			return
		default:
			rest += p.Length.Metres()
		}
	}
	if cut < 0 || w.wire.Pieces[cut].Length.Known() {
		return
	}
	way, system, ok := r.way(w.wire.From.Terminal, w.wire.To.Terminal)
	if length := way + r.h.Assume.Slack - rest; ok && length > 0 {
		p := &w.wire.Pieces[cut]
		p.Length = estimate(length, system)
		p.Reckoned = true
	}
}

// estimate is a length that nobody wrote, in the units of the runs that it comes from.
func estimate(m quantity.Metre, s quantity.System) quantity.Amount {
	a := quantity.Computed(float64(m), quantity.Length)
	a.About = true
	if s == quantity.Inch {
		a.Text, a.Unit = m.In(s), "in"
	}
	return a
}

// way is the shortest way between the places of two terminals, and in which units its runs
// are written.
func (r *reading) way(a, b *wiring.Terminal) (quantity.Metre, quantity.System, bool) {
	if a == nil || b == nil {
		return 0, 0, false
	}
	from, to := r.place(a.Part.Place), r.place(b.Part.Place)
	if from == nil || to == nil {
		return 0, 0, false
	}
	w, ok := r.waysFrom(from)[to]
	return w.length, w.system, ok
}

// reach is a place that can be reached, and how far away it is.
type reach struct {
	place  *wiring.Place
	length quantity.Metre
	system quantity.System
}

// waysFrom finds the shortest ways from one place to all that runs join to it (Dijkstra
// 1959), and remembers them.
func (r *reading) waysFrom(start *wiring.Place) map[*wiring.Place]reach {
	if done, ok := r.ways[start]; ok {
		return done
	}
	done := map[*wiring.Place]reach{}
	open := &reaches{{place: start, system: r.runSystem()}}
	for open.Len() > 0 {
		here := heap.Pop(open).(reach)
		if _, ok := done[here.place]; ok {
			continue
		}
		done[here.place] = here
		for _, run := range r.runsAt[here.place] {
			next := run.To
			if next == here.place {
				next = run.From
			}
			heap.Push(open, reach{next, here.length + run.Length.Metres(), here.system})
		}
	}
	r.ways[start] = done
	return done
}

// runSystem is the system of units of the first run that has one.
func (r *reading) runSystem() quantity.System {
	for _, run := range r.h.Runs {
		if s := run.Length.System(); s != quantity.AsWritten {
			return s
		}
	}
	return quantity.Metric
}

// reaches is a heap of places by distance.
type reaches []reach

func (h reaches) Len() int { return len(h) }
func (h reaches) Less(i, j int) bool {
	if h[i].length != h[j].length {
		return h[i].length < h[j].length
	}
	return h[i].place.Name < h[j].place.Name
}
func (h reaches) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *reaches) Push(x any)   { *h = append(*h, x.(reach)) }
func (h *reaches) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
