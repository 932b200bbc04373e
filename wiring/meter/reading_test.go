package meter_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// The pack of 16 LFP cells rests at 53.28 V at 80 % (handbook curve), that of 12 cells at
// 39.96 V. What is left of it by hand:
//   - TP-14 drive-away, K1.out: the pack at 53.5 V under charge less the 0.7 V of V2, by R1
//     of 470 ohm into 10 kohm, 100 kohm and 1 Mohm beside the meter's 10 Mohm (9.00 kohm):
//     52.75 V x 9.00 / 9.47 = 50.1 V.
//   - TP-S3 key off, K1.out: R1 lies across the contact.
//   - A wire that is capped, an empty channel: floating.
func TestReadings(t *testing.T) {
	for _, c := range []struct {
		cart, state, terminal string
		volts                 quantity.Volt
		floating              bool
		proof                 meter.Proof
	}{
		{"tern-point-14", "key off", "K1.in", 53.3, false, meter.Sound},
		{"tern-point-14", "key off", "K1.out", 0, false, meter.Sound},
		{"tern-point-14", "ready", "T2.out", 12.5, false, meter.Sound},
		{"tern-point-14", "key off", "T2.out", 0, false, meter.Sound},
		{"tern-point-14", "key off", "T2.memory", 12.5, false, meter.Sound},
		{"tern-point-14", "pack off", "T2.memory", 0, true, meter.Sound},
		{"tern-point-14", "pack off", "G1.+", 0, false, meter.Asleep},
		{"tern-point-14", "pack off", "K1.in", 0, false, meter.Asleep},
		{"tern-point-14", "pack off", "K1.out", 0, false, meter.Sound},
		{"tern-point-14", "drive-away", "K1.out", 50.1, false, meter.Precharged},
		{"tern-point-14", "drive-away", "T2.enable", 50.1, false, meter.Precharged},
		{"tern-point-14", "drive-away", "K1.coil-", 53.4, false, meter.ThroughConsumer},
		{"tern-point-14", "driving", "K1.out", 52.7, false, meter.Sound},
		{"tern-point-14", "ready", "P3.-", 12.5, false, meter.ThroughConsumer},
		{"tern-point-14", "ready", "A1.7", 0, true, meter.Sound},
		{"tern-point-shuttle-3", "key off", "K1.out", 39.0, false, meter.Precharged},
		{"tern-point-shuttle-3", "driving", "K1.out", 39.5, false, meter.Sound},
		{"tern-point-shuttle-3", "charging", "X1.lock", 0, true, meter.Sound},
		{"tern-point-truck-1", "drive-away", "U1.inhibit", 11.9, false, meter.Sound},
		{"tern-point-truck-1", "driving", "S4.t+", 5.0, false, meter.Sound},
	} {
		t.Run(c.cart+" "+c.state+" "+c.terminal, func(t *testing.T) {
			h := cart(t, c.cart)
			s, err := meter.New(h).Settle(context.Background(), h.State(c.state))
			if err != nil {
				t.Fatal(err)
			}
			got := s.Read(h.Terminal(c.terminal))
			if math.Abs(float64(got.Volts-c.volts)) > 0.05+1e-9 || got.Floating != c.floating || got.Proof != c.proof {
				t.Errorf("%v, %v; want %.1f V, floating %v, %v", got, got.Proof, float64(c.volts), c.floating, c.proof)
			}
		})
	}
}

// Every reading is that of package settle, floating is floating, and what floats is read
// against nothing.
func TestReadingsAreThoseOfSettle(t *testing.T) {
	for _, name := range carts {
		h := cart(t, name)
		v, n := survey(t, h), 0
		for _, s := range v.Sheets {
			p, err := settle.State(context.Background(), h, s.State, settle.Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, spot := range v.Bench.Terminals() {
				n++
				got := s.ReadAt(spot.Node)
				if got.Volts != p.Reading(spot.Node) || got.Against != p.Against(spot.Node) || got.Floating != (got.Against == wiring.NoNode) {
					t.Errorf("%s %s %s: %+v, settle has %v against %v", name, s.State.Name, spot.Name, got, p.Reading(spot.Node), p.Against(spot.Node))
				}
			}
		}
		if n < 500 {
			t.Errorf("%s: only %d readings", name, n)
		}
	}
}

// An isolated reducer is read against its own negative: against pack negative it floats.
func TestIsolatedSideHasItsOwnNegative(t *testing.T) {
	h := text(t, `
job: ISO
title: An isolated reducer on the bench
parts:
  G1: {kind: pack-lfp, cells: 16}
  T2: {kind: reducer-isolated}
wires:
  W1: {from: G1.+, to: T2.in+}
  W2: {from: G1.-, to: T2.in-}
  W3: {from: G1.+, to: T2.enable}
states:
  "on": {soc: 50 %}
`)
	s, err := meter.New(h).Settle(context.Background(), h.State("on"))
	if err != nil {
		t.Fatal(err)
	}
	got := s.Read(h.Terminal("T2.out+"))
	if got.Floating || got.Against != h.Terminal("T2.out-").Node || math.Abs(float64(got.Volts)-12.5) > 0.5 {
		t.Errorf("T2.out+ reads %v against %v", got, got.Against)
	}
}

// A mains pole is no place for a probe, and a meter for direct current shows nothing of it.
func TestMainsIsMarked(t *testing.T) {
	v := survey(t, cart(t, "tern-point-14"))
	for _, spot := range v.Bench.Find("T1.ac") {
		live := spot.Name != "T1.ac.PE"
		if got := v.Sheet("charging").ReadAt(spot.Node).Mains; got != live {
			t.Errorf("charging, %s: mains %v", spot.Name, got)
		}
		if v.Sheet("driving").ReadAt(spot.Node).Mains {
			t.Errorf("driving, %s: mains", spot.Name)
		}
	}
}

func TestReadingString(t *testing.T) {
	for _, c := range []struct {
		r    meter.Reading
		want string
	}{
		{meter.Reading{Volts: 52.84}, "52.8 V"},
		{meter.Reading{Volts: -0.01}, "0.0 V"},
		{meter.Reading{Floating: true}, "0.0 V (floating)"},
		{meter.Reading{Mains: true, Floating: true}, "mains"},
	} {
		if got := c.r.String(); got != c.want {
			t.Errorf("%+v is %q, want %q", c.r, got, c.want)
		}
	}
}

func TestFind(t *testing.T) {
	b := meter.New(cart(t, "tern-point-14"))
	for ref, want := range map[string]int{"G1.+": 1, "g1.+": 1, "X12": 1, "T1.ac": 3, "t1.ac.pe": 1, "G1.radio": 0, "S6": 0, "Q9.x": 0} {
		if got := b.Find(ref); len(got) != want {
			t.Errorf("%s: %v, want %d places", ref, got, want)
		}
	}
}

func TestSettleEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := meter.New(cart(t, "tern-point-14")).Survey(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
}
