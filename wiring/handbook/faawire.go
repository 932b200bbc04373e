package handbook

import (
	"github.com/lugwright/lugwright/wiring/quantity"
)

// FAAWire is aircraft wire: tin-plated copper, in bundles, at 70 C ambient.
type FAAWire struct {
	Size quantity.Size
	Amps [3]quantity.Ampere // by conductor temperature: 105, 150, 200 C
	Most OhmPerMetre        // highest resistance at 20 C
	Area quantity.SquareMillimetre
}

var faaWireDefinition = table{
	name:    "faa_wire",
	about:   "aircraft wire: current in bundles, highest resistance, copper",
	columns: []string{"awg", "A_105C", "A_150C", "A_200C", "max_ohm_per_kft", "nominal_cmil"},
	load: func(t *Tables, s *sheet) {
		t.faaWire = nil
		for _, r := range s.rows {
			next := FAAWire{
				Size: r.gauge("awg"),
				Amps: [3]quantity.Ampere{quantity.Ampere(r.positive("A_105C")), quantity.Ampere(r.positive("A_150C")), quantity.Ampere(r.positive("A_200C"))},
				Most: OhmPerMetre(r.positive("max_ohm_per_kft") / float64(quantity.Feet(1000))),
				Area: FromCircularMils(r.positive("nominal_cmil")),
			}
			if n := len(t.faaWire); n > 0 && next.Most >= t.faaWire[n-1].Most {
				r.fail("max_ohm_per_kft", "rows go from thin to thick, and resistance falls with them")
			}
			t.faaWire = append(t.faaWire, next)
		}
	},
}

// FAAWire returns the aircraft wire of a size, and whether the table has it.
//
// Source: AC 43.13-1B Table 11-9; read.
func (t *Tables) FAAWire(size quantity.Size) (FAAWire, bool) {
	for _, w := range t.faaWire {
		if w.Size == size {
			return w, true
		}
	}
	return FAAWire{}, false
}

// FAAWireForDrop returns the thinnest aircraft wire that loses no more than a limit over
// the whole length of the run; false if none does. Source: AC 43.13-1B Table 11-9.
func (t *Tables) FAAWireForDrop(amps quantity.Ampere, run quantity.Metre, limit quantity.Volt) (FAAWire, bool) {
	for _, w := range t.faaWire {
		if Drop(amps, w.Most.Of(run)) <= limit {
			return w, true
		}
	}
	return FAAWire{}, false
}
