package position_test

import (
	"context"
	"errors"
	"math"
	"runtime"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// readings tells what of a point could depend on who settled it and when.
func readings(h *wiring.Harness, p *settle.Point) []quantity.Volt {
	volts := []quantity.Volt{quantity.Volt(p.Outcome), quantity.Volt(p.Rounds)}
	for n := range wiring.NodeID(len(h.Nodes)) {
		volts = append(volts, p.Volts(n))
	}
	return volts
}

// What a sweep shows is what settling one position after another from cold shows, to the
// last bit, in the order of the space.
func TestSweepIsSettlingOneByOne(t *testing.T) {
	h := example(t, "tern-point-shuttle-3")
	net := settle.Compile(h)
	space := position.All(h)
	charges := []quantity.Ratio{1e-9, 0, 1}
	next := int64(0)
	err := position.Sweep(t.Context(), net, space, position.Options{Charges: charges}, func(s position.Seen) bool {
		if s.Index != next/3 || s.Charge != charges[next%3] || s.Point.State != s.State {
			t.Fatalf("visit %d is of position %d at %v", next, s.Index, s.Charge)
		}
		want, err := net.Settle(t.Context(), space.At(s.Index), settle.Options{SOC: s.Charge})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(readings(h, want), readings(h, s.Point)); diff != "" {
			t.Fatalf("%s: %s", s.State.Name, diff)
		}
		next++
		return true
	})
	if err != nil || next != 3*space.Count() {
		t.Errorf("%d visits, %v", next, err)
	}
}

func TestASweepStopsWhenItIsTold(t *testing.T) {
	h := example(t, "tern-point-14")
	net := settle.Compile(h)
	before := runtime.NumGoroutine()
	visits := 0
	err := position.Sweep(t.Context(), net, position.All(h), position.Options{}, func(position.Seen) bool {
		visits++
		return visits < 5
	})
	if err != nil || visits != 5 {
		t.Errorf("%d visits, %v", visits, err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	err = position.Sweep(ctx, net, position.All(h), position.Options{}, func(s position.Seen) bool {
		if s.Index == 3 {
			cancel()
		}
		return true
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled, a sweep ends with %v", err)
	}
	for range 100 { // a goroutine that has returned is counted for a moment more
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(time.Millisecond)
	}
	t.Errorf("%d goroutines are left over", runtime.NumGoroutine()-before)
}

func TestASweepTellsHowFarItIs(t *testing.T) {
	h := example(t, "tern-point-shuttle-3")
	type told struct{ Done, Total int64 }
	var got []told
	o := position.Options{Progress: func(done, total int64) { got = append(got, told{done, total}) }}
	err := position.Sweep(t.Context(), settle.Compile(h), position.All(h), o, func(position.Seen) bool { return true })
	want := []told{{32, 192}, {64, 192}, {96, 192}, {128, 192}, {160, 192}, {192, 192}}
	if diff := cmp.Diff(want, got); err != nil || diff != "" {
		t.Error(err, diff)
	}
}

func TestASpaceBeyondTheLimitIsRefused(t *testing.T) {
	h := example(t, "tern-point-14")
	net := settle.Compile(h)
	visit := func(position.Seen) bool {
		t.Error("something was visited")
		return false
	}
	err := position.Sweep(t.Context(), net, position.All(h), position.Options{Most: 1151}, visit)
	var many *position.TooMany
	if !errors.As(err, &many) || *many != (position.TooMany{Count: 1152, Most: 1151}) {
		t.Errorf("the error is %v", err)
	}
	err = position.Sweep(t.Context(), net, position.All(h), position.Options{Most: 3455, Charges: []quantity.Ratio{0, 0.5, 1}}, visit)
	if err == nil || err.Error() != "there are 3456 positions to settle, and the limit is 3455" {
		t.Errorf("at three charges the error is %v", err)
	}
	const beyond = "there are more positions than can be counted, and the limit is 5"
	if got := (&position.TooMany{Count: math.MaxInt64, Most: 5}).Error(); got != beyond {
		t.Errorf("%q, want %q", got, beyond)
	}
	r := check(t, h, position.SettlesEverywhere(), position.CheckOptions{Options: position.Options{Most: 700}})
	if r.Verdict != position.Unproved || r.Why != "there are 768 positions to settle, and the limit is 700" || r.Settled != 0 {
		t.Errorf("a proof ends with %v: %s", r.Verdict, r.Why)
	}
}
