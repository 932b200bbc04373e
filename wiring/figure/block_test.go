package figure

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func blocks(t *testing.T, c *Cart, s *wiring.State) []BlockRoom {
	t.Helper()
	all, err := c.BlockRooms(t.Context(), s, 0)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A block of three channels at 50 C: one carries 6 A, one has a wire and no fuse, one a
// fuse and no wire.
func TestBlock(t *testing.T) {
	b := newBench()
	b.source("G1", 12, 1e-6)
	channel := func(n int, rating quantity.Ampere) {
		put(b, "A1.fuse"+string(rune('0'+n)), &wiring.Fuse{
			A: b.node("A1.+"), B: b.node("A1." + string(rune('0'+n))), Channel: n,
			Fitted: rating > 0, Rating: rating, Ohms: 0.005,
		})
	}
	channel(1, 10)
	channel(2, 0)
	channel(3, 5)
	b.terminal("A1.+").Rated = 100
	b.wire("G1.+", "A1.+", 0.001)
	b.wire("A1.1", "E1.+", 0.001)
	b.wire("A1.2", "E2.+", 0.001)
	put(b, "E1.load", &wiring.Load{A: b.node("E1.+"), B: b.node("G1.-"), Law: wiring.ConstantCurrent, Amps: 6, Works: wiring.Band{Low: 9}})
	b.part("A1").Place = "dash"
	b.h.Places = []*wiring.Place{{Name: "dash", Ambient: 50}}
	all := blocks(t, b.cart(), state())
	if len(all) != 1 || len(all[0].Channels) != 3 || all[0].Part.Designation != "A1" {
		t.Fatalf("blocks are %+v", all)
	}
	block := all[0]
	first := block.Channels[0]
	within(t, "current of the first channel", first.Amps, 6, 1e-6)
	left, ok := first.Left()
	within(t, "left on it", left, 7.2-6, 1e-6) // 72 % of 10 A above 45 C
	if !ok || first.Free() {
		t.Error("it has a wire and a fuse")
	}
	if _, ok := block.Channels[1].Left(); ok || block.Channels[1].Free() {
		t.Error("the second has a wire and no fuse")
	}
	if free := block.Free(); len(free) != 1 || free[0].Number != 3 || free[0].Terminal.Name != "3" {
		t.Errorf("free are %+v", free)
	}
	if len(block.Feeds) != 1 || block.Feeds[0].Terminal.Name != "+" {
		t.Fatalf("feeds are %+v", block.Feeds)
	}
	within(t, "current of the feed", block.Feeds[0].Amps, 6, 1e-6)
	feed, ok := block.Feeds[0].Left()
	within(t, "left on the feed", feed, 94, 1e-6)
	if !ok {
		t.Error("the feed is rated")
	}
}

// The block of the first example: eight channels, four of them in use.
func TestBlockOfExample(t *testing.T) {
	c := New(example(t, "tern-point-14"), nil)
	all := blocks(t, c, c.harness.State("everything on"))
	if len(all) != 1 {
		t.Fatalf("%d blocks", len(all))
	}
	if got := len(all[0].Free()); got != 4 {
		t.Errorf("%d channels are free, want 4", got)
	}
	reducer := reducers(t, c, c.harness.State("everything on"))["T2.main"]
	within(t, "the feed carries what the reducer gives", all[0].Feeds[0].Amps, reducer.Asked, 0.01)
	if all[0].Feeds[0].Limit != 100 {
		t.Errorf("its limit is %v", all[0].Feeds[0].Limit)
	}
}

func TestPackRooms(t *testing.T) {
	c := New(example(t, "tern-point-14"), nil)
	for _, tt := range []struct {
		state         string
		amps, left    quantity.Ampere
		peak, chargee quantity.Ampere
	}{
		{"driving", 48.1, 101.9, 251.9, 98.1},
		{"charging", -18, 168, 318, 32},
	} {
		all, err := c.PackRooms(t.Context(), c.harness.State(tt.state), 0)
		if err != nil || len(all) != 1 {
			t.Fatalf("%d packs: %v", len(all), err)
		}
		r := all[0]
		left, _ := r.Left()
		peak, _ := r.LeftAtPeak()
		charge, _ := r.LeftToCharge()
		within(t, "current", r.Amps, tt.amps, 0.1)
		within(t, "left", left, tt.left, 0.1)
		within(t, "left at the peak", peak, tt.peak, 0.1)
		within(t, "left to charge", charge, tt.chargee, 0.1)
	}
	b := newBench()
	b.source("G1", 12, 0.01)
	all, err := b.cart().PackRooms(t.Context(), state(), 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := all[0].Left(); ok {
		t.Error("nothing is known of its rating")
	}
	if _, ok := all[0].LeftAtPeak(); ok {
		t.Error("nothing is known of its peak")
	}
	if _, ok := all[0].LeftToCharge(); ok {
		t.Error("nothing is known of what it takes")
	}
}
