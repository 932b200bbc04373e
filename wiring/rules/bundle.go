package rules

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// loaded is the share of its ampacity from which a conductor counts in a bundle: below it,
// it adds a twenty-fifth of a full conductor's heat. Our own choice.
const loaded = 0.2

// bundles counts for each loom the conductors that carry more than a fifth of their
// ampacity at once: the largest number in any state, at the floor, where constant-power
// loads draw most.
func bundles(p *rule.Pass) map[string]int {
	most := map[string]int{}
	if len(p.Harness.Looms) == 0 {
		return most
	}
	for _, s := range p.Harness.States {
		at := p.Point(s, rule.Floor)
		if at == nil {
			continue
		}
		loaded := map[string]int{}
		for _, w := range p.Harness.Wires {
			if w.Loom != "" && countsIn(p, w, at) {
				loaded[w.Loom]++
				most[w.Loom] = max(most[w.Loom], loaded[w.Loom])
			}
		}
	}
	return most
}

func countsIn(p *rule.Pass, w *wiring.Wire, at *settle.Point) bool {
	size := thinnest(p.Handbook, w)
	if !size.Known() || w.Cord() {
		return false
	}
	c, err := pieceCarries(p, w, size, 0)
	return err == nil && math.Abs(float64(at.WireAmps(w, 0))) > loaded*float64(c.amps)
}

// thinnest is the smallest known size of a wire's pieces.
func thinnest(t *handbook.Tables, w *wiring.Wire) quantity.Size {
	var found quantity.Size
	least := quantity.SquareMillimetre(math.Inf(1))
	for _, piece := range w.Pieces {
		area, err := t.Area(piece.Size)
		if piece.Size.Known() && err == nil && area < least {
			found, least = piece.Size, area
		}
	}
	return found
}
