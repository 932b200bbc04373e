package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// unstatedInsulation is the column that counts where a wire does not say what its
// insulation stands: the common cheap PVC. Our own choice; findings say so.
const unstatedInsulation = quantity.Celsius(75)

// pigtail is the length up to which a thin piece behind a large fuse is let pass: 33 CFR
// 183.455(b)(1) lets that much go without any fuse, 183.425(g) without a least size.
const pigtail = quantity.Metre(7 * 0.0254)

// carries is what one piece of a wire may carry, and what that rests on.
type carries struct {
	amps       quantity.Ampere
	insulation quantity.Celsius
	ambient    quantity.Celsius
	bundle     int
	basis      string // "105 C insulation at 40 C"
	thin       bool   // thinner than the ampacity table: amps is the largest fuse of the aircraft circular
}

// pieceCarries looks up what a piece of a wire may carry, where it lies. bundled is the
// number of conductors that count in its loom; 0 and 1 mean it lies alone. Where the
// ampacity table ends, at 18 AWG, the fuse that AC 43.13-1B Table 11-3 gives a wire in a
// hot bundle counts; below that there is nothing, and an error.
func pieceCarries(p *rule.Pass, w *wiring.Wire, size quantity.Size, bundled int) (carries, error) {
	c := carries{insulation: w.Insulation, ambient: ambientOf(p.Harness, w), bundle: bundled}
	said := ""
	if c.insulation == 0 {
		c.insulation, said = unstatedInsulation, " (not stated)"
	}
	capacity, err := p.Handbook.Ampacity(size, c.insulation)
	if err != nil {
		_, fuse, ok := p.Handbook.FAAProtector(size)
		if !ok {
			return c, err
		}
		c.amps, c.thin, c.basis = fuse, true, "AC 43.13-1B Table 11-3; the ampacity table ends at 18 AWG"
		return c, nil
	}
	factor := handbook.AmbientFactor(c.insulation, c.ambient) * p.Handbook.BundleFactor(bundled)
	c.amps = quantity.Ampere(float64(capacity.Amps) * float64(factor))
	c.basis = fmt.Sprintf("%v insulation%s at %v", c.insulation, said, c.ambient)
	if bundled >= 3 {
		c.basis += fmt.Sprintf(", %d in one bundle", bundled)
	}
	return c, nil
}

// ambientOf is the hottest of the places that a wire's ends are at.
func ambientOf(h *wiring.Harness, w *wiring.Wire) quantity.Celsius {
	ambient := quantity.Celsius(0)
	stated := false
	for _, e := range w.Ends() {
		t := h.Assume.Ambient
		if e.Terminal != nil {
			if place := h.Place(e.Terminal.Part.Place); place != nil && place.Ambient != 0 {
				t = place.Ambient
			}
		}
		if !stated || t > ambient {
			ambient, stated = t, true
		}
	}
	return ambient
}

// isPigtail reports whether a piece is known to be so short that its size is let pass.
func isPigtail(piece wiring.Piece) bool {
	return piece.Length.Known() && piece.Length.Metres() <= pigtail*1.001
}
