package settle

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
)

// moved is a wire whose end was landed somewhere else: open where it was, and a bridge
// from its other end.
func moved(h *wiring.Harness, wire, from, to string) []Defect {
	w := h.Wire(wire)
	far := w.Other(h.Terminal(from)).Terminal
	return []Defect{OpenWire(w), Bridge(far.Node, h.Terminal(to).Node, 0.01)}
}

// reversedPart is a part of two wires whose ends were landed the wrong way round.
func reversedPart(h *wiring.Harness, wires, ends, lands [2]string) []Defect {
	return []Defect{
		OpenWire(h.Wire(wires[0])), OpenWire(h.Wire(wires[1])),
		Bridge(h.Terminal(ends[0]).Node, h.Terminal(lands[1]).Node, 0.01),
		Bridge(h.Terminal(ends[1]).Node, h.Terminal(lands[0]).Node, 0.01),
	}
}

// element finds "A1.fuse1".
func element(t testing.TB, h *wiring.Harness, part, name string) wiring.Element {
	t.Helper()
	for _, e := range h.Part(part).Elements {
		if e.Base().Name == name {
			return e
		}
	}
	t.Fatalf("%s has no element %s", part, name)
	return nil
}

// The mistakes that are made on a cart do on TP-14 what they do on a cart. What is wanted
// is common knowledge of the trade; no published source.
func TestMiswiredCart(t *testing.T) {
	h := cart(t, "tern-point-14")
	n := Compile(h)
	node := func(ref string) wiring.NodeID { return h.Terminal(ref).Node }
	join := func(a, b string) Defect { return Bridge(node(a), node(b), 0) }
	main := element(t, h, "K1", "contact")
	for _, c := range []struct {
		name     string
		state    string
		defects  []Defect
		outcome  Outcome
		traction bool
		twelve   bool // the reducer's main converter runs
		opened   []string
	}{
		{"sound, driving", "driving", nil, Settled, true, true, nil},
		{"sound, key off", "key off", nil, Settled, false, false, nil},
		{"interlock lead capped", "driving", []Defect{OpenWire(h.Wire("W37"))}, Settled, false, true, nil},
		{"interlock lead on negative", "driving", moved(h, "W37", "F4.out", "G1.-"), Settled, false, true, nil},
		{"interlock lead on the solenoid's far side", "driving", moved(h, "W37", "F4.out", "K1.out"), Settled, true, true, nil},
		// The pre-charge from the key keeps the enable up: no drive does not mean no lights.
		{"main negative off", "driving", []Defect{OpenWire(h.Wire("W7"))}, Settled, false, true, nil},
		{"enable on the battery side", "key off", moved(h, "W62", "K1.out", "K1.in"), Settled, false, true, nil},
		{"pre-charge straight across the solenoid", "key off", moved(h, "W21", "X13", "K1.in"), Settled, false, true, nil},
		// The pre-charge has no diode: the controller side feeds the key circuit backwards,
		// until the coil driver closes and pulls it down again.
		{"main contact welded", "key off", []Defect{ClosedElement(main)}, Chatters, false, true, nil},
		// The key circuit is dead with its fuse; the reducer's enable with it.
		{"diode reversed", "ready",
			reversedPart(h, [2]string{"W23", "W24"}, [2]string{"V1.k", "V1.a"}, [2]string{"K1.coil+", "K1.coil-"}),
			Settled, false, false, []string{"F11.fuse"}},
		{"channel shorted", "ready", []Defect{join("A1.1", "A1.n")}, Settled, false, true, []string{"A1.fuse1"}},
		{"pack shorted", "ready", []Defect{join("G1.+", "G1.-")}, Settled, false, false, []string{"G1.source"}},
		{"traction cable on the frame of the pack", "driving", []Defect{join("K1.out", "G1.-")}, Settled, false, false, []string{"F1.fuse"}},
		{"reducer fed through the pre-charge", "ready",
			append(moved(h, "W60", "F3.out", "K1.out"), OpenElement(main)), Chatters, false, false, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := n.With(c.defects...).Settle(t.Context(), h.State(c.state), Options{})
			if err != nil {
				t.Fatal(err)
			}
			checkResiduals(t, p)
			if p.Outcome != c.outcome {
				t.Fatalf("%v: %s", p.Outcome, p.Why)
			}
			if p.Traction() != c.traction {
				t.Errorf("traction %v, want %v", p.Traction(), c.traction)
			}
			if running := p.Holds(element(t, h, "T2", "main")); c.outcome == Settled && running != c.twelve {
				t.Errorf("reducer running %v, want %v", running, c.twelve)
			}
			if d := cmp.Diff(c.opened, refs(p.Opened())); d != "" {
				t.Error(d)
			}
		})
	}
}
