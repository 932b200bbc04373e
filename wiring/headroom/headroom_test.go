package headroom_test

import (
	"context"
	"math"
	"os"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/headroom"
	"github.com/lugwright/lugwright/wiring/job"
)

func room(t *testing.T, name string) *headroom.Room {
	t.Helper()
	h, findings, err := job.Load("jobs/"+name+".yaml", job.Options{FS: os.DirFS("../../examples/tern-point")})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	r, err := headroom.Of(context.Background(), h)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Unknown) > 0 {
		t.Errorf("%s: unknown: %v", name, r.Unknown)
	}
	return r
}

// What the example is drawn from by hand: 8 channels of which 4 are taken; 8 negative
// screws of which the light bar, the horn's button, the USB outlet and the sound bar take
// 4; light bar 60 W, USB 36 W, sound bar 60 W and its 5 mA standby at 12.5 V are 12.5 A for
// as long as one likes, with the horn's 4 A on top at worst.
func TestRoomOfTernPoint14(t *testing.T) {
	r := room(t, "tern-point-14")
	if n := len(r.Blocks); n != 1 {
		t.Fatalf("%d fuse blocks", n)
	}
	if free := r.Blocks[0].Free(); len(free) != 4 || free[0].Number != 5 {
		t.Errorf("free channels: %+v", free)
	}
	if len(r.Negatives) != 1 || r.Negatives[0].Free() != 4 || r.Negatives[0].Terminal.Ref() != "A1.n" {
		t.Errorf("negatives: %+v", r.Negatives)
	}
	for _, want := range []struct{ ref, limit string }{{"T2.main", "25 A"}, {"T2.memory", "1 A"}} {
		found := false
		for _, red := range r.Reducers {
			if red.Converter.Ref() == want.ref {
				found = true
				if red.Limit.String() != want.limit {
					t.Errorf("%s gives %v, want %s", want.ref, red.Limit, want.limit)
				}
			}
		}
		if !found {
			t.Errorf("%s is not listed", want.ref)
		}
	}
	main := r.Reducers[0]
	if got := float64(main.Continuous); math.Abs(got-156.0/12.5) > 0.1*got {
		t.Errorf("T2 gives %v for ever, by hand 12.5 A and a little", main.Continuous)
	}
	if got := float64(main.Peak - main.Continuous); math.Abs(got-4) > 0.1 {
		t.Errorf("the horn adds %v, want 4 A", main.Peak-main.Continuous)
	}
	for _, p := range r.Reducers {
		if p.Converter.Part.Designation == "U1" || p.Converter.Part.Designation == "G1" {
			t.Errorf("%s feeds nothing that a hand could wire", p.Converter.Ref())
		}
	}
	if r.Lights == nil || r.Parked == nil || r.Charge == nil {
		t.Fatalf("lights %v, parked %v, charge %v", r.Lights, r.Parked, r.Charge)
	}
	// 88 Ah at 53 V over 156 W / 0.9 and what the key-on cart takes: some 20 hours
	if h := r.Lights.Hours(); h < 15 || h > 27 {
		t.Errorf("lights for %.1f h", h)
	}
	if d := r.Parked.Days(); d < 60 || d > 100 {
		t.Errorf("parked for %.0f days", d)
	}
}

// Nothing is switched by standing that a hand has to hold.
func TestStanding(t *testing.T) {
	h := room(t, "tern-point-14").Harness
	s := headroom.Standing(h)
	for c, p := range s.Set {
		if c.Name == "button" || c.Name == "pedal" {
			t.Errorf("%s.%s stands at %s", c.Part.Designation, c.Name, p)
		}
	}
	if s.Position(h.Part("S6").Controls[0]) != "on" || s.Position(h.Part("P4").Controls[0]) != "on" {
		t.Error("the lights and the sound bar are not on")
	}
	if headroom.Standing(&wiring.Harness{}) != nil {
		t.Error("an empty cart can be switched on")
	}
}

// Every example answers everything.
func TestRoomOfExamples(t *testing.T) {
	for _, name := range []string{"tern-point-shuttle-3", "tern-point-truck-1"} {
		if r := room(t, name); len(r.Blocks) == 0 || len(r.Packs) == 0 || len(r.Reducers) == 0 || r.Charge == nil {
			t.Errorf("%s: %+v", name, r)
		}
	}
}
