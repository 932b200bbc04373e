package handbook

import (
	"github.com/lugwright/lugwright/wiring/quantity"
)

// faaDropRow is one system voltage of aircraft practice, a yardstick beside the boat rules
// that the product goes by.
type faaDropRow struct {
	nominal, continuous, intermittent quantity.Volt
}

var faaDropDefinition = table{
	name:    "faa_drop",
	about:   "aircraft practice: voltage that may be lost between bus and load",
	columns: []string{"nominal_V", "continuous_V", "intermittent_V"},
	load: func(t *Tables, s *sheet) {
		t.faaDrop = nil
		for _, r := range s.rows {
			t.faaDrop = append(t.faaDrop, faaDropRow{
				quantity.Volt(r.positive("nominal_V")), quantity.Volt(r.positive("continuous_V")), quantity.Volt(r.positive("intermittent_V")),
			})
		}
	},
}

// FAADrop returns the voltage that may be lost between bus and load on a system of a
// nominal voltage of the table (14, 28, 115, 200 V), and whether the table has it.
//
// Source: AC 43.13-1B Table 11-6; from memory, the continuous column confirmed.
func (t *Tables) FAADrop(nominal quantity.Volt, intermittent bool) (quantity.Volt, bool) {
	for _, r := range t.faaDrop {
		if r.nominal != nominal {
			continue
		}
		if intermittent {
			return r.intermittent, true
		}
		return r.continuous, true
	}
	return 0, false
}
