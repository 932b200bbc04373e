package label

import (
	"slices"

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
	spots []spot       // free of all that stands, cheapest first; then those with a leader
	found int          // how many spots were found; those with a leader come after them
	taken int          // index of the chosen spot; -1: none
	stale bool         // the spots must be looked for again
	there bool         // it has something to stand beside
	zones []symbol.Box // where its spots can lie
}

// requestsOf lists the words of a diagram.
func requestsOf(d *arrange.Diagram) []*request {
	var rs []*request
	add := func(r request) {
		r.taken, r.stale = -1, true
		rs = append(rs, &r)
	}
	for i := range d.Wires {
		w := &d.Wires[i]
		if len(w.Labels) > 0 {
			add(request{kind: OfWire, index: i, words: w.Labels})
		}
		for e, m := range w.Marks {
			if !m.Empty() {
				add(request{kind: OfMark, index: i, end: e, words: []arrange.Words{m}})
			}
		}
	}
	for i := range d.Bars {
		if len(d.Bars[i].Captions) > 0 {
			add(request{kind: OfBar, index: i, words: d.Bars[i].Captions})
		}
	}
	for i := range d.Frames {
		if !d.Frames[i].Caption.Empty() {
			add(request{kind: OfFrame, index: i, words: []arrange.Words{d.Frames[i].Caption}})
		}
	}
	return rs
}

// find looks for the places of a request on a field.
func (r *request) find(d *arrange.Diagram, l *arrange.Layout, paths [][]symbol.Cell, f *field) {
	r.spots, r.zones, r.stale = r.spots[:0], r.zones[:0], false
	switch r.kind {
	case OfWire:
		r.alongPath(f, paths[r.index], d.Wires[r.index].Thick)
	case OfMark:
		r.atEnd(f, &d.Wires[r.index], paths[r.index])
	case OfBar:
		r.aboutBar(f, d.Bars[r.index].Width(), l.Bars[r.index])
	case OfFrame:
		r.aboutFrame(f, l.FrameBox(d, r.index))
	}
	slices.SortStableFunc(r.spots, func(a, b spot) int {
		switch {
		case a.cost < b.cost:
			return -1
		case a.cost > b.cost:
			return 1
		}
		return 0
	})
	r.found = len(r.spots)
}

// offer files a place if it is free, and reports whether it is.
func (r *request) offer(f *field, s spot, own edge) bool {
	if !f.free(s.box, own) {
		return false
	}
	r.spots = append(r.spots, s)
	return true
}

// zone notes where places can lie: round a box, as far as the words reach.
func (r *request) zone(b symbol.Box) {
	wide, high := 0.0, 0.0
	for _, w := range r.words {
		wide, high = max(wide, w.Width), max(high, w.Height)
	}
	b.X0, b.X1 = b.X0-wide-zoneMargin, b.X1+wide+zoneMargin
	b.Y0, b.Y1 = b.Y0-high-zoneMargin, b.Y1+high+zoneMargin
	r.zones = append(r.zones, b)
}

// zoneMargin is how far beyond that something can stand and still matter, in units: the
// distances that are kept, and what a turned label overhangs.
const zoneMargin = 3

func (r *request) alongPath(f *field, path []symbol.Cell, thick float64) {
	for i := 1; i < len(path); i++ {
		run := runOf(path[i-1], path[i], thick)
		r.zone(run.box())
		r.alongRun(f, run, true)
	}
}

// atEnd offers places for a mark on both sides of a wire just before its end.
func (r *request) atEnd(f *field, w *arrange.Wire, path []symbol.Cell) {
	m := r.words[0]
	at, next := path[0], path[1]
	if r.end == 1 {
		at, next = path[len(path)-1], path[len(path)-2]
	}
	gap := gapOwn + w.Thick/2
	x, y := float64(at.X), float64(at.Y)
	r.zone(symbol.Box{X0: x - farthestMark, X1: x + farthestMark, Y0: y - farthestMark, Y1: y + farthestMark})
	for k, off := range markOffsets {
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
	if w.Ends[r.end].IsBar() && at.X == next.X {
		// across the bar from the wire
		y0 := y + gapDot + 0.1
		if next.Y > at.Y {
			y0 = y - gapDot - 0.1 - m.Height
		}
		r.mark(f, x-m.Width/2, y0, 4, noEdge)
	}
}

// markOffsets are the distances from the end of its wire at which a mark may stand, in units.
var markOffsets = [8]float64{0.3, 0.8, 1.4, 2, 2.8, 3.6, 4.6, farthestMark}

const farthestMark = 5.6

// mark offers one place for a mark.
func (r *request) mark(f *field, x, y, cost float64, own edge) {
	m := r.words[0]
	r.offer(f, spot{box: symbol.Box{X0: x, X1: x + m.Width, Y0: y, Y1: y + m.Height}, at: point{X: x, Y: y + capital}, cost: cost}, own)
}

// aboutBar offers places along and at the ends of a bar.
func (r *request) aboutBar(f *field, width float64, s arrange.Span) {
	r.zone(s.Box())
	r.alongRun(f, run{s.At, s.End(), width}, false)
	for k, w := range r.words {
		for _, s := range spotsBeyond(k, w, s) {
			r.offer(f, s, noEdge)
		}
	}
}

// spotsBeyond lists places at the two ends of a bar.
func spotsBeyond(k int, w arrange.Words, s arrange.Span) [4]spot {
	e := s.End()
	x0, y0, x1, y1 := float64(s.At.X), float64(s.At.Y), float64(e.X), float64(e.Y)
	at := func(x, y float64, anchor ink.Anchor, cost float64) spot {
		box := symbol.Box{X0: x, X1: x + w.Width, Y0: y, Y1: y + w.Height}
		p := point{X: x, Y: y + capital}
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
		return [4]spot{
			at(x0-w.Width/2, y0-w.Height-beyond, ink.Middle, 1), at(x1-w.Width/2, y1+beyond, ink.Middle, 3),
			at(x0+gapLine, y0-w.Height-beyond, ink.Start, 2), at(x0-w.Width-gapLine, y0-w.Height-beyond, ink.End, 2),
		}
	}
	return [4]spot{
		at(x0-w.Width-beyond, y0-w.Height/2, ink.End, 3), at(x1+beyond, y1-w.Height/2, ink.Start, 3),
		at(x0-w.Width-beyond, y0-w.Height-gapLine, ink.End, 4), at(x1+beyond, y1-w.Height-gapLine, ink.Start, 4),
	}
}

// aboutFrame offers places inside and outside along the edges of a frame.
func (r *request) aboutFrame(f *field, b symbol.Box) {
	w := r.words[0]
	r.zone(b)
	for k, y0 := range [4]float64{b.Y0 - gapLine - w.Height, b.Y1 + gapLine, b.Y0 + gapLine, b.Y1 - gapLine - w.Height} {
		for off := 0.0; off+w.Width <= b.X1-b.X0; off++ {
			for m, x0 := range [2]float64{b.X0 + off, b.X1 - off - w.Width} {
				box := symbol.Box{X0: x0, X1: x0 + w.Width, Y0: y0, Y1: y0 + w.Height}
				anchor, at := ink.Start, point{X: x0, Y: y0 + capital}
				if m == 1 {
					anchor, at.X = ink.End, x0+w.Width
				}
				r.offer(f, spot{box: box, at: at, anchor: anchor, cost: float64(k) + off*costCentre + float64(m)*0.05}, noEdge)
			}
		}
	}
}
