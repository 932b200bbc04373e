package settle

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// unknownOhms stands for what is not known to be more: a wire of unknown size or length,
// a pole of a cord, a resistor that states nothing.
const unknownOhms = 0.0001

// orElse is a stated value, or what is taken where nothing sensible is stated.
func orElse(stated, otherwise float64) float64 {
	if stated > 0 && !math.IsInf(stated, 0) {
		return stated
	}
	return otherwise
}

func sortedKeys[K cmp.Ordered, V any](m map[K]V) []K { return slices.Sorted(maps.Keys(m)) }
