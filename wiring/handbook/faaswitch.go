package handbook

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

type faaSwitchRow struct {
	nominal quantity.Volt
	load    string // as printed: "inductive (relay or solenoid)"
	factor  float64
}

var faaSwitchDefinition = table{
	name:    "faa_switch",
	about:   "aircraft practice: factors on the current of a switch by its load",
	columns: []string{"nominal_V", "load", "factor"},
	load: func(t *Tables, s *sheet) {
		t.faaSwitch = nil
		for _, r := range s.rows {
			t.faaSwitch = append(t.faaSwitch, faaSwitchRow{quantity.Volt(r.positive("nominal_V")), r.word("load"), r.positive("factor")})
		}
	},
}

// LoadKind is what a switch switches.
type LoadKind string

// The kinds of load of the switch table.
const (
	LampLoad      LoadKind = "lamp"
	InductiveLoad LoadKind = "inductive"
	ResistiveLoad LoadKind = "resistive"
	MotorLoad     LoadKind = "motor"
)

// SwitchNeed is the nominal rating that a switch needs.
type SwitchNeed struct {
	Amps   quantity.Ampere
	Factor float64       // on the continuous current
	Column quantity.Volt // the table's system voltage that was taken
	Beyond bool          // the system is above all columns: the true need is higher
}

// SwitchRating returns the nominal rating that a switch needs for a continuous current by
// the kind of load. Between the table's 12 and 28 V it takes 28 V; above, 28 V too, and
// says that this is too little. A kind that the table lacks is an error.
//
// Source: AC 43.13-1B Table 11-4; read. Switches rated for AC only must not be used.
func (t *Tables) SwitchRating(nominal quantity.Volt, load LoadKind, amps quantity.Ampere) (SwitchNeed, error) {
	var best faaSwitchRow
	for _, r := range t.faaSwitch {
		if kind, _, _ := strings.Cut(r.load, " "); kind == string(load) && r.suitsBetter(best, nominal) {
			best = r
		}
	}
	if best.factor == 0 {
		return SwitchNeed{}, fmt.Errorf("the switch table has no load %q: it has lamp, inductive, resistive, motor", load)
	}
	return SwitchNeed{
		Amps: quantity.Ampere(best.factor * float64(amps)), Factor: best.factor,
		Column: best.nominal, Beyond: best.nominal < nominal,
	}, nil
}

// suitsBetter prefers the lowest column that is not below a voltage, else the highest.
func (r faaSwitchRow) suitsBetter(than faaSwitchRow, nominal quantity.Volt) bool {
	if than.nominal < nominal {
		return r.nominal > than.nominal
	}
	return r.nominal >= nominal && r.nominal < than.nominal
}
