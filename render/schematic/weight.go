package schematic

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Weights of wires by their copper: how much a bend of them hurts the eye.
const (
	signalWeight = 1
	powerWeight  = 2
	heavyWeight  = 4
)

// From which sizes on a wire is drawn broader, in square millimetres: about 14 and 6 AWG.
const (
	powerArea = 2.0
	heavyArea = 13.0
)

// copper is about how much copper a size is, in square millimetres, to tell thick from thin
// on paper; AWG by its definition (ASTM B258), SAE as AWG.
func copper(s quantity.Size) float64 {
	switch s.System {
	case quantity.MM2:
		return s.Number
	case quantity.KCMIL:
		return s.Number * 0.5067
	case quantity.AWG, quantity.SAE:
		d := 0.127
		for range int(36 - s.Number) {
			d *= 1.1229322
		}
		return 0.785398 * d * d
	}
	return 0
}

// thickest is the copper of the thickest piece of a wire.
func thickest(w *wiring.Wire) float64 {
	most := 0.0
	for _, p := range w.Pieces {
		most = max(most, copper(p.Size))
	}
	return most
}

func weightOf(w *wiring.Wire) int {
	switch a := thickest(w); {
	case a >= heavyArea:
		return heavyWeight
	case a >= powerArea:
		return powerWeight
	}
	return signalWeight
}

// lineThick is the breadth of a wire's line in units.
func lineThick(w *wiring.Wire) float64 {
	mm := ink.Thin
	if w != nil {
		for _, p := range w.Pieces {
			mm = max(mm, penFor(p).Width())
		}
	}
	return mm / symbol.Unit
}

// penFor draws a piece of wire in its colour, as print shows it.
func penFor(p wiring.Piece) wirepen.Pen {
	return wirepen.New(p.Colour, copper(p.Size), colour.Code.Print)
}
