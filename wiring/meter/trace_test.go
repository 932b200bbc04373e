package meter_test

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
)

// What feeds a terminal, or where the way is cut, as the wire lists of the examples have it.
func TestTraces(t *testing.T) {
	for _, c := range []struct {
		cart, state, terminal string
		verdict               meter.Verdict
		way, cut              string
	}{
		{"tern-point-14", "driving", "K1.out", meter.Fed, "G1.+ - W51 - F1 - W6 - K1.contact - K1.out", ""},
		{"tern-point-14", "key off", "K1.coil+", meter.Dead, "", "S1.switch"},
		{"tern-point-14", "tow", "K1.coil+", meter.Dead, "", "S2.switch"},
		{"tern-point-14", "pack off", "K1.coil+", meter.Dead, "", "G1.source"},
		{"tern-point-14", "charging", "U1.interlock", meter.Dead, "G1.+ - W66 - F4 - W57 - T1.lockout - W37 - U1.interlock", "T1.lockout"},
		{"tern-point-14", "ready", "K1.coil-", meter.Return, "K1.coil- - W20 - U1.coil - W7 - G1.-", ""},
		{"tern-point-14", "ready", "S6.in", meter.Fed, "T2.out - W64 - A1.fuse1 - W71 - S6.in", ""},
		{"tern-point-14", "key off", "S6.in", meter.Dead, "", "T2.main"},
		{"tern-point-14", "ready", "A1.7", meter.Nowhere, "", ""},
		{"tern-point-shuttle-3", "charging", "S1.in", meter.Dead, "", "X1.switch"},
		{"tern-point-shuttle-3", "key off", "K1.out", meter.Fed, "G1.+ - W51 - F1 - W6 - K1.in - W20 - R1 - W21 - K1.out", ""},
		{"tern-point-truck-1", "key off", "X13", meter.Dead, "", "S1.switch"},
	} {
		t.Run(c.cart+" "+c.state+" "+c.terminal, func(t *testing.T) {
			h := cart(t, c.cart)
			got := survey(t, h).Sheet(c.state).Trace(h.Terminal(c.terminal).Node)
			if got.Verdict != c.verdict {
				t.Errorf("verdict %v, want %v", got.Verdict, c.verdict)
			}
			if c.way != "" && got.Feed.String() != c.way {
				t.Errorf("way  %s\nwant %s", got.Feed, c.way)
			}
			cut := ""
			if got.Break != nil {
				cut = got.Break.Element.Base().Ref()
			}
			if cut != c.cut {
				t.Errorf("cut at %q, want %q", cut, c.cut)
			}
		})
	}
}

// A trace agrees with the meter: what has voltage is fed, what is dead has none; the side
// before a break is live, and a feed begins at a supply that runs.
func TestTracesAgreeWithReadings(t *testing.T) {
	for _, name := range carts {
		v := survey(t, cart(t, name))
		for _, s := range v.Sheets {
			for _, spot := range v.Bench.Terminals() {
				got := s.Trace(spot.Node)
				live := got.Reading.Volts > 1
				switch where := name + " " + s.State.Name + " " + spot.Name; {
				case live && got.Verdict != meter.Fed, live && got.Reading.Floating:
					t.Errorf("%s reads %v and is %v", where, got.Reading, got.Verdict)
				case got.Verdict == meter.Fed && !s.Point.Holds(got.Supply):
					t.Errorf("%s is fed by %s, which does not run", where, got.Supply.Base().Ref())
				case got.Verdict == meter.Dead && !got.Break.Supply && got.Break.Reads.Volts < 1:
					t.Errorf("%s is cut at %s, before which %v", where, got.Break.Element.Base().Ref(), got.Break.Reads)
				}
			}
		}
	}
}

func TestEmptyChannelIsNamed(t *testing.T) {
	h := cart(t, "tern-point-14")
	got := survey(t, h).Sheet("ready").Trace(h.Terminal("A1.7").Node)
	if got.Empty == nil || got.Empty.Ref() != "A1.fuse7" {
		t.Errorf("empty channel %v", got.Empty)
	}
}

// A converter that feeds itself through its own output, and one whose enable waits for it:
// an explanation ends.
func TestRingsEnd(t *testing.T) {
	h := text(t, `
job: RING
title: Two reducers that wait for each other
parts:
  T1: {kind: reducer}
  T2: {kind: reducer}
  X1: {kind: splice}
  X2: {kind: splice}
wires:
  W1: {from: T1.out, to: X1}
  W2: {from: T2.out, to: X2}
  W3: {from: T1.in-, to: T2.in-}
  W4: {from: T1.enable, to: X2}
  W5: {from: T2.enable, to: X1}
  W6: {from: T1.in+, to: X2}
  W7: {from: T2.in+, to: X1}
states:
  "on": {}
`)
	v := survey(t, h)
	for _, spot := range v.Bench.Terminals() {
		if got := v.Sheets[0].Trace(spot.Node); got.Verdict == meter.Fed {
			t.Errorf("%s is fed out of nothing", spot.Name)
		}
	}
}

// A fuse that has opened is where the way is cut: 60 W at 13 V are 4.6 A, by a fuse of 1 A.
func TestBlownFuse(t *testing.T) {
	h := text(t, `
job: BLOWN
title: A lamp behind a fuse that is too small
parts:
  G1: {kind: pack-lfp, cells: 4, ohms: 20 mohm}
  F1: {kind: fuse-10x38, rating: 1 A}
  E1: {kind: lamp, power: 60 W at 12.8 V}
wires:
  W1: {from: G1.+, to: F1.in}
  W2: {from: F1.out, to: E1.+}
  W3: {from: E1.-, to: G1.-, colour: BK, size: 14 AWG, length: 1 ft}
states:
  lit: {}
`)
	got := survey(t, h).Sheet("lit").Trace(h.Terminal("E1.+").Node)
	if got.Verdict != meter.Dead {
		t.Fatalf("E1.+ reads %v and is %v", got.Reading, got.Verdict)
	}
	if _, fuse := got.Break.Element.(*wiring.Fuse); !fuse || got.Break.Before != h.Terminal("F1.in").Node {
		t.Errorf("cut at %s", got.Break.Element.Base().Ref())
	}
}
