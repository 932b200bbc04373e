package handbook

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/quantity"
)

type cordRow struct {
	size       quantity.Size
	two, three quantity.Ampere
}

var flexibleCordDefinition = table{
	name:    "flexible_cord",
	about:   "current of flexible cord at 30 C",
	columns: []string{"awg", "A_two_conductors", "A_three_conductors"},
	load: func(t *Tables, s *sheet) {
		t.flexibleCord = nil
		for _, r := range s.rows {
			next := cordRow{
				size:  r.gauge("awg"),
				two:   quantity.Ampere(r.positive("A_two_conductors")),
				three: quantity.Ampere(r.positive("A_three_conductors")),
			}
			if next.three > next.two {
				r.fail("A_three_conductors", "three loaded conductors carry no more than two")
			}
			if n := len(t.flexibleCord); n > 0 && (t.flexibleCord[n-1].two > next.two || t.flexibleCord[n-1].size.Number <= next.size.Number) {
				r.fail("awg", "rows go from thin to thick, and current rises with them")
			}
			t.flexibleCord = append(t.flexibleCord, next)
		}
	},
}

// FlexibleCord returns the current that a flexible cord may carry with two or three loaded
// conductors (a grounded three-wire single-phase cord counts as two). A size that the
// table lacks is an error.
//
// Source: NEC table 400.5(A)(1); read, but 18 and 17 AWG with three: from memory. The plug
// of a cord set usually limits it to 15 A.
func (t *Tables) FlexibleCord(size quantity.Size, loaded int) (quantity.Ampere, error) {
	for _, r := range t.flexibleCord {
		if r.size != size {
			continue
		}
		switch loaded {
		case 2:
			return r.two, nil
		case 3:
			return r.three, nil
		}
		return 0, fmt.Errorf("the flexible-cord table is for two or three loaded conductors, not %d", loaded)
	}
	first, last := t.flexibleCord[0].size, t.flexibleCord[len(t.flexibleCord)-1].size
	return 0, fmt.Errorf("the handbook has no flexible cord of %v: it has some of %v to %v", size, first, last)
}
