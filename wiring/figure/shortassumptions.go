package figure

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
)

// assumedSourceOhms says what package settle takes for a source that states no
// resistance: 10 mohm.
const assumedSourceOhms = "10 mohm"

// assumptions lists what a short circuit takes for granted; k is nil where there is none
// to speak of.
func (f *fault) assumptions(k *carried, amps float64) []Assumption {
	all := []Assumption{
		{"the pack's electronic protection (BMS) is ignored, and no fuse opens", practice},
		{"coils, loads, senses and capacitors are left out", circuits},
		{"converters and chargers are left out, for their electronics limit what they give", practice},
		{fmt.Sprintf("switches, contacts and drivers stand as in the state %q", f.state.Name), "the settled state"},
		charged(f.charge),
		conductors(f.cart.harness),
	}
	if k == nil || amps == 0 {
		return all
	}
	if names := f.unstatedSources(k); len(names) > 0 {
		all = append(all, Assumption{
			fmt.Sprintf("%s: no resistance is stated, %s assumed", listed(names, 6), assumedSourceOhms), practice,
		})
	}
	if names := f.unknownWires(k, amps); len(names) > 0 {
		all = append(all, Assumption{
			fmt.Sprintf("%s: size or length unknown, 0.1 mohm each assumed, so that the true current is lower", listed(names, 6)), ownChoice,
		})
	}
	return all
}

func (f *fault) unstatedSources(k *carried) []string {
	var names []string
	for _, d := range k.sources(f.cart) {
		if d.Source.Ohms <= 0 {
			names = append(names, d.Source.Part.Designation)
		}
	}
	return names
}

// unknownWires lists the wires of unknown resistance that carry a good part of the fault.
func (f *fault) unknownWires(k *carried, amps float64) []string {
	var names []string
	for _, w := range f.cart.harness.Wires {
		if _, known := k.at.point.WireOhms(w); known {
			continue
		}
		if carries(k, w) >= 0.01*math.Abs(amps) {
			names = append(names, w.Name())
		}
	}
	return names
}

// carries is the largest current in any pole of a wire.
func carries(k *carried, w *wiring.Wire) float64 {
	most := 0.0
	for pole := range w.Joins() {
		most = max(most, math.Abs(float64(k.at.point.WireAmps(w, pole))))
	}
	return most
}
