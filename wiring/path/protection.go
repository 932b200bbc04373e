package path

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Unlimited is the current that a battery can drive through copper without a fuse.
var Unlimited = quantity.Ampere(math.Inf(1))

// Protection says for each node how much current a fault there can draw for ever: the
// largest current that some path from the source lets through, each path letting through
// as much as its smallest fuse is rated. A fuse that is bypassed therefore protects
// nothing, whichever way round the bypass is laid.
type Protection struct {
	reach  *Reach
	amps   []quantity.Ampere
	by     []*wiring.Fuse
	source wiring.NodeID
}

// Protection searches from a source's positive, which itself gives at most limit (Unlimited
// for a battery). Fuses without a rating let everything through.
func (g *Graph) Protection(t Through, source wiring.NodeID, limit quantity.Ampere) *Protection {
	p := &Protection{reach: g.newReach(), source: source,
		amps: make([]quantity.Ampere, len(g.at)), by: make([]*wiring.Fuse, len(g.at))}
	if !g.has(source) {
		return p
	}
	p.amps[source] = limit
	p.reach.enter(source, nil, wiring.NoNode)
	// A node may be found again by a wider path, so nodes are worked off until none widens;
	// each fuse rating on the cart can widen a node once.
	queue := []wiring.NodeID{source}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		if t.stops(n) && n != source {
			continue
		}
		for _, e := range g.at[n] {
			if t.passes(e, n) && p.widen(e, n) {
				queue = append(queue, e.Other(n))
			}
		}
	}
	return p
}

// widen carries what n can draw over e, and reports whether that was more than was known.
func (p *Protection) widen(e *Edge, n wiring.NodeID) bool {
	amps, by := p.amps[n], p.by[n]
	if f, ok := e.Element.(*wiring.Fuse); ok && f.Rating > 0 {
		amps = min(amps, f.Rating)
		if by == nil || f.Rating < by.Rating {
			by = f
		}
	}
	m := e.Other(n)
	if p.reach.found[m] && p.amps[m] >= amps {
		return false
	}
	if !p.reach.found[m] {
		p.reach.enter(m, e, n)
	}
	p.reach.came[m], p.reach.from[m] = e, n
	p.amps[m], p.by[m] = amps, by
	return true
}

// At returns the current that a fault at n can draw without opening a fuse, and the
// smallest fuse on its way, which sets it unless the source's own limit is lower; nil
// where there is none. It returns 0 where the source does not reach.
func (p *Protection) At(n wiring.NodeID) (quantity.Ampere, *wiring.Fuse) {
	if !p.reach.Has(n) {
		return 0, nil
	}
	return p.amps[n], p.by[n]
}

// Has reports whether the source reaches n.
func (p *Protection) Has(n wiring.NodeID) bool { return p.reach.Has(n) }

// To is the path by which At(n) can flow.
func (p *Protection) To(n wiring.NodeID) (Path, bool) { return p.reach.To(n) }
