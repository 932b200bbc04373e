package handbook

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Chemistry is the voltages of one cell.
type Chemistry struct {
	Name       string        // "LFP", "lead-acid"
	Nominal    quantity.Volt // by which packs are named
	Full       quantity.Volt // end of charge
	Low        quantity.Volt // cut-off: the floor
	Cautious   quantity.Volt // where one should stop; 0: not stated
	RestedFull quantity.Volt // full, after the charger has gone
	Status     Status
}

var cellsDefinition = table{
	name:    "cells",
	about:   "voltages of a cell by chemistry",
	columns: []string{"chemistry", "nominal_V", "full_V", "low_V", "cautious_low_V", "rested_full_V"},
	load: func(t *Tables, s *sheet) {
		t.cells = nil
		for _, r := range s.rows {
			volts := func(column string) quantity.Volt { return quantity.Volt(r.positive(column)) }
			c := Chemistry{
				Name: r.word("chemistry"), Nominal: volts("nominal_V"), Full: volts("full_V"), Low: volts("low_V"),
				Cautious: quantity.Volt(r.optional("cautious_low_V")), RestedFull: volts("rested_full_V"), Status: r.status(),
			}
			if !(c.Low < c.Nominal && c.Nominal < c.RestedFull && c.RestedFull < c.Full) {
				r.fail("nominal_V", "low, nominal, rested full and full must rise in this order")
			}
			t.cells = append(t.cells, c)
		}
	},
}

// Pack is a number of equal cells in series.
type Pack struct {
	Chemistry Chemistry
	Cells     int
	rest      restCurve
}

// Pack returns a pack of cells of a chemistry: "LFP" or "lead-acid", in any case.
//
// Source: cell voltages of public charts times the count; status by row.
func (t *Tables) Pack(chemistry string, cells int) (Pack, error) {
	if cells < 1 {
		return Pack{}, fmt.Errorf("a pack has at least one cell, not %d", cells)
	}
	var names []string
	for _, c := range t.cells {
		if strings.EqualFold(c.Name, chemistry) {
			return Pack{Chemistry: c, Cells: cells, rest: t.restOf(c)}, nil
		}
		names = append(names, c.Name)
	}
	return Pack{}, fmt.Errorf("the handbook has no cells of %q: it has %s", chemistry, strings.Join(names, ", "))
}

func (p Pack) times(cell quantity.Volt) quantity.Volt { return cell * quantity.Volt(p.Cells) }

// Nominal returns the voltage by which the pack is named.
func (p Pack) Nominal() quantity.Volt { return p.times(p.Chemistry.Nominal) }

// Full returns the voltage at the end of charge.
func (p Pack) Full() quantity.Volt { return p.times(p.Chemistry.Full) }

// Floor returns the voltage at which the pack is empty and its protection opens.
func (p Pack) Floor() quantity.Volt { return p.times(p.Chemistry.Low) }

// Cautious returns the voltage at which one should stop; 0 if not stated.
func (p Pack) Cautious() quantity.Volt { return p.times(p.Chemistry.Cautious) }

// RestedFull returns the voltage of a full pack some time after its charger has gone.
func (p Pack) RestedFull() quantity.Volt { return p.times(p.Chemistry.RestedFull) }

// Name returns "16S LFP", or "24-cell lead-acid".
func (p Pack) Name() string {
	if strings.EqualFold(p.Chemistry.Name, "LFP") {
		return fmt.Sprintf("%dS %s", p.Cells, p.Chemistry.Name)
	}
	return fmt.Sprintf("%d-cell %s", p.Cells, p.Chemistry.Name)
}

// Guarded reports whether live parts of a pack must be guarded: its nominal voltage is at
// or over 50 V. Source: 29 CFR 1910.303(g), 33 CFR 183.435; read. A 15-cell LFP pack is
// nominally under and, full, over it.
func (t *Tables) Guarded(p Pack) bool { return p.Nominal() >= t.limit("guard-line").Amount.Volts() }

// Touchable reports whether a pack stays at or below 60 V when full. Source: IEC
// 60364-4-41, 49 CFR 571.305; read.
func (t *Tables) Touchable(p Pack) bool { return p.Full() <= t.limit("touch-line").Amount.Volts() }
