package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// buzzer is a relay that cuts its own coil as soon as it is energised.
const buzzer = `
	G1 source + - 12
	S1 switch switch off,on on:1,2
	K1 coil 86 85
	K1 contact 30 87a rest
	E1 load + - 20
	W1 G1.+ S1.1
	W2 S1.2 K1.30
	W3 K1.87a K1.86
	W4 K1.85 G1.-
	W5 G1.+ E1.+
	W6 E1.- G1.-`

func TestARelayThatChatters(t *testing.T) {
	r := check(t, bench(t, buzzer), position.SettlesEverywhere(), position.CheckOptions{})
	want := []shown{{"K1.coil1", "S1.switch on"}}
	if diff := cmp.Diff(want, shownOf(r)); diff != "" {
		t.Fatalf("%v (-want +got):\n%s", r.Verdict, diff)
	}
	const says = "K1.coil1 alternates: K1.coil1 sees 0 V to 11.98 V."
	if got := r.Counterexamples[0].Says; got != says {
		t.Errorf("it says %q, want %q", got, says)
	}
}

// What depends on amounts has nothing to say of a position without an operating point, and
// says that.
func TestWhatDoesNotSettleIsNotProved(t *testing.T) {
	r := check(t, bench(t, buzzer), position.SneakPath(), position.CheckOptions{})
	const why = "1 point has no operating point; the first is with S1.switch on: K1.coil1 alternates: K1.coil1 sees 0 V to 11.98 V"
	if r.Verdict != position.Unproved || r.Why != why || r.Unsettled.Count != 1 || r.Looked != 2 {
		t.Errorf("%v: %s", r.Verdict, r.Why)
	}
}

// Two relays, each of which cuts the other off: who comes first decides.
func TestARaceIsNotProved(t *testing.T) {
	h := bench(t, `
		G1 source + - 12
		S1 switch switch off,on on:1,2
		K1 coil 86 85
		K1 contact 30 87a rest
		K2 coil 86 85
		K2 contact 30 87a rest
		W1 G1.+ S1.1
		W2 S1.2 K1.30
		W3 S1.2 K2.30
		W4 K1.87a K2.86
		W5 K2.87a K1.86
		W6 K1.85 G1.-
		W7 K2.85 G1.-`)
	r := check(t, h, position.SneakPath(), position.CheckOptions{})
	const why = "1 point depends on which element acts first; the first is with S1.switch on: " +
		"the outcome depends on which acts first: K1.coil1 and K2.coil1"
	if r.Verdict != position.Unproved || r.Why != why || r.Races.Count != 1 {
		t.Errorf("%v: %s", r.Verdict, r.Why)
	}
}

// A position that breaks a property at one charge only is found, and said with the charge.
func TestChargesAreSwept(t *testing.T) {
	h := bench(t, `
		S1 switch key off,on on:1,2
		K1 coil 86 85
		W1 G1.+ K1.86
		W2 K1.85 G1.-
		W3 S1.1 S1.2
		G1 source + - 0`)
	cells := h.Part("G1").Elements[0].(*wiring.Source)
	cells.Chemistry, cells.Cells = "LFP", 3 // 7.5 V empty, 10.2 V rested and full
	h.Index()
	o := position.CheckOptions{}
	o.Charges = append(o.Charges, 1e-9, 1)
	r := check(t, h, position.OffMeansOff(), o)
	if r.Verdict != position.Broken || r.Counterexamples[0].Charge != 1 || r.Looked != 1 || r.Settled != 2 {
		t.Errorf("%v, %d looked at, %d settled: %v", r.Verdict, r.Looked, r.Settled, shownOf(r))
	}
	o.Charges = o.Charges[:1]
	if r := check(t, h, position.OffMeansOff(), o); r.Verdict != position.Holds {
		t.Errorf("with an empty battery: %v", r.Verdict)
	}
}
