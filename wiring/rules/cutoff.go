package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// cutOff is the voltage at which a pack switches itself off: as it states, else the floor
// of its cells.
func cutOff(pack *path.Supply) quantity.Volt {
	if source, ok := pack.Element.(*wiring.Source); ok && source.Low > 0 {
		return source.Low
	}
	return pack.Own.Floor
}
