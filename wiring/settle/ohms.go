package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
)

// wireOhms is the resistance of a wire, or of each pole of a cord: the sum of its pieces
// at the assumed conductor temperature. A piece of unknown length or size counts 0.1 mohm,
// and then the resistance is not known. Lugs and joints count nothing.
func wireOhms(w *wiring.Wire, assume wiring.Assume) (ohms float64, known bool) {
	known = len(w.Pieces) > 0
	for _, p := range w.Pieces {
		piece, ok := pieceOhms(p, assume)
		ohms += piece
		known = known && ok
	}
	if len(w.Pieces) == 0 {
		ohms = unknownOhms
	}
	return ohms, known
}

func pieceOhms(p wiring.Piece, assume wiring.Assume) (ohms float64, known bool) {
	if !p.Size.Known() || !p.Length.Known() {
		return unknownOhms, false
	}
	r, err := handbook.Default().Resistance(p.Size, p.Length.Metres(), assume.Conductor)
	if err != nil || !(r >= 0) || math.IsInf(float64(r), 0) {
		return unknownOhms, false
	}
	return float64(r), true
}
