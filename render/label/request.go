package label

import (
	"sort"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// request is words that want a place.
type request struct {
	kind  Kind
	index int
	end   int
	words []arrange.Words
	spots []spot // free of all that stands, cheapest first
	taken int    // index of the chosen spot; -1: none
}

// gather makes the requests of a diagram with their spots.
func gather(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, f *field) []*request {
	var rs []*request
	for i := range d.Wires {
		w := &d.Wires[i]
		if len(w.Labels) > 0 && paths[i] != nil {
			rs = append(rs, wireRequest(i, w, paths[i], f))
		}
		for e, m := range w.Marks {
			if !m.Empty() && paths[i] != nil {
				rs = append(rs, markRequest(i, e, w, paths[i], f))
			}
		}
	}
	for i := range d.Bars {
		if len(d.Bars[i].Captions) > 0 {
			rs = append(rs, barRequest(i, &d.Bars[i], l.Bars[i], f))
		}
	}
	for i := range d.Frames {
		if !d.Frames[i].Caption.Empty() {
			rs = append(rs, frameRequest(i, d.Frames[i].Caption, l.FrameBox(d, i), f))
		}
	}
	for _, r := range rs {
		r.taken = -1
		sort.SliceStable(r.spots, func(a, b int) bool { return r.spots[a].cost < r.spots[b].cost })
	}
	return rs
}

func (r *request) offer(f *field, s spot, own edge) {
	if f.free(s.box, own) {
		r.spots = append(r.spots, s)
	}
}

func wireRequest(i int, w *arrange.Wire, path []symbol.Cell, f *field) *request {
	r := &request{kind: OfWire, index: i, words: w.Labels}
	for _, run := range runs(path, w.Thick) {
		spotsAlong(run, w.Labels, func(s spot, own edge) { r.offer(f, s, own) })
	}
	return r
}

// markRequest offers places on both sides of a wire just before its end.
func markRequest(i, end int, w *arrange.Wire, path []symbol.Cell, f *field) *request {
	m := w.Marks[end]
	r := &request{kind: OfMark, index: i, end: end, words: []arrange.Words{m}}
	at, next := path[0], path[1]
	if end == 1 {
		at, next = path[len(path)-1], path[len(path)-2]
	}
	gap := gapOwn + w.Thick/2
	x, y := float64(at.X), float64(at.Y)
	for k, off := range [6]float64{0.3, 0.8, 1.4, 2, 2.8, 3.6} {
		cost := 2 * float64(k)
		if at.Y == next.Y {
			x0 := x + off
			if next.X < at.X {
				x0 = x - off - m.Width
			}
			r.mark(f, x0, y-gap-m.Height, cost, onBottom)
			r.mark(f, x0, y+gap, cost+1, onTop)
			continue
		}
		y0 := y + off
		if next.Y < at.Y {
			y0 = y - off - m.Height
		}
		r.mark(f, x+gap, y0, cost, onLeft)
		r.mark(f, x-gap-m.Width, y0, cost+1, onRight)
	}
	if w.Ends[end].IsBar() && at.X == next.X {
		// across the bar from the wire
		y0 := y + gapDot + 0.1
		if next.Y > at.Y {
			y0 = y - gapDot - 0.1 - m.Height
		}
		r.mark(f, x-m.Width/2, y0, 4, noEdge)
	}
	return r
}

// mark offers one place for a mark.
func (r *request) mark(f *field, x, y, cost float64, own edge) {
	m := r.words[0]
	r.offer(f, spot{box: symbol.Box{X0: x, X1: x + m.Width, Y0: y, Y1: y + m.Height}, at: ink.Point{X: x, Y: y + capital}, cost: cost}, own)
}

// barRequest offers places along and at the ends of a bar.
func barRequest(i int, b *arrange.Bar, s arrange.Span, f *field) *request {
	r := &request{kind: OfBar, index: i, words: b.Captions}
	spotsAlong(run{s.At, s.End(), b.Width()}, r.words, func(s spot, own edge) {
		if !s.turned {
			r.offer(f, s, own)
		}
	})
	for k, w := range b.Captions {
		for _, s := range spotsBeyond(k, w, s) {
			r.offer(f, s, noEdge)
		}
	}
	return r
}

// spotsBeyond lists places at the two ends of a bar.
func spotsBeyond(k int, w arrange.Words, s arrange.Span) []spot {
	e := s.End()
	x0, y0, x1, y1 := float64(s.At.X), float64(s.At.Y), float64(e.X), float64(e.Y)
	at := func(x, y float64, anchor ink.Anchor, cost float64) spot {
		box := symbol.Box{X0: x, X1: x + w.Width, Y0: y, Y1: y + w.Height}
		p := ink.Point{X: x, Y: y + capital}
		switch anchor {
		case ink.Middle:
			p.X += w.Width / 2
		case ink.End:
			p.X += w.Width
		}
		return spot{box: box, at: p, anchor: anchor, words: k, cost: cost + costPerLine*float64(len(w.Lines)-1)}
	}
	const beyond = gapDot + 0.3
	if s.Upright {
		return []spot{
			at(x0-w.Width/2, y0-w.Height-beyond, ink.Middle, 1), at(x1-w.Width/2, y1+beyond, ink.Middle, 3),
			at(x0+gapLine, y0-w.Height-beyond, ink.Start, 2), at(x0-w.Width-gapLine, y0-w.Height-beyond, ink.End, 2),
		}
	}
	return []spot{
		at(x0-w.Width-beyond, y0-w.Height/2, ink.End, 3), at(x1+beyond, y1-w.Height/2, ink.Start, 3),
		at(x0-w.Width-beyond, y0-w.Height-gapLine, ink.End, 4), at(x1+beyond, y1-w.Height-gapLine, ink.Start, 4),
	}
}

// frameRequest offers places inside and outside along the edges of a frame.
func frameRequest(i int, w arrange.Words, b symbol.Box, f *field) *request {
	r := &request{kind: OfFrame, index: i, words: []arrange.Words{w}}
	for k, y0 := range []float64{b.Y0 - gapLine - w.Height, b.Y1 + gapLine, b.Y0 + gapLine, b.Y1 - gapLine - w.Height} {
		for off := 0.0; off+w.Width <= b.X1-b.X0; off += 1 {
			for m, x0 := range []float64{b.X0 + off, b.X1 - off - w.Width} {
				box := symbol.Box{X0: x0, X1: x0 + w.Width, Y0: y0, Y1: y0 + w.Height}
				anchor, at := ink.Start, ink.Point{X: x0, Y: y0 + capital}
				if m == 1 {
					anchor, at.X = ink.End, x0+w.Width
				}
				r.offer(f, spot{box: box, at: at, anchor: anchor, cost: float64(k) + off*costCentre + float64(m)*0.05}, noEdge)
			}
		}
	}
	return r
}
