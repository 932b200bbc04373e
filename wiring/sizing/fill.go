package sizing

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Gap is a size or a rating that was left to the program and that it cannot compute.
type Gap struct {
	Wire *wiring.Wire // or
	Fuse *wiring.Fuse
	Why  string
}

// Fill computes the sizes of wires and the ratings of fuses that a harness leaves to the
// program, and puts them in: [wiring.Piece.Size] where Auto is set, [wiring.Fuse.Rating]
// likewise. Fuses come first, by what all consumers behind them take at once; then wires,
// by the fuse in front of them and by the voltage that their consumers may lose. nil means
// the tables that the program brings with it. It returns what cannot be computed, fuses
// before wires, each in the order of the harness.
//
// The harness must not be in use elsewhere.
func Fill(h *wiring.Harness, t *handbook.Tables) []Gap {
	if t == nil {
		t = handbook.Default()
	}
	fuses, wires := left(h)
	if len(fuses)+len(wires) == 0 {
		return nil
	}
	f := &filling{harness: h, tables: t, demand: newDemand(h, t)}
	for _, fuse := range fuses {
		f.rate(fuse)
	}
	if len(wires) > 0 {
		f.protect()
		f.shareDrop(wires)
	}
	for _, w := range wires {
		f.size(w)
	}
	return f.gaps
}

// left lists what is left to the program.
func left(h *wiring.Harness) (fuses []*wiring.Fuse, wires []*wiring.Wire) {
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if fuse, ok := e.(*wiring.Fuse); ok && fuse.Auto {
				fuses = append(fuses, fuse)
			}
		}
	}
	for _, w := range h.Wires {
		if isAuto(w) {
			wires = append(wires, w)
		}
	}
	return fuses, wires
}

func isAuto(w *wiring.Wire) bool {
	for _, p := range w.Pieces {
		if p.Auto {
			return true
		}
	}
	return false
}

type filling struct {
	harness *wiring.Harness
	tables  *handbook.Tables
	demand  *demand
	guard   map[*wiring.Wire]guard
	drop    map[*wiring.Wire]share
	gaps    []Gap
}

// rate chooses the rating of a fuse.
func (f *filling) rate(fuse *wiring.Fuse) {
	amps := f.demand.fuses[fuse]
	if amps <= 0 {
		f.gaps = append(f.gaps, Gap{Fuse: fuse, Why: "nothing that takes current is behind it"})
		return
	}
	_, rating, err := fuseFor(f.tables, Run{Amps: amps, Style: fuse.Style, Ambient: f.ambient(fuse.Part)})
	if err == nil {
		rating, err = f.lasting(fuse, rating, amps)
	}
	if err != nil {
		f.gaps = append(f.gaps, Gap{Fuse: fuse, Why: err.Error()})
		return
	}
	fuse.Rating = rating
}

// lasting is the smallest rating from one upwards that holds every burst of the consumers
// behind a fuse on top of what they take for long.
func (f *filling) lasting(fuse *wiring.Fuse, from, amps quantity.Ampere) (quantity.Ampere, error) {
	series, _ := f.tables.FuseSeries(fuse.Style)
	for _, rating := range series.Ratings {
		if rating >= from && f.holdsAll(fuse, rating, amps) {
			return rating, nil
		}
	}
	if len(series.Ratings) == 0 { // of no style: there is nothing to count up in
		return from, nil
	}
	return 0, failf("no %s fuse holds the peak of what is behind it", fuse.Style)
}

// unknownBurst is up to where a burst is let pass by a fuse of which no time gate is known.
// Our own choice.
const unknownBurst = quantity.Second(1)

func (f *filling) holdsAll(fuse *wiring.Fuse, rating, amps quantity.Ampere) bool {
	for _, b := range f.demand.bursts[fuse] {
		total := amps + b.above
		lasts, known := f.tables.FuseHolds(fuse.Style, float64(total/rating))
		switch {
		case total <= rating, known && lasts >= b.lasts, !known && !f.gated(fuse.Style) && b.lasts < unknownBurst:
		default:
			return false
		}
	}
	return true
}

// gated reports whether anything is known of how long a style of fuse holds.
func (f *filling) gated(style string) bool {
	_, known := f.tables.FuseHolds(style, 1)
	return known
}

// size chooses the conductor of a wire's pieces that are left to the program.
func (f *filling) size(w *wiring.Wire) {
	c, err := Choose(f.tables, f.run(w))
	if err != nil {
		f.gaps = append(f.gaps, Gap{Wire: w, Why: err.Error()})
		return
	}
	for i := range w.Pieces {
		if w.Pieces[i].Auto {
			w.Pieces[i].Size = c.Size
		}
	}
}

// trickle is what a wire is reckoned with that no consumer is known behind, such as the
// lead of a sense.
const trickle = quantity.Ampere(0.01)

