package arrange

import (
	"math"

	"github.com/lugwright/lugwright/render/symbol"
)

// Hull returns the smallest box round all boxes, and the zero box for none.
func Hull(boxes []symbol.Box) symbol.Box {
	if len(boxes) == 0 {
		return symbol.Box{}
	}
	h := boxes[0]
	for _, b := range boxes[1:] {
		h.X0, h.Y0 = min(h.X0, b.X0), min(h.Y0, b.Y0)
		h.X1, h.Y1 = max(h.X1, b.X1), max(h.Y1, b.Y1)
	}
	return h
}

// Overlap returns the area that two boxes share.
func Overlap(a, b symbol.Box) float64 {
	w := min(a.X1, b.X1) - max(a.X0, b.X0)
	h := min(a.Y1, b.Y1) - max(a.Y0, b.Y0)
	if w <= 0 || h <= 0 {
		return 0
	}
	return w * h
}

// Touch reports whether two boxes share more than an edge.
func Touch(a, b symbol.Box) bool {
	return a.X0 < b.X1 && b.X0 < a.X1 && a.Y0 < b.Y1 && b.Y0 < a.Y1
}

// Grown returns the box with a margin added on each side.
func Grown(b symbol.Box, margin float64) symbol.Box {
	return symbol.Box{X0: b.X0 - margin, Y0: b.Y0 - margin, X1: b.X1 + margin, Y1: b.Y1 + margin}
}

// Shifted returns a box moved by a cell.
func Shifted(b symbol.Box, by symbol.Cell) symbol.Box {
	x, y := float64(by.X), float64(by.Y)
	return symbol.Box{X0: b.X0 + x, Y0: b.Y0 + y, X1: b.X1 + x, Y1: b.Y1 + y}
}

// floorHalf returns the greatest n + 1/2 that is not above v.
func floorHalf(v float64) float64 { return math.Floor(v-0.5) + 0.5 }
