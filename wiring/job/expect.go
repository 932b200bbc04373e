package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// tractionWord in `expect` stands for any part that moves the cart.
const tractionWord = "traction"

// expectations reads what a state expects; each replaces what the state that this one is
// like expects of the same part.
func (r *reading) expectations(d *draftState, s *wiring.State) {
	of := make(map[*wiring.Part]int, len(s.Expect)) // nil: traction
	for i, x := range s.Expect {
		of[x.Part] = i
	}
	for _, e := range d.expect.list {
		x, ok := r.expectation(d, e)
		if !ok {
			continue
		}
		if i, again := of[x.Part]; again {
			s.Expect[i] = x
			continue
		}
		of[x.Part] = len(s.Expect)
		s.Expect = append(s.Expect, x)
	}
}

// expectation reads one key of `expect`.
func (r *reading) expectation(d *draftState, e setting) (wiring.Expectation, bool) {
	x := wiring.Expectation{At: e.at}
	switch r.word(e.value, "state "+d.name+": "+e.key, "on", "off") {
	case "on":
		x.On = true
	case "":
		return x, false
	}
	if strings.EqualFold(e.key, tractionWord) {
		x.Traction = true
	} else if x.Part = r.h.Part(e.key); x.Part == nil {
		if len(r.parts[wiring.Fold(e.key)]) == 0 {
			r.lost(e.at, fmt.Sprintf("state %s: no part %s%s", d.name, e.key, r.meant(e.key, func() []string { return append(r.partNames(), tractionWord) })))
		}
		return x, false
	}
	return x, true
}
