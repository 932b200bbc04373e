package rules_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestNotChecked asks for what is missing in every place where a rule cannot judge.
func TestNotChecked(t *testing.T) {
	base := tree(t, jobs)
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"nothing is missing", "", nil},
		{"a wire behind a fuse without a size", "parts:\n  P1: {kind: buzzer}\nwires:\n  W74: {from: X13, to: P1.+, colour: GY}\n  W75: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 1 ft}\n",
			[]string{"fuse-protects-wire W74: it has no size, so nobody can say whether F11 protects it"}},
		{"a return without a length", "parts:\n  P1: {kind: buzzer}\nwires:\n  W74: {from: X13, to: P1.+, colour: GY, size: 16 AWG}\n  W75: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG}\n",
			[]string{"return-complete W75: the loss in this return is not known: it has no size or length"}},
		{"an unfused wire of a small source without a size", "parts:\n  X15: {kind: splice}\n  X16: {kind: splice}\n  A2: {kind: tracker, always-on: it must}\nwires:\n  W63: {to: X15}\n  W101: {from: X15, to: X16, colour: RD}\n  W103: {from: X16, to: A2.+}\n  W102: {from: A2.-, to: X3.5}\n  A2.ignition: {to: capped}\n",
			[]string{"fused-consumer W101: it has no size, so nobody can say what it may carry"}},
		{"a relay without a rated voltage",
			"kinds:\n  bare-relay: {title: relay, terminals: {a: {form: spade 6.3}, b: {form: spade 6.3}, c: {form: spade 6.3}, d: {form: spade 6.3}}, inside: [{coil: {between: [a, b], ohms: 1500 ohm, pull-in: 30 V, drop-out: 10 V}}, {contact: {between: [c, d], coil: coil}}]}\n" +
				"parts:\n  K2: {kind: bare-relay}\nwires:\n  W101: {from: X13, to: K2.c, colour: GY, size: 16 AWG, length: 1 ft}\n",
			[]string{"fuse-voltage K2.contact: it has no rated voltage"}},
		{"a stack with a lug of unknown size", "parts:\n  X15: {kind: splice}\nwires:\n  W101: {from: G1.-, to: X15, colour: BK}\nstacks: {G1.-: [W7, W52, W101]}\n",
			[]string{"stack-order W101: it has no size, so nobody can say where its lug belongs on G1.-"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, n := range check(t, base, "example.yaml", "job: NC-1\nuse: [cart]\n"+c.body).NotChecked {
				got = append(got, n.Rule+" "+n.String())
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("not checked (-want +got):\n%s", diff)
			}
		})
	}
}
