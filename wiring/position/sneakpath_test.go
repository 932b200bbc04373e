package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func TestSneakPaths(t *testing.T) {
	const feed = `
		G1 source + - 12
		F1 fuse in out 10
		W1 G1.+ F1.in`
	tests := []struct {
		name, text string
		want       []shown
		way        string
	}{
		{"each lamp has its own return", `
			S1 switch switch off,on on:in,out
			E1 load + - 20
			E2 load + - 20
			W2 F1.out S1.in
			W3 S1.out E1.+
			W4 S1.out E2.+
			W5 E1.- G1.-
			W6 E2.- G1.-`, nil, ""},
		{"a horn that is switched in its negative", `
			S1 switch button up,down down:in,out
			P1 load + - 20
			W2 F1.out P1.+
			W3 P1.- S1.in
			W4 S1.out G1.-`, nil, ""},
		// With both open E3 glows through E1 and then backwards through E2. These two are far
		// stronger lamps, and stay dark.
		{"two lamps on one return that opens", `
			S1 switch switch on,off on:in,out
			E1 load + - 60
			E2 load + - 60
			E3 load + - 5
			S2 switch feed on,off on:in,out
			W2 F1.out E1.+
			W3 F1.out S2.in
			W4 S2.out E2.+
			W5 S2.out E3.+
			W6 E1.- S1.in
			W7 E2.- S1.in
			W8 S1.out G1.-
			W9 E3.- G1.-`,
			[]shown{{"E3.load1", "S1.switch off, S2.feed off"}},
			"G1.+ - W1 - F1 - W2 - E1 - W6 - S1.in - W7 - E2 - W4 - S2.out - W5 - E3.+ / E3.- - W9 - G1.-"},
		{"a lamp that is reversed is not fed by a sneak path", `
			S1 switch reverse a,b a:in,1 a:-,2 b:in,2 b:-,1
			E1 load + - 20
			W2 F1.out S1.in
			W3 G1.- S1.-
			W4 S1.1 E1.+
			W5 S1.2 E1.-`, nil, ""},
		{"a sense behind a pull-up has a circuit of its own", `
			R1 resistor 1 2 4700
			U1 sense s - 6
			W2 F1.out R1.1
			W3 R1.2 U1.s
			W4 U1.- G1.-`, nil, ""},
		{"a sense that lights up through a lamp", `
			S1 switch switch off,on on:in,out
			E1 load + - 20
			U1 sense s - 6
			W2 F1.out E1.+
			W3 E1.- S1.in
			W4 S1.out G1.-
			W5 E1.- U1.s
			W6 U1.- G1.-`,
			[]shown{{"U1.sense1", "everything at rest"}},
			"G1.+ - W1 - F1 - W2 - E1 - W5 - U1.s / U1.- - W6 - G1.-"},
		// The coil would be fed straight with S1 on; through R1 it gets 9 V, above its drop-out.
		{"a coil that is held through a resistor", `
			S1 switch switch off,on on:in,out
			R1 resistor 1 2 50
			K1 coil 86 85
			W2 F1.out S1.in
			W3 S1.out K1.86
			W4 F1.out R1.1
			W5 R1.2 K1.86
			W6 K1.85 G1.-`,
			[]shown{{"K1.coil1", "everything at rest"}},
			"G1.+ - W1 - F1 - W4 - R1 - W5 - K1.86 / K1.85 - W6 - G1.-"},
		{"a coil that is only ever fed through a resistor", `
			S1 switch switch off,on on:in,out
			R1 resistor 1 2 50
			K1 coil 86 85
			W2 F1.out S1.in
			W3 S1.out R1.1
			W5 R1.2 K1.86
			W6 K1.85 G1.-`, nil, ""},
		{"a lamp between two batteries of a string", `
			G2 source + - 12
			E1 load + - 20
			E2 load + - 20
			W2 G1.- G2.+
			W3 F1.out E1.+
			W4 E1.- G2.-
			W5 E2.+ G2.+
			W6 E2.- G2.-`, nil, ""},
		{"a lamp on the tap of a string that is charged", `
			G2 source + - 12
			T1 charger + - 29
			E1 load + - 20
			W2 G1.- G2.+
			W3 T1.+ G1.+
			W4 T1.- G2.-
			W5 E1.+ G2.+
			W6 E1.- G2.-`, nil, ""},
		// E1 has one end at 48 V and the other at 12 V; its current comes back through E2.
		{"a lamp between two buses", `
			G2 source + - 48
			E1 load + - 5
			E2 load + - 20
			W2 G1.- G2.-
			W3 G2.+ E1.+
			W4 E1.- E2.+
			W5 F1.out E2.+
			W6 E2.- G1.-`,
			[]shown{{"E1.load1", "everything at rest"}},
			"G2.+ - W3 - E1.+ / E1.- - W4 - E2 - W6 - G1.- - W2 - G2.-"},
		// V1 keeps the two feeds apart; without it E1 would feed E2.
		{"a diode that lets current one way", `
			S1 switch a off,on on:in,out
			S2 switch b off,on on:in,out
			V1 diode a k
			E1 load + - 20
			E2 load + - 20
			W2 F1.out S1.in
			W3 F1.out S2.in
			W4 S1.out E1.+
			W5 S2.out E2.+
			W6 S1.out V1.a
			W7 V1.k E2.+
			W8 E1.- G1.-
			W9 E2.- G1.-`, nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := check(t, bench(t, feed+tt.text), position.SneakPath(), position.CheckOptions{})
			if diff := cmp.Diff(tt.want, shownOf(r)); diff != "" {
				t.Fatalf("%v %s (-want +got):\n%s", r.Verdict, r.Why, diff)
			}
			if tt.want == nil {
				return
			}
			if diff := cmp.Diff([]string{tt.way}, ways(r.Counterexamples[0])); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// A load glows from a twentieth of its power, which is 22 % of the low end of its band. A
// resistive one without a band from 1 V.
func TestHowMuchIsEnergised(t *testing.T) {
	const text = `
		G1 source + - 12
		R1 resistor 1 2 50
		S1 switch switch off,on on:1,2
		E1 load + - 20
		W1 G1.+ R1.1
		W2 R1.2 E1.+
		W3 E1.- G1.-
		W4 G1.+ S1.1
		W5 S1.2 E1.+`
	tests := []struct {
		name  string
		ohms  quantity.Ohm
		load  wiring.Load
		sneak bool
	}{
		// Below its band a load of 20 W from 8 V is 3.2 ohm; 1.79 V there are a twentieth.
		{"1.83 V of 8 V", 17.8, wiring.Load{Law: wiring.ConstantPower, Watts: 20, Works: wiring.Band{Low: 8}}, true},
		{"1.75 V of 8 V", 18.8, wiring.Load{Law: wiring.ConstantPower, Watts: 20, Works: wiring.Band{Low: 8}}, false},
		{"1.09 V at 1 ohm", 10, wiring.Load{Law: wiring.Resistive, Ohms: 1}, true},
		{"0.92 V at 1 ohm", 12, wiring.Load{Law: wiring.Resistive, Ohms: 1}, false},
	}
	for _, tt := range tests {
		h := bench(t, text)
		h.Part("R1").Elements[0].(*wiring.Resistor).Ohms = tt.ohms
		l := h.Part("E1").Elements[0].(*wiring.Load)
		l.Law, l.Watts, l.Ohms, l.Works = tt.load.Law, tt.load.Watts, tt.load.Ohms, tt.load.Works
		r := check(t, h, position.SneakPath(), position.CheckOptions{})
		if got := r.Verdict == position.Broken; got != tt.sneak {
			t.Errorf("%s: %v", tt.name, r.Verdict)
		}
	}
}
