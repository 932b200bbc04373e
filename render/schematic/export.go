package schematic

import "github.com/lugwright/lugwright/wiring"

// Title is what stands under a part's designation on a schematic, so that other sheets call
// it the same: what it is here, or the first words of its kind's title.
func Title(p *wiring.Part) string { return title(p) }

// Ref is a terminal as a schematic writes it: "G1.−".
func Ref(t *wiring.Terminal) string { return ref(t) }

// Minus writes the name of a terminal with a minus that is seen: "G1.−".
func Minus(name string) string { return minus(name) }
