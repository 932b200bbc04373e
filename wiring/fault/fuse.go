package fault

import (
	"strconv"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

func fuseBlown() *Mode {
	return &Mode{
		ID: "fuse-blown", Title: "fuse blown", Class: Common,
		Why:  "an overload or a short, perhaps gone by now; inrush of a load that it is too small for",
		Find: func(c *Cart) []Fault { return fuses(c, " blown") },
	}
}

func fuseMissing() *Mode {
	return &Mode{
		ID: "fuse-missing", Title: "fuse missing", Class: Occasional,
		Why:  "taken out for the work and not put back, or loose in its holder",
		Find: func(c *Cart) []Fault { return fuses(c, " missing") },
	}
}

func fuses(c *Cart, how string) []Fault {
	return each(c, func(e *wiring.Fuse, f *Fault) bool {
		f.Name = FuseName(e) + how
		f.Defects = []settle.Defect{settle.OpenElement(e)}
		return e.Fitted
	})
}

// FuseName is a fuse as a person calls it: "F2", or "A1.3" for a channel of a block.
func FuseName(e *wiring.Fuse) string {
	if e.Channel == 0 {
		return called(e)
	}
	return e.Part.Designation + "." + strconv.Itoa(e.Channel)
}
