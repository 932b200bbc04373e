package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// interlockOff is the interlock lead that hangs free: of all open wires the first to look
// for after a conversion, since it was moved.
func interlockOff() *Mode {
	return &Mode{
		ID: "interlock-off", Title: "interlock lead off", Class: Common,
		Why: "it was moved in the conversion, and pulled off or never landed",
		Find: func(c *Cart) []Fault {
			if c.Harness.Interlock == nil {
				return nil
			}
			var all []Fault
			for _, w := range c.Harness.Interlock.Wires {
				if len(w.Joins()) > 0 {
					all = append(all, openWire(w))
				}
			}
			return all
		},
	}
}

func wireOpen() *Mode {
	return &Mode{
		ID: "wire-open", Title: "wire open", Class: Occasional,
		Why: "a crimp that lets go, a plug not home, a wire that broke or was never landed",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, w := range c.Harness.Wires {
				if len(w.Joins()) > 0 {
					all = append(all, openWire(w))
				}
			}
			return all
		},
	}
}

func openWire(w *wiring.Wire) Fault {
	return Fault{Name: w.Name() + " open", Wires: []*wiring.Wire{w}, Defects: []settle.Defect{settle.OpenWire(w)}}
}

// Resistances of a bad joint. 0.5 ohm on a traction cable would be 50 V at 100 A, and no
// operating point: such a joint burns long before.
const (
	loosePower   quantity.Ohm = 0.01
	looseControl quantity.Ohm = 0.5
)

// powerArea is the least cross-section of a power wire: 10 AWG is 5.26 mm2.
const powerArea quantity.SquareMillimetre = 5

func looseLug() *Mode {
	return &Mode{
		ID: "lug-loose", Title: "lug loose", Class: Common,
		Why: "a nut not torqued, a fifth lug on a stud, a cold crimp: it shows under load only",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, w := range c.Harness.Wires {
				if len(w.Joins()) == 0 || w.Cord() {
					continue
				}
				ohms := looseControl
				if isPower(w) {
					ohms = loosePower
				}
				all = append(all, Fault{
					Name: w.Name() + " loose at a lug", Wires: []*wiring.Wire{w},
					Defects: []settle.Defect{settle.BadJoint(w, ohms)},
				})
			}
			return all
		},
	}
}

// isPower reports whether the thinnest known piece of a wire is a power wire.
func isPower(w *wiring.Wire) bool {
	known := false
	for _, p := range w.Pieces {
		area, err := handbook.Default().Area(p.Size)
		if !p.Size.Known() || err != nil {
			continue
		}
		if area < powerArea {
			return false
		}
		known = true
	}
	return known
}
