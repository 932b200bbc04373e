package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// A motor, and two inlets: one of them stops it, the other does not. Each is looked at by
// itself, in all positions of the other.
func TestEachPlugIsLookedAt(t *testing.T) {
	h := bench(t, `
		G1 source + - 48
		X1 switch plug out,in,dead out:1,2
		X2 switch plug out,in in:3,4
		X2 charger + - 58
		S1 switch pedal up,down down:1,2
		M1 load + - 100
		W1 G1.+ X1.1
		W2 X1.2 S1.1
		W3 S1.2 M1.+
		W4 M1.- G1.-
		W5 X2.+ G1.+
		W6 X2.- G1.-
		W7 X2.3 capped
		W8 X2.4 capped`)
	h.Part("M1").Kind = &wiring.Kind{Name: "motor", Traction: true}
	for _, e := range h.Part("X2").Elements {
		if c, ok := e.(*wiring.Charger); ok {
			c.When = &wiring.Condition{Op: wiring.Set, Control: control(t, h, "X2.plug"), Position: "in"}
		}
	}
	// Plugged in: X1 in (4 positions), X2 in and X1 not (4). In a dead outlet likewise.
	for _, p := range []*position.Property{position.NoDriveOnCharge(), position.NoDriveWithCord()} {
		r := check(t, h, p, position.CheckOptions{Full: true})
		want := []shown{{"M1", "X2.plug in, S1.pedal down"}}
		if diff := cmp.Diff(want, shownOf(r)); diff != "" || r.Product != 8 || r.Looked != 8 {
			t.Errorf("%s: %d of %d (-want +got):\n%s", p.ID, r.Looked, r.Product, diff)
		}
	}
}
