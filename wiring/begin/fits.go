package begin

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/settle"
)

// nominal is the nominal voltage of all batteries of a list of parts in series; 0 if none
// states a chemistry that the handbook knows.
func nominal(parts []*wiring.Part) float64 {
	volts := 0.0
	for _, p := range parts {
		for _, e := range p.Elements {
			s, ok := e.(*wiring.Source)
			if !ok {
				continue
			}
			if pack, err := handbook.Default().Pack(s.Chemistry, s.Cells); err == nil {
				volts += float64(pack.Nominal())
			} else {
				volts += float64(settle.OpenCircuit(s, 0.5))
			}
		}
	}
	return volts
}

// mostApart is how far the nominal voltages of the pack before and after may be apart, as
// a share: 51.2 V in the place of 48 V is 7 %, 38.4 V is 20 %. Our own choice.
const mostApart = 0.12

// Fits reports whether a kit goes on a platform: the two can be read together, every point
// that the kit needs is there, and the pack has the voltage that the cart was built for.
// load reads a text as a job.
func Fits(load accessory.Load, platform, kit string) bool {
	h, findings, err := load([]byte("job: FIT-1\nuse: [" + accessory.Quote(platform) + ", " + accessory.Quote(kit) + "]\n"))
	if err != nil || h == nil || diag.Worst(findings) == diag.Error {
		return false
	}
	var old []*wiring.Part
	for _, gone := range h.Before {
		if gone.Part.Origin.Kind == wiring.PlatformLayer { // a kit may replace the pack of another
			old = append(old, gone.Part)
		}
	}
	was, is := nominal(old), nominal(h.Parts)
	return was > 0 && is > 0 && math.Abs(is-was)/was <= mostApart && interlocked(h)
}

// interlocked reports whether what the cart's interlock needs is what the kit gives: a
// closed loop where the controller wants one, and only there.
func interlocked(h *wiring.Harness) bool {
	lockout, _ := h.Point("lockout")
	asked := false
	for _, l := range h.Layers {
		for _, n := range l.Needs {
			asked = asked || n.Point == lockout.Name && n.Point != ""
		}
	}
	if lockout.Terminal == nil {
		return !asked
	}
	return len(lockout.Terminal.Wires) > 0
}
