package stack_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/stack"
	"pgregory.net/rapid"
)

// post makes a stud with wires of the given sizes on it, W1 first; a zero size is unknown.
func post(sizes ...quantity.Size) *wiring.Terminal {
	t := &wiring.Terminal{Name: "+", Part: &wiring.Part{Designation: "G1"}, Form: wiring.Form{Type: wiring.Stud, Size: "M8"}}
	for i, size := range sizes {
		w := &wiring.Wire{Number: "W" + string(rune('1'+i)), Pieces: []wiring.Piece{{Size: quantity.Gauge(18)}, {Size: size}}}
		w.To.Terminal = t
		t.Wires = append(t.Wires, w)
	}
	return t
}

func names(lugs []stack.Lug) []string {
	var list []string
	for _, l := range lugs {
		list = append(list, l.Wire.Name())
	}
	return list
}

func TestOrder(t *testing.T) {
	for _, c := range []struct {
		name  string
		sizes []quantity.Size
		amps  stack.Amps
		want  []string
	}{
		{"largest first, by the piece at the post", []quantity.Size{quantity.Gauge(16), quantity.Gauge(2), quantity.Gauge(6), quantity.Gauge(-1)}, nil, []string{"W4", "W2", "W3", "W1"}},
		{"equal sizes by current", []quantity.Size{quantity.Gauge(6), quantity.Gauge(6)}, func(w *wiring.Wire) quantity.Ampere {
			return map[string]quantity.Ampere{"W1": 1, "W2": 20}[w.Number]
		}, []string{"W2", "W1"}},
		{"equal all through by number", []quantity.Size{quantity.Gauge(6), quantity.Gauge(6)}, nil, []string{"W1", "W2"}},
		{"AWG and SAE of one number are not one size", []quantity.Size{{System: quantity.SAE, Number: 6}, quantity.Gauge(6)}, nil, []string{"W2", "W1"}},
		{"unknown last", []quantity.Size{{}, quantity.Gauge(18)}, nil, []string{"W2", "W1"}},
		{"none", nil, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, names(stack.Order(post(c.sizes...), handbook.Default(), c.amps))); diff != "" {
				t.Errorf("order (-want +got):\n%s", diff)
			}
		})
	}
}

func TestStatedOrderComesFirst(t *testing.T) {
	terminal := post(quantity.Gauge(16), quantity.Gauge(2))
	h := &wiring.Harness{Stacks: []wiring.Stack{{Terminal: terminal, Wires: []*wiring.Wire{terminal.Wires[0], terminal.Wires[1]}}}}
	lugs := stack.Of(h, terminal, handbook.Default(), nil)
	if diff := cmp.Diff([]string{"W1", "W2"}, names(lugs)); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
	inner, outer, found := stack.Misplaced(lugs)
	if !found || inner.Wire.Number != "W1" || outer.Wire.Number != "W2" || !inner.Stated {
		t.Errorf("misplaced: %v under %v, %v", inner.Wire, outer.Wire, found)
	}
	if got := names(stack.Of(&wiring.Harness{}, terminal, handbook.Default(), nil)); got[0] != "W2" {
		t.Errorf("without a statement: %v", got)
	}
}

// TestOrderIsNeverMisplaced holds the two halves of the package to each other.
func TestOrderIsNeverMisplaced(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		sizes := rapid.SliceOfN(rapid.Custom(func(rt *rapid.T) quantity.Size {
			return quantity.Gauge(rapid.IntRange(-3, 18).Draw(rt, "gauge"))
		}), 0, 8).Draw(rt, "sizes")
		terminal := post(sizes...)
		lugs := stack.Order(terminal, handbook.Default(), nil)
		if len(lugs) != len(sizes) {
			rt.Fatalf("%d lugs of %d", len(lugs), len(sizes))
		}
		if inner, outer, found := stack.Misplaced(lugs); found {
			rt.Fatalf("%v sits under %v", inner.Size, outer.Size)
		}
	})
}
