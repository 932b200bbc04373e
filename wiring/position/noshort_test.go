package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

func TestShorts(t *testing.T) {
	tests := []struct {
		name, text string
		want       []shown
		says       string
	}{
		{"a lamp", `
			G1 source + - 12
			F1 fuse in out 1
			E1 load + - 60
			W1 G1.+ F1.in
			W2 F1.out E1.+
			W3 E1.- G1.-`, nil, ""},
		{"a fuse too small for its lamp is no short", `
			G1 source + - 12
			F1 fuse in out 1
			E1 load + - 60
			V1 diode a k
			W1 G1.+ F1.in
			W2 F1.out E1.+
			W3 E1.- G1.-
			W4 V1.k E1.+
			W5 V1.a E1.-`, nil, ""},
		{"a switch across the battery", `
			G1 source + - 12
			S1 switch switch off,on on:1,2
			W1 G1.+ S1.1
			W2 S1.2 G1.-`,
			[]shown{{"G1.source1", "S1.switch on"}}, "The poles of G1 are joined without a load: it gives 789 A."},
		{"a resistor of more than an ohm is a load", `
			G1 source + - 12
			R1 resistor 1 2 1.1
			W1 G1.+ R1.1
			W2 R1.2 G1.-`, nil, ""},
		// 12 V over 0.91 ohm are 13.2 A; a battery that says nothing of itself may give 12 V over 1 ohm.
		{"a resistor of less is none", `
			G1 source + - 12
			R1 resistor 1 2 0.9
			W1 G1.+ R1.1
			W2 R1.2 G1.-`,
			[]shown{{"G1.source1", "everything at rest"}}, "The poles of G1 are joined without a load: it gives 13.2 A."},
		// The same behind a fuse that carries it: 13.2 A through 10 A are not three times as much.
		{"a resistor of less behind a fuse", `
			G1 source + - 12
			F1 fuse in out 10
			R1 resistor 1 2 0.9
			W1 G1.+ F1.in
			W2 F1.out R1.1
			W3 R1.2 G1.-`, nil, ""},
		{"two equal batteries side by side", `
			G1 source + - 12
			G2 source + - 12
			W1 G1.+ G2.+
			W2 G1.- G2.-`, nil, ""},
		{"two unequal batteries side by side", `
			G1 source + - 14
			G2 source + - 12
			F1 fuse in out 20
			S1 switch join off,on on:1,2
			W1 G1.+ F1.in
			W2 F1.out S1.1
			W3 S1.2 G2.+
			W4 G1.- G2.-`,
			[]shown{{"G1.source1", "S1.join on"}},
			"The poles of G1 are joined without a load: F1 (20 A) carries 68 A."},
		{"a string of batteries", `
			G1 source + - 12
			G2 source + - 12
			E1 load + - 60
			W1 G1.+ G2.-
			W2 G2.+ E1.+
			W3 E1.- G1.-`, nil, ""},
		// The relay shorts its own supply and lets go: it buzzes until the fuse opens.
		{"a relay that shorts its own supply", `
			G1 source + - 12
			F1 fuse in out 10
			K1 coil 86 85
			K1 contact 30 87
			S1 switch switch off,on on:1,2
			W1 G1.+ F1.in
			W2 F1.out S1.1
			W3 S1.2 K1.86
			W4 K1.85 G1.-
			W5 F1.out K1.30
			W6 K1.87 G1.-`,
			[]shown{{"G1.source1", "S1.switch on"}},
			"The poles of G1 are joined without a load: F1 (10 A) carries 638 A."},
		{"a charger on its battery", `
			G1 source + - 12
			T1 charger + - 14.6
			W1 T1.+ G1.+
			W2 T1.- G1.-`, nil, ""},
		{"a converter behind a switch", `
			G1 source + - 48
			T1 converter in+ in- out in- 12 20
			S1 switch switch off,on on:1,2
			W1 G1.+ T1.in+
			W2 G1.- T1.in-
			W3 T1.out S1.1
			W4 S1.2 G1.-`,
			[]shown{{"T1.converter1", "S1.switch on"}}, "The poles of T1 are joined without a load: it gives no more than 20 A."},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := check(t, bench(t, tt.text), position.NoShort(), position.CheckOptions{})
			if diff := cmp.Diff(tt.want, shownOf(r)); diff != "" {
				t.Fatalf("%v %s (-want +got):\n%s", r.Verdict, r.Why, diff)
			}
			if tt.want != nil && r.Counterexamples[0].Says != tt.says {
				t.Errorf("it says %q", r.Counterexamples[0].Says)
			}
		})
	}
}

// A relay that joins the buses loses its own supply as soon as the fuse opens; what counts
// is what it joined before.
func TestBusesAreJoinedBeforeTheFuseOpens(t *testing.T) {
	h := bench(t, `
		G1 source + - 48
		G2 source + - 12
		F1 fuse in out 5
		F2 fuse in out 5
		S1 switch switch off,on on:1,2
		K1 coil 86 85
		K1 contact 30 87
		W1 G1.+ F1.in
		W2 G2.+ F2.in
		W3 F2.out S1.1
		W4 S1.2 K1.86
		W5 K1.85 G2.-
		W6 G1.- G2.-
		W7 F1.out K1.30
		W8 K1.87 F2.out`)
	for _, e := range h.Part("K1").Elements {
		if coil, ok := e.(*wiring.Coil); ok {
			coil.DropOut = 7
		}
	}
	r := check(t, h, position.BusesApart(), position.CheckOptions{})
	want := []shown{{"G1.+, G2.+", "S1.switch on"}}
	if diff := cmp.Diff(want, shownOf(r)); diff != "" {
		t.Fatalf("%v (-want +got):\n%s", r.Verdict, diff)
	}
	if diff := cmp.Diff([]string{"G1.+ - W1 - F1 - W7 - K1.contact2 - W8 - F2 - W2 - G2.+"}, ways(r.Counterexamples[0])); diff != "" {
		t.Error(diff)
	}
	// With everything open in the end, only settling with whole fuses shows it.
	alone, err := position.NewCart(h, nil).Network.Settle(t.Context(), r.Counterexamples[0].State, settleOptions)
	if err != nil || len(alone.Opened()) == 0 {
		t.Errorf("no fuse opens: %v", err)
	}
}
