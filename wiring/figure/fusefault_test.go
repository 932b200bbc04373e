package figure

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func fuseFaults(t *testing.T, c *Cart, s *wiring.State) map[string]FuseFault {
	t.Helper()
	all, err := c.FuseFaults(t.Context(), s, 0)
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]FuseFault{}
	for _, f := range all {
		by[f.Fuse.Ref()] = f
	}
	return by
}

func TestFuseFaultIsTakenAtTheOutput(t *testing.T) {
	b, key := plant()
	// A fuse whose second end is at the source, and one without anything behind it.
	b.fuse("F2", 5, 0.03)
	b.wire("F2.out", "F1.out", 0.009)
	empty := b.fuse("F3", 5, 0.03)
	empty.Fitted = false
	faults := fuseFaults(t, b.cart(), state(key))

	main := faults["F1.fuse"]
	near(t, "main fuse", main.Through, 50/0.011)
	near(t, "fault at its output", main.Short.Amps, 50/0.011)
	if main.Short.At != b.node("F1.out") || main.Behind != nil {
		t.Errorf("the main fuse has its output at %v and %v behind it", b.h.Nodes[main.Short.At], main.Behind)
	}
	second := faults["F2.fuse"]
	near(t, "fuse behind it", second.Through, 50/(0.011+0.009+0.03))
	if second.Short.At != b.node("F2.in") {
		t.Errorf("the output of F2 is at %v, want F2.in", b.h.Nodes[second.Short.At])
	}
	if len(second.Behind) != 1 || second.Behind[0].Part.Designation != "F1" {
		t.Errorf("F2 is backed up by %v, want F1", second.Behind)
	}
	if lamp := faults["F7.fuse"]; lamp.Through != 0 || lamp.Short.Limit != 25 {
		t.Errorf("the fuse behind the reducer: %v, and up to %v of electronics", lamp.Through, lamp.Short.Limit)
	}
	if _, ok := faults["F3.fuse"]; ok {
		t.Error("an empty holder has a fault")
	}
}

// Two packs side by side feed a fault at the one's fuse from the other as well; the fuse
// has to break the larger of what its own pack and the other drive through it.
func TestFuseBetweenTwoPacks(t *testing.T) {
	b := newBench()
	for _, n := range []string{"1", "2"} {
		b.source("G"+n, 50, 0.01)
		b.fuse("F"+n, 200, 0.0003)
		b.wire("G"+n+".+", "F"+n+".in", 0.0007)
		b.wire("F"+n+".out", "X1.s", 0.001)
	}
	b.wire("G2.-", "G1.-", 0.001)
	b.source("G3", 50, 0.005)
	b.wire("G3.+", "X1.s", 0.001)
	b.wire("G3.-", "G1.-", 0.001)
	f := fuseFaults(t, b.cart(), state())["F1.fuse"]
	others := 50/(0.01+0.001+0.0007+0.0003+0.001) + 50/(0.005+0.001+0.001)
	// At F1.in the others drive their current through 1 mohm of wire and the fuse.
	joint := 1 / (1/0.013 + 1/0.007)
	want := 50 / (joint + 0.001 + 0.0003)
	if f.Short.At != b.node("F1.in") {
		t.Errorf("the worse end is %v, want F1.in", b.h.Nodes[f.Short.At])
	}
	within(t, "in the fuse", f.Through, quantity.Ampere(want), 1)
	if float64(f.Through) >= others {
		t.Error("the wire to the fuse counts for nothing")
	}
}

// In the example carts every fuse on the pack's side has kiloamperes at its output, and
// every channel of the block the reducer's limit. Invented carts; computed.
func TestFuseFaultsOfExamples(t *testing.T) {
	for _, name := range jobs {
		c := New(example(t, name), nil)
		faults := fuseFaults(t, c, c.harness.State("everything on"))
		for ref, f := range faults {
			switch part := f.Fuse.Part.Designation; {
			case part == "A1" && (f.Through != 0 || refs(f.Short.LeftOut) != "T2.main" || f.Short.Limit != limit(f)):
				t.Errorf("%s: %s has %v of the pack, and %v of %s", name, ref, f.Through, f.Short.Limit, refs(f.Short.LeftOut))
			case part == "F1" && (f.Through < 4000 || f.Through > 8000):
				t.Errorf("%s: the main fuse has %v", name, f.Through)
			}
		}
	}
}

// limit is the current limit of the converter that alone feeds a fault.
func limit(f FuseFault) quantity.Ampere { return f.Short.LeftOut[0].(*wiring.Converter).Amps }
