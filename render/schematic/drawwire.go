package schematic

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
)

// drawWires draws each wire in the colours of its pieces, with a splice where one piece is
// joined to the next, thin ones first so that none hides under a cable.
func (s *Sheet) drawWires(p pen) {
	for _, heavy := range [2]bool{false, true} {
		for i, path := range s.c.routes.Paths {
			if path != nil && (s.g.d.Wires[i].Weight >= heavyWeight) == heavy {
				s.drawWire(p, i, path)
			}
		}
	}
}

func (s *Sheet) drawWire(p pen, i int, path []symbol.Cell) {
	l := s.g.wires[i].line
	if l.wire == nil {
		p.page.Open(ink.Group{Class: "metal", Name: s.g.d.Wires[i].Name})
		p.lines(path, ink.Pen(s.g.d.Wires[i].Thick*p.unit))
		p.page.Close()
		return
	}
	p.page.Open(wireGroup(l.wire))
	ps := s.piecesOf(i)
	points, joints := s.joined(i, path)
	for k, run := range cutAt(points, joints) {
		for j := range run {
			run[j] = p.at(run[j].X, run[j].Y)
		}
		penFor(ps[min(k, len(ps)-1)]).Draw(p.page, run...)
	}
	for _, j := range joints {
		s.drawJoint(p, j)
	}
	p.page.Close()
}

// joined is the path of a wire in units, and where its pieces meet on it.
func (s *Sheet) joined(i int, path []symbol.Cell) ([]ink.Point, []joint) {
	points := make([]ink.Point, len(path))
	for k, c := range path {
		points[k] = ink.Point{X: float64(c.X), Y: float64(c.Y)}
	}
	return points, s.joints(i, points, len(s.piecesOf(i))-1)
}

// wireGroup says what a wire is, for tooltips and for programs that read the file.
func wireGroup(w *wiring.Wire) ink.Group {
	return ink.Group{Class: "wire", Name: w.Name(), Title: wireWords(w)[0].Lines[0],
		Data: map[string]string{"from": w.From.String(), "to": w.To.String()}}
}

// piecesOf lists the pieces of a wire as its path runs. One that ends in a flag shows the
// piece on this side alone: its words say the rest.
func (s *Sheet) piecesOf(i int) []wiring.Piece {
	d := s.g.wires[i]
	ps := append([]wiring.Piece(nil), d.line.wire.Pieces...)
	if len(ps) == 0 {
		ps = []wiring.Piece{{}}
	}
	if d.flag != nil {
		if d.flag.here == 0 {
			return ps[:1]
		}
		return ps[len(ps)-1:]
	}
	return ps
}

// joint is where two pieces of a wire meet: a point on a run, and the direction of the run.
type joint struct {
	at    ink.Point
	level bool
	along float64 // distance from the beginning of the path, in units
}

// Measures of the mark of a joint, in units: the sleeve of IEC 60617 03-02-01.
const (
	sleeveLong  = 1.0
	sleeveWide  = 0.6
	sleeveClear = 0.25
)

// joints finds places for n joints on a path, spread over it, where nothing crosses and no
// words stand close.
func (s *Sheet) joints(i int, points []ink.Point, n int) []joint {
	var found []joint
	total := length(points)
	from := 0.0
	for k := range n {
		want := total * float64(k+1) / float64(n+1)
		j, ok := s.nearestJoint(i, points, from, want)
		if !ok {
			j = pointAlong(points, max(from, want))
		}
		found = append(found, j)
		from = j.along + sleeveLong + 2*sleeveClear
	}
	return found
}

// jointStep is how far apart places for a joint are tried, in units.
const jointStep = 0.25

// nearestJoint tries places from the wanted one outwards, none before from, clear of all
// that stands around if there is such a place, else just not on it.
func (s *Sheet) nearestJoint(i int, points []ink.Point, from, want float64) (joint, bool) {
	total := length(points)
	for _, clear := range [3]float64{sleeveClear, 0.1, 0} {
		for off := 0.0; off < total; off += jointStep {
			for _, at := range [2]float64{want + off, want - off} {
				if at < from+sleeveLong/2 || at > total-sleeveLong/2 {
					continue
				}
				if j := pointAlong(points, at); s.jointFits(i, points, j, clear) {
					return j, true
				}
			}
		}
	}
	return joint{}, false
}

// jointFits reports whether a sleeve at a place stays on its run and clear of the rest.
func (s *Sheet) jointFits(i int, points []ink.Point, j joint, clear float64) bool {
	half := sleeveLong/2 + clear
	a, b := pointAlong(points, j.along-half), pointAlong(points, j.along+half)
	if a.level != j.level || b.level != j.level || abs(a.at.X-b.at.X)+abs(a.at.Y-b.at.Y) < 2*half-0.01 {
		return false
	}
	box := j.box(clear)
	for k, path := range s.c.routes.Paths {
		if k != i && touchesPath(box, path, s.g.d.Wires[k].Thick) {
			return false
		}
	}
	for _, l := range s.c.labels.Labels {
		if touch(box, l.Box) {
			return false
		}
	}
	for k := range s.g.d.Items {
		if c, ok := s.c.layout.CaptionBox(&s.g.d, k); ok && touch(box, c) {
			return false
		}
	}
	for _, c := range s.c.routes.Dots {
		if touch(box, symbol.Box{X0: float64(c.X) - dotRadius, X1: float64(c.X) + dotRadius, Y0: float64(c.Y) - dotRadius, Y1: float64(c.Y) + dotRadius}) {
			return false
		}
	}
	return true
}

// box is what the sleeve covers, with a margin.
func (j joint) box(margin float64) symbol.Box {
	w, h := sleeveLong/2+margin, sleeveWide/2+margin/2
	if !j.level {
		w, h = h, w
	}
	return symbol.Box{X0: j.at.X - w, X1: j.at.X + w, Y0: j.at.Y - h, Y1: j.at.Y + h}
}

func (s *Sheet) drawJoint(p pen, j joint) {
	b := j.box(0)
	p.page.Open(ink.Group{Class: "sleeve"})
	p.page.Path(ink.Rect{Min: p.at(b.X0, b.Y0), Max: p.at(b.X1, b.Y1)}.Path(), ink.Area(ink.Color{}))
	p.page.Close()
}
