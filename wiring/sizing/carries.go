package sizing

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// engineSpace is the ambient for which 33 CFR 183.425 Table 5 note 1 publishes factors.
const engineSpace = quantity.Celsius(50)

// Carries is what a conductor may carry where it lies, and the rows that say so.
type Carries struct {
	Amps  quantity.Ampere
	Table quantity.Ampere // alone at 30 C
	Text  string          // "60 A by 105 C insulation, × 0.85 at 50 C, × 0.70 for 3 in a bundle"
}

// Carry looks up what a size may carry on a run. At exactly 50 C it takes the published
// factor of engine spaces, at other ambients sqrt((Tc - Ta) / (Tc - 30)).
//
// Source: 33 CFR 183.425 Table 5 with its notes. The error is that of
// [handbook.Tables.Ampacity].
func Carry(t *handbook.Tables, size quantity.Size, r Run) (Carries, error) {
	capacity, err := t.Ampacity(size, r.insulation())
	if err != nil {
		return Carries{}, err
	}
	c := Carries{Table: capacity.Amps, Text: fmt.Sprintf("%v by %v insulation", capacity.Amps, r.insulation())}
	if r.Insulation == 0 {
		c.Text += " (not stated)"
	}
	if note := capacity.Note(); note != "" {
		c.Text += " (" + note + ")"
	}
	hot, published := ambientFactor(t, r)
	if hot < 1 {
		c.Text += fmt.Sprintf(", × %.2f at %v", float64(hot), r.ambient())
		if published {
			c.Text += " (engine space)"
		}
	}
	bundle := t.BundleFactor(r.Bundle)
	if bundle < 1 {
		c.Text += fmt.Sprintf(", × %.2f for %d in a bundle", float64(bundle), r.Bundle)
	}
	c.Amps = handbook.Derate(capacity.Amps, hot, bundle)
	return c, nil
}

func ambientFactor(t *handbook.Tables, r Run) (factor quantity.Ratio, published bool) {
	if r.ambient() == engineSpace {
		if factor, _, ok := t.EngineSpaceFactor(r.insulation()); ok {
			return factor, true
		}
	}
	return handbook.AmbientFactor(r.insulation(), r.ambient()), false
}
