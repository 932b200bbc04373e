package path_test

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// cells are figures for this test alone.
func cells(chemistry string) (path.Volts, bool) {
	return path.Volts{Floor: 2.5, Middle: 3.3, Rested: 3.4, Full: 3.65}, chemistry == "LFP"
}

func supply(t *testing.T, all []*path.Supply, ref string) *path.Supply {
	t.Helper()
	for _, s := range all {
		if s.Element.Base().Ref() == ref {
			return s
		}
	}
	t.Fatalf("no supply %s", ref)
	return nil
}

func TestStringOfBatteries(t *testing.T) {
	h := pathtest.Harness(t, `
G13 source + - 8
G11 source + - 8
G12 source + - 8
F1 fuse in out 100
W1 G11.+ G12.-
W2 G12.+ F1.in
W3 F1.out G13.-
`)
	all := path.New(h).Supplies(cells)
	for ref, want := range map[string]quantity.Volt{"G11.source1": 8, "G12.source1": 16, "G13.source1": 24} {
		s := supply(t, all, ref)
		if got := s.Top().Middle; got != want {
			t.Errorf("%s stands at %v, want %v", ref, got, want)
		}
		if s.Bottom != pathtest.Node(t, h, "G11.-") {
			t.Errorf("%s counts from %v", ref, s.Bottom)
		}
		if got, want := len(s.Negatives()), int(want/8); got != want {
			t.Errorf("current of %s comes back to %d nodes, want %d", ref, got, want)
		}
		if s.Limit != path.Unlimited || !s.Battery() {
			t.Errorf("%s is limited to %v", ref, s.Limit)
		}
	}
}

func TestSuppliesOfACart(t *testing.T) {
	h := pathtest.Harness(t, `
G1 source + - 0
T2 converter in+ in- out in- 13.2 25
T3 converter in+ in- out+ out- 12 20
T1 charger + - 58.4
W1 G1.+ T2.in+
W2 G1.- T2.in-
W3 G1.+ T3.in+
W4 G1.- T3.in-
W5 T1.- G1.-
`)
	pack := h.Part("G1").Elements[0].(*wiring.Source)
	pack.Chemistry, pack.Cells = "LFP", 16
	all := path.New(h).Supplies(cells)
	g1, t1 := supply(t, all, "G1.source1"), supply(t, all, "T1.charger1")
	t2, t3 := supply(t, all, "T2.converter1"), supply(t, all, "T3.converter1")
	if got, want := g1.Top(), (path.Volts{Floor: 40, Middle: 52.8, Rested: 54.4, Full: 58.4}); !near(got, want) {
		t.Errorf("the pack gives %v, want %v", got, want)
	}
	if got := t2.Top().Full; got != 13.2 {
		t.Errorf("the reducer gives %v", got)
	}
	if !g1.SameNegative(t2) || !g1.SameNegative(t1) {
		t.Error("pack, charger and common-negative reducer do not share a negative")
	}
	if g1.SameNegative(t3) {
		t.Error("an isolated reducer shares the negative of the pack")
	}
	if t2.Limit != 25 || t1.Limit != 18 {
		t.Errorf("limits %v and %v", t2.Limit, t1.Limit)
	}
}

func near(a, b path.Volts) bool {
	for _, d := range []quantity.Volt{a.Floor - b.Floor, a.Middle - b.Middle, a.Rested - b.Rested, a.Full - b.Full} {
		if d > 1e-9 || d < -1e-9 {
			return false
		}
	}
	return true
}

func TestParallelAndUnknownBatteries(t *testing.T) {
	h := pathtest.Harness(t, `
G1 source + - 0
G2 source + - 51.2
G3 source + - 51.2
W1 G2.+ G3.+
W2 G2.- G3.-
W3 G1.- G1.+
`)
	all := path.New(h).Supplies(cells)
	if got := supply(t, all, "G1.source1").Top(); got != (path.Volts{}) {
		t.Errorf("a battery of unknown chemistry gives %v", got)
	}
	for _, ref := range []string{"G2.source1", "G3.source1"} {
		if got := supply(t, all, ref).Top().Middle; got != 51.2 {
			t.Errorf("%s of a parallel pair stands at %v", ref, got)
		}
	}
}

func TestRingOfBatteriesEnds(t *testing.T) {
	h := pathtest.Harness(t, `
G1 source + - 8
G2 source + - 8
W1 G1.+ G2.-
W2 G2.+ G1.-
`)
	for _, s := range path.New(h).Supplies(cells) {
		if s.Top().Middle > 16 {
			t.Errorf("%s stands at %v", s.Element.Base().Ref(), s.Top().Middle)
		}
	}
}
