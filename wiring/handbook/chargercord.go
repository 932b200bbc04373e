package handbook

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// chargerFeet are the lengths of the charger-cord table.
var chargerFeet = [...]float64{25, 50, 100, 150}

type chargerRow struct {
	atLeast, lessThan quantity.Ampere
	sizes             [len(chargerFeet)]quantity.Size
}

var chargerCordDefinition = table{
	name:    "charger_cord",
	about:   "least extension cord for a battery charger",
	columns: []string{"at_least_A", "less_than_A", "awg_25ft", "awg_50ft", "awg_100ft", "awg_150ft"},
	load: func(t *Tables, s *sheet) {
		t.chargerCord = nil
		for _, r := range s.rows {
			next := chargerRow{atLeast: quantity.Ampere(r.number("at_least_A")), lessThan: quantity.Ampere(r.positive("less_than_A"))}
			for i, ft := range chargerFeet {
				column := fmt.Sprintf("awg_%gft", ft)
				next.sizes[i] = r.gauge(column)
				if i > 0 && next.sizes[i].Number > next.sizes[i-1].Number {
					r.fail(column, "a longer cord needs no thinner wire")
				}
			}
			if n := len(t.chargerCord); n > 0 && t.chargerCord[n-1].lessThan != next.atLeast {
				r.fail("at_least_A", "does not go on where the row before ends")
			}
			t.chargerCord = append(t.chargerCord, next)
		}
	},
}

// ChargerCord returns the thinnest extension cord for a charger by its AC input current;
// lengths between columns take the longer one. Currents and lengths beyond the table are
// errors.
//
// Source: the table that UL 1236 chargers print in their manuals; read.
func (t *Tables) ChargerCord(input quantity.Ampere, length quantity.Metre) (quantity.Size, error) {
	column := -1
	for i := len(chargerFeet) - 1; i >= 0; i-- {
		if length <= quantity.Feet(chargerFeet[i])*(1+sameArea) {
			column = i
		}
	}
	if column < 0 {
		return quantity.Size{}, fmt.Errorf("a charger cord of %s is beyond the table, which ends at 150 ft", length.In(quantity.Inch))
	}
	for _, r := range t.chargerCord {
		if r.atLeast <= input && input < r.lessThan {
			return r.sizes[column], nil
		}
	}
	last := t.chargerCord[len(t.chargerCord)-1].lessThan
	return quantity.Size{}, fmt.Errorf("a charger that takes %v is beyond the table, which ends below %v", input, last)
}

// InputCurrent returns the current of a device that is marked with watts and volts.
func InputCurrent(watts quantity.Watt, rated quantity.Volt) quantity.Ampere {
	return quantity.Ampere(float64(watts) / float64(rated))
}
