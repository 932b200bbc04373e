package settle

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
)

// fused is a 12 V battery, a fuse F1 of 10 A without stated resistance, and a load.
func fused(loadOhms float64, fitted bool) (*bench, *wiring.Fuse, *wiring.Resistor) {
	b := newBench()
	b.battery("G1", 12, 0.002)
	f := put(b, "F1.fuse", &wiring.Fuse{A: b.node("F1.in"), B: b.node("F1.out"), Fitted: fitted, Rating: 10})
	r := b.resistance("R1.ohms", "R1.1", "R1.2", loadOhms)
	b.wire("G1.+", "F1.in", 0.005)
	b.wire("F1.out", "R1.1", 0.005)
	b.wire("R1.2", "G1.-", 0.005)
	return b, f, r
}

func TestFuse(t *testing.T) {
	// 0.025 ohm of battery and wires (3 x 5 + 2 = 17) and fuse (0.08 V / 10 A = 8 mohm).
	for _, c := range []struct {
		name   string
		ohms   float64
		fitted bool
		amps   float64
		whole  bool
	}{
		{"within its rating", 2, true, 12 / 2.025, true},
		{"at 134 %", 12/13.4 - 0.025, true, 13.4, true},
		{"at 136 %", 12/13.6 - 0.025, true, 0, false},
		{"bolted short", 1e-6, true, 0, false},
		{"empty channel", 2, false, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, f, r := fused(c.ohms, c.fitted)
			p := b.settle(t, nil)
			settled(t, p)
			near(t, "current", float64(p.ElementAmps(r)), c.amps)
			if p.Holds(f) != c.whole {
				t.Errorf("whole: %v, want %v", p.Holds(f), c.whole)
			}
			if opened := len(p.Opened()) > 0; opened != (c.fitted && !c.whole) {
				t.Errorf("opened: %v", p.Opened())
			}
		})
	}
}

// Of two fuses in one circuit the smaller opens, and then the larger has nothing to carry.
func TestTheMostStrainedFuseOpensAlone(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	large := put(b, "F1.fuse", &wiring.Fuse{A: b.node("F1.in"), B: b.node("F1.out"), Fitted: true, Rating: 30})
	small := put(b, "F2.fuse", &wiring.Fuse{A: b.node("F2.in"), B: b.node("F2.out"), Fitted: true, Rating: 10})
	b.wire("G1.+", "F1.in", 0.001)
	b.wire("F1.out", "F2.in", 0.001)
	b.wire("F2.out", "G1.-", 0.001)
	p := b.settle(t, nil)
	settled(t, p)
	if d := cmp.Diff([]string{"F2.fuse"}, refs(p.Opened())); d != "" {
		t.Error(d)
	}
	if !p.Holds(large) || p.Holds(small) {
		t.Error("only the small one opens")
	}
}

func refs(es []wiring.Element) []string {
	var out []string
	for _, e := range es {
		out = append(out, refOf(e))
	}
	return out
}

// A fuse that somebody bridged carries whatever comes: the state settles, with the fuse
// neither open nor going on and off.
func TestBridgedFuseCarriesOverload(t *testing.T) {
	b, f, r := fused(0.2, true)
	n := Compile(b.h)
	st := &wiring.State{Name: "on"}
	whole, err := n.Settle(t.Context(), st, Options{})
	if err != nil || whole.Outcome != Settled || whole.Holds(f) {
		t.Fatalf("some 50 A do not open a fuse of 10 A: %v, %v", whole.Outcome, err)
	}
	p, err := n.With(ClosedElement(f)).Settle(t.Context(), st, Options{})
	if err != nil || p.Outcome != Settled || len(p.Opened()) > 0 {
		t.Fatalf("%v, %q, opened %v, %v", p.Outcome, p.Why, p.Opened(), err)
	}
	near(t, "current", float64(p.ElementAmps(r)), 12/0.225)
}
