package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// A reducer from 48 to 12 V that its enable lead switches on, a lamp with a switch of its
// own, a relay, and a meter.
const parked = `
	G1 source + - 48
	S1 switch key off,on on:1,2
	T2 sense enable in- 9
	T2 converter in+ in- out in- 12 20
	S6 switch switch off,on on:1,2
	E1 load + - 20
	K1 coil 86 85
	P2 load + - 1
	W1 G1.+ S1.1
	W2 G1.+ T2.in+
	W3 G1.- T2.in-
	W5 T2.out S6.1
	W6 S6.2 E1.+
	W7 E1.- G1.-
	W9 K1.85 G1.-
	W10 G1.+ P2.+
	W11 P2.- G1.-
`

func TestOffMeansOff(t *testing.T) {
	tests := []struct {
		name, wires string
		alwaysOn    []string
		want        []shown
	}{
		{"as it should be: a meter takes 21 mA", "W4 S1.2 T2.enable\nW8 S1.2 K1.86", nil, nil},
		{"the enable lead on the battery", "W4 G1.+ T2.enable\nW8 S1.2 K1.86", nil, []shown{{"T2.converter2", "S1.key off"}}},
		{"the same, declared", "W4 G1.+ T2.enable\nW8 S1.2 K1.86", []string{"T2"}, nil},
		{"a relay on the battery", "W4 S1.2 T2.enable\nW8 G1.+ K1.86", nil, []shown{{"K1.coil1", "S1.key off"}}},
		{"a relay on an always-on reducer is still energised", "W4 G1.+ T2.enable\nW8 T2.out K1.86", []string{"T2"}, []shown{{"K1.coil1", "S1.key off"}}},
		{"a lamp that its own switch feeds from the battery", "W4 S1.2 T2.enable\nW8 S1.2 K1.86\nW12 G1.+ S6.1", nil,
			[]shown{{"E1.load1", "S1.key off, S6.switch on"}}},
		{"the same, declared", "W4 S1.2 T2.enable\nW8 S1.2 K1.86\nW12 G1.+ S6.1", []string{"E1"}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := bench(t, parked+tt.wires)
			elements := h.Part("T2").Elements
			elements[1].(*wiring.Converter).When = &wiring.Condition{Op: wiring.Holds, Element: elements[0]}
			for _, name := range tt.alwaysOn {
				h.Part(name).AlwaysOn = "it has a reason"
			}
			r := check(t, h, position.OffMeansOff(), position.CheckOptions{})
			if diff := cmp.Diff(tt.want, shownOf(r)); diff != "" {
				t.Errorf("%v %s (-want +got):\n%s", r.Verdict, r.Why, diff)
			}
		})
	}
}
