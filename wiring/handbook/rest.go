package handbook

import (
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// restCurve is the open-circuit voltage of a rested cell by its state of charge, rising.
type restCurve []restPoint

type restPoint struct {
	charge quantity.Ratio
	volts  quantity.Volt
}

var restColumns = []string{"charge_pct", "cell_V"}

var restLFPDefinition = table{
	name:    "rest_lfp",
	about:   "open-circuit voltage of a rested LFP cell by state of charge",
	columns: restColumns,
	load:    func(t *Tables, s *sheet) { t.restLFP = newRestCurve(s) },
}

var restLeadAcidDefinition = table{
	name:    "rest_lead_acid",
	about:   "open-circuit voltage of a rested lead-acid cell by state of charge",
	columns: restColumns,
	load:    func(t *Tables, s *sheet) { t.restLeadAcid = newRestCurve(s) },
}

// newRestCurve reads a curve in any order of rows and holds it to rise.
func newRestCurve(s *sheet) restCurve {
	var c restCurve
	for _, r := range s.rows {
		charge := quantity.Ratio(r.number("charge_pct") / 100)
		if charge > 1 {
			r.fail("charge_pct", "must be at most 100")
		}
		c = append(c, restPoint{charge, quantity.Volt(r.positive("cell_V"))})
	}
	sort.SliceStable(c, func(i, j int) bool { return c[i].charge < c[j].charge })
	for i := 1; i < len(c); i++ {
		if c[i].charge == c[i-1].charge || c[i].volts <= c[i-1].volts {
			s.fail("voltage must rise with charge: it does not from %v to %v", c[i-1].charge, c[i].charge)
		}
	}
	if len(s.faults) == 0 {
		c.checkEnds(s)
	}
	return c
}

// latestStart is the charge at which a curve must have begun; below its first point its
// first stretch goes on.
const latestStart = 0.10

// checkEnds holds a curve to say something over the whole range.
func (c restCurve) checkEnds(s *sheet) {
	switch {
	case len(c) < 2:
		s.fail("a curve needs at least two rows")
	case c[0].charge > latestStart || c[len(c)-1].charge != 1:
		s.fail("a curve runs from at most 10 %% to 100 %%, not from %v to %v", c[0].charge, c[len(c)-1].charge)
	case c.at(0) <= 0:
		s.fail("the first stretch goes on to no voltage at 0 %%")
	}
}

// restOf returns the curve of a chemistry. A chemistry without a curve of its own has a
// straight line from its floor to its rested full voltage.
func (t *Tables) restOf(c Chemistry) restCurve {
	switch {
	case strings.EqualFold(c.Name, "LFP"):
		return t.restLFP
	case strings.EqualFold(c.Name, "lead-acid"):
		return t.restLeadAcid
	}
	return restCurve{{0, c.Low}, {1, c.RestedFull}}
}

// at interpolates; below the first point the first stretch goes on.
func (c restCurve) at(charge quantity.Ratio) quantity.Volt {
	i := sort.Search(len(c), func(i int) bool { return c[i].charge >= charge })
	i = min(max(i, 1), len(c)-1)
	a, b := c[i-1], c[i]
	return a.volts + (b.volts-a.volts)*quantity.Volt((charge-a.charge)/(b.charge-a.charge))
}

// chargeAt is the inverse of at, within 0 and 1.
func (c restCurve) chargeAt(volts quantity.Volt) quantity.Ratio {
	i := sort.Search(len(c), func(i int) bool { return c[i].volts >= volts })
	i = min(max(i, 1), len(c)-1)
	a, b := c[i-1], c[i]
	charge := a.charge + (b.charge-a.charge)*quantity.Ratio((volts-a.volts)/(b.volts-a.volts))
	return min(max(charge, 0), 1)
}

// RestVolts returns the open-circuit voltage of the rested pack at a state of charge,
// which is taken within 0 and 100 %.
//
// Source: LFP: invented, rounded, typical; from memory, through 3.40 V full, 3.30 V at half
// and the 2.5 V cut-off. Lead-acid: rest voltages of a public inverter manual; read, from
// 10 % up.
func (p Pack) RestVolts(charge quantity.Ratio) quantity.Volt {
	return p.times(p.rest.at(min(max(charge, 0), 1)))
}

// ChargeAt returns the state of charge at which the rested pack has a voltage: what a
// meter made for this chemistry would show. LFP is so flat that the answer is worth little
// between 20 and 95 %.
func (p Pack) ChargeAt(volts quantity.Volt) quantity.Ratio {
	return p.rest.chargeAt(volts / quantity.Volt(p.Cells))
}
