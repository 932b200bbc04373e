package meter_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/meter"
)

// flat lists unmet conditions by name, with what each is cut at, in order.
func flat(wants []meter.Want) []string {
	var all []string
	for _, w := range wants {
		line := w.Name
		for _, c := range []*meter.Break{w.Break, w.Return} {
			if c != nil {
				line += " < " + c.Element.Base().Ref()
			}
		}
		all = append(all, line)
		for _, c := range []*meter.Break{w.Break, w.Return} {
			if c != nil {
				all = append(all, flat(c.Wants)...)
			}
		}
	}
	return all
}

// What keeps each main contact open, by name, as the kinds of the controllers have it.
func TestWhatKeepsMainContactsOpen(t *testing.T) {
	for _, c := range []struct {
		cart, state string
		want        []string
	}{
		{"tern-point-14", "driving", nil},
		{"tern-point-14", "ready", nil},
		{"tern-point-14", "key off", []string{"K1.coil < S1.switch < U1.coil", "U1.key < S1.switch", "U1.charged < S1.switch"}},
		{"tern-point-14", "tow", []string{"K1.coil < S2.switch < U1.coil", "U1.key < S2.switch", "U1.run < S2.switch", "U1.charged < S2.switch"}},
		{"tern-point-14", "drive-away", []string{"K1.coil < U1.coil", "U1.interlock < T1.lockout", "T1.plugged"}},
		{"tern-point-shuttle-3", "ready", []string{"K1.coil < S4.switch"}},
		{"tern-point-shuttle-3", "drive-away", []string{"K1.coil < X1.switch"}},
		{"tern-point-shuttle-3", "driving", nil},
	} {
		t.Run(c.cart+" "+c.state, func(t *testing.T) {
			holds := survey(t, cart(t, c.cart)).Sheet(c.state).Holds()
			if len(holds) != 1 || holds[0].Coil.Part.Designation != "K1" {
				t.Fatalf("main contacts %v, want K1 alone", holds)
			}
			if holds[0].Closed != (c.want == nil) {
				t.Errorf("closed: %v", holds[0].Closed)
			}
			if diff := cmp.Diff(c.want, flat(holds[0].Wants)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TP-14 with the key off: only what stands before the key and behind the pack is live, by
// hand from its wire list.
func TestLiveWithKeyOff(t *testing.T) {
	var got []string
	for _, l := range survey(t, cart(t, "tern-point-14")).Sheet("key off").Live() {
		got = append(got, fmt.Sprintf("%s %v", l.Name, l.Reading))
	}
	want := `F1.in F1.out F2.in F2.out F3.in F3.out F4.in F4.out F11.in F11.out G1.+ K1.in S1.in S2.in S2.out
		T1.+ T1.lock-a T1.lock-b T2.in+ U1.interlock U1.run`
	var lines []string
	for _, name := range strings.Fields(want) {
		lines = append(lines, name+" 53.3 V")
	}
	lines = append(lines, "G1.display.v 12.0 V", "P2.v 12.0 V", "T2.memory 12.5 V")
	slices.Sort(lines)
	slices.Sort(got)
	if diff := cmp.Diff(lines, got); diff != "" {
		t.Error(diff)
	}
}

// Time constants by hand, and the time until 1 V is left: 4.7 mF by 10 kohm beside 100 kohm
// and 1 Mohm (9.01 kohm) is 42.3 s, times ln 53.3 is 168 s. The 3.3 mF of TP-S3 charge by
// 470 ohm: 1.5 s times ln 39 less what the bleed takes.
func TestWaits(t *testing.T) {
	for _, c := range []struct {
		cart, state string
		low, high   float64 // seconds; 0: none
	}{
		{"tern-point-14", "key off", 160, 175},
		{"tern-point-14", "driving", 0, 0},
		{"tern-point-14", "drive-away", 7.5, 8.7}, // 470 ohm beside 9 kohm: 2.1 s times ln 50
		{"tern-point-shuttle-3", "driving", 0, 0},
	} {
		v := survey(t, cart(t, c.cart))
		waits := v.Waits(v.Sheet(c.state))
		if c.high == 0 {
			if len(waits) > 0 {
				t.Errorf("%s %s: waits %v", c.cart, c.state, waits[0].Time)
			}
			continue
		}
		if len(waits) != 1 || float64(waits[0].Time) < c.low || float64(waits[0].Time) > c.high {
			t.Errorf("%s %s: %+v, want %v to %v s", c.cart, c.state, waits, c.low, c.high)
			continue
		}
		names := map[string]bool{}
		for _, spot := range waits[0].Spots {
			names[spot.Name] = true
		}
		if !names["K1.out"] || !names["U1.B+"] || names["K1.in"] || names["G1.-"] {
			t.Errorf("%s %s: places %v", c.cart, c.state, names)
		}
	}
}
