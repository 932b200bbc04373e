package schematic

import "github.com/lugwright/lugwright/wiring"

// Ref is a terminal as a schematic writes it: "G1.−".
func Ref(t *wiring.Terminal) string { return ref(t) }

// Minus writes the name of a terminal with a minus that is seen: "G1.−".
func Minus(name string) string { return minus(name) }