// run is what a wire is wanted for.
func (f *filling) run(w *wiring.Wire) Run {
	r := Run{
		Amps: max(f.demand.wires[w], trickle), Insulation: w.Insulation, Ambient: f.hottest(w), Bundle: f.bundle(w),
		Sheathed: f.sheathed(w), Copper: Copper{At: f.harness.Assume.Conductor},
	}
	if g := f.guard[w]; g.amps() < path.Unlimited {
		r.Limit, r.Fuse, r.Style = g.limit, g.rating, g.style
	} else {
		r.Limit = f.behind(w)
	}
	if r.Fuse > 0 {
		r.Amps = min(r.Amps, r.Fuse)
	}
	r.Limit = max(r.Limit, r.Amps)
	if s, ok := f.drop[w]; ok && s.perMetre > 0 {
		r.Loop, r.Volts = s.length, s.volts
		r.Drop = quantity.Ratio(s.perMetre * float64(s.length) / float64(s.volts))
	}
	return r
}

// behind is what the fuses let through that a wire in front of all fuses feeds.
func (f *filling) behind(w *wiring.Wire) quantity.Ampere {
	total := quantity.Ampere(0)
	for _, fuse := range f.demand.before[w] {
		total += fuse.Rating
	}
	return total
}

func (f *filling) ambient(p *wiring.Part) quantity.Celsius {
	if place := f.harness.Place(p.Place); place != nil && place.Ambient != 0 {
		return place.Ambient
	}
	return f.harness.Assume.Ambient
}

// hottest is the ambient of the hotter end.
func (f *filling) hottest(w *wiring.Wire) quantity.Celsius {
	most := quantity.Celsius(0)
	for _, e := range w.Ends() {
		if e.Terminal != nil {
			most = max(most, f.ambient(e.Terminal.Part))
		}
	}
	if most == 0 {
		return f.harness.Assume.Ambient
	}
	return most
}

func (f *filling) sheathed(w *wiring.Wire) bool {
	for _, l := range f.harness.Looms {
		if l.Name == w.Loom && w.Loom != "" {
			return l.Cover == "sheath"
		}
	}
	return false
}

// bundle counts the wires of a wire's loom that carry more than a fifth of what they may,
// and all that are left to the program.
func (f *filling) bundle(w *wiring.Wire) int {
	if w.Loom == "" {
		return 1
	}
	n := 0
	for _, other := range f.harness.Wires {
		if other.Loom == w.Loom && !other.Cord() && (isAuto(other) || f.loaded(other)) {
			n++
		}
	}
	return n
}

// loadedShare is the share of its ampacity from which a conductor counts in a bundle. Our
// own choice, the same as that of the rules.
const loadedShare = 0.2

func (f *filling) loaded(w *wiring.Wire) bool {
	for _, p := range w.Pieces {
		c, err := Carry(f.tables, p.Size, Run{Insulation: w.Insulation, Ambient: f.hottest(w)})
		if err == nil && f.demand.wires[w] > loadedShare*c.Amps {
			return true
		}
	}
	return false
}

// guard is what stands before a wire: a fuse, or the limit of a supply.
type guard struct {
	rating quantity.Ampere // 0: no fuse
	style  string
	limit  quantity.Ampere // of a supply that feeds it without a fuse, unlimited for a battery; 0: a fuse does
}

func (g guard) amps() quantity.Ampere { return max(g.rating, g.limit) }

// protect finds what stands before each wire, and in whose return it lies.
func (f *filling) protect() {
	f.guard = map[*wiring.Wire]guard{}
	g := f.demand.graph
	for _, s := range g.Supplies(f.demand.cell) {
		t := conducting().Until(func(n wiring.NodeID) bool { return g.SameCopper(n, s.Minus) })
		p := g.Protection(t, s.Plus, s.Limit)
		for _, w := range f.harness.Wires {
			for _, pair := range w.Joins() {
				if p.Has(pair[0]) && p.Has(pair[1]) {
					f.put(w, guardAt(p, pair[0]), guardAt(p, pair[1]))
				}
			}
		}
		for _, c := range f.demand.circle {
			if !p.Has(c.plus) {
				continue
			}
			for _, w := range c.home.wires {
				f.put(w, guardAt(p, c.plus))
			}
		}
	}
}

// guardAt is what stands before a node that the supply reaches.
func guardAt(p *path.Protection, n wiring.NodeID) guard {
	amps, fuse := p.At(n)
	if fuse != nil && fuse.Rating <= amps {
		return guard{rating: fuse.Rating, style: fuse.Style}
	}
	return guard{limit: amps}
}

// put keeps the largest guard of a wire.
func (f *filling) put(w *wiring.Wire, all ...guard) {
	for _, g := range all {
		if g.amps() > f.guard[w].amps() {
			f.guard[w] = g
		}
	}
}
