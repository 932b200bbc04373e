package figure

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

func shortCircuit(t testing.TB, c *Cart, s *wiring.State, at, to wiring.NodeID) ShortCircuit {
	t.Helper()
	sc, err := c.ShortCircuit(context.Background(), s, at, to, 0)
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

func TestShortCircuitsOfWorkedExamples(t *testing.T) {
	for _, w := range workedExamples(t, "short") {
		t.Run(w.id, func(t *testing.T) {
			b := newBench()
			b.source("G1", w.given(t, "source_V"), w.given(t, "internal_ohm")+w.given(t, "ohm"))
			at := b.node("G1.+")
			if ohms := w.given(t, "load_ohm"); ohms > 0 {
				b.resistor("R1.ohms", "G1.+", "R1.2", ohms)
				at = b.node("R1.2")
			}
			w.check(t, float64(shortCircuit(t, b.cart(), state(), at, b.node("G1.-")).Amps))
		})
	}
}

// The bolted faults of four invented families of carts at half charge: open circuit over
// the ohms at the posts. Invented and rounded figures; computed.
func TestBoltedFaults(t *testing.T) {
	for _, tt := range []struct {
		name     string
		cells    int
		ohms     float64
		volts    quantity.Volt
		kiloamps float64
	}{
		{"48 V separately excited", 16, 10e-3, 52.8, 5.3},
		{"36 V series", 12, 8e-3, 39.6, 5.0},
		{"48 V AC", 16, 7e-3, 52.8, 7.5},
		{"72 V", 24, 14e-3, 79.2, 5.7},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := newBench()
			g := b.source("G1", 0, tt.ohms)
			g.Chemistry, g.Cells = "LFP", tt.cells
			g.Trips = 350 // its protection counts for nothing
			sc, err := b.cart().ShortCircuit(t.Context(), state(), g.A, wiring.NoNode, 0.5)
			if err != nil {
				t.Fatal(err)
			}
			within(t, "current", sc.Amps, quantity.Ampere(1000*tt.kiloamps), 70)
			near(t, "voltage before it", sc.Volts, tt.volts)
			near(t, "resistance", sc.Ohms, quantity.Ohm(tt.ohms))
		})
	}
}

// plant is a small cart: pack, main fuse, contactor that a key works, a pre-charge
// resistor across it, a load, a reducer with a lamp, and a second battery.
func plant() (*bench, *wiring.Control) {
	b := newBench()
	g := b.source("G1", 50, 0.01)
	g.Trips = 300
	b.fuse("F1", 200, 0.0003)
	b.wire("G1.+", "F1.in", 0.0007)
	b.wire("F1.out", "K1.in", 0.003)
	coil := put(b, "K1.coil", &wiring.Coil{A: b.node("K1.coil+"), B: b.node("K1.coil-"), Ohms: 150, PullIn: 30, DropOut: 10})
	put(b, "K1.contact", &wiring.Contact{A: b.node("K1.in"), B: b.node("K1.out"), Coil: coil, Ohms: 0.001})
	key := b.key("S1", "key")
	b.wire("K1.in", "S1.in", 0.1)
	b.wire("S1.out", "K1.coil+", 0.1)
	b.wire("K1.coil-", "G1.-", 0.1)
	b.resistor("R1.ohms", "K1.in", "K1.out", 470)
	put(b, "U1.motor", &wiring.Load{A: b.node("U1.+"), B: b.node("U1.-"), Law: wiring.ConstantPower, Watts: 2000, Works: wiring.Band{Low: 20}})
	b.wire("K1.out", "U1.+", 0.002)
	b.wire("U1.-", "G1.-", 0.003)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("T2.in+"), InB: b.node("T2.in-"), OutA: b.node("T2.out"), OutB: b.node("T2.in-"),
		Volts: 12, Amps: 25, Works: wiring.Band{Low: 30, High: 60},
	})
	b.wire("F1.out", "T2.in+", 0.02)
	b.wire("T2.in-", "G1.-", 0.02)
	b.fuse("F7", 10, 0.008)
	b.wire("T2.out", "F7.in", 0.01)
	b.resistor("E1.lamp", "E1.+", "E1.-", 3)
	b.wire("F7.out", "E1.+", 0.01)
	b.wire("E1.-", "T2.in-", 0.01)
	return b, key
}

func TestShortCircuitFollowsTheState(t *testing.T) {
	b, key := plant()
	c := b.cart()
	near(t, "behind the closed contactor",
		shortCircuit(t, c, state(key), b.node("U1.+"), wiring.NoNode).Amps, 50/0.017)
	near(t, "through the resistor across the open one",
		shortCircuit(t, c, state(), b.node("U1.+"), wiring.NoNode).Amps, 50/(470+0.016))
	near(t, "across the controller",
		shortCircuit(t, c, state(key), b.node("U1.+"), b.node("U1.-")).Amps, 50/0.020)
	near(t, "the other way round",
		shortCircuit(t, c, state(key), b.node("U1.-"), b.node("U1.+")).Amps, -50/0.020)
	same := shortCircuit(t, c, state(key), b.node("U1.+"), b.node("U1.+"))
	if same.Amps != 0 || len(same.Assumes) == 0 {
		t.Errorf("between a node and itself: %+v", same)
	}
}

func TestShortCircuitNamesWhatIsInIt(t *testing.T) {
	b, key := plant()
	sc := shortCircuit(t, b.cart(), state(key), b.node("U1.+"), wiring.NoNode)
	if len(sc.From) != 1 || sc.From[0].Source.Part.Designation != "G1" || math.Abs(float64(sc.From[0].Amps-sc.Amps)) > 1 {
		t.Errorf("it comes from %+v, want all %v from G1", sc.From, sc.Amps)
	}
	if len(sc.Fuses) != 1 || sc.Fuses[0].Part.Designation != "F1" {
		t.Errorf("fuses in it: %v, want F1", sc.Fuses)
	}
	if sc.Limit != 0 || sc.LeftOut != nil {
		t.Errorf("%v of electronics were left out, though none feeds the pack side", sc.Limit)
	}
	if text := fmt.Sprint(sc.Assumes); strings.Contains(text, "no resistance is stated") || strings.Contains(text, "unknown") {
		t.Errorf("everything is stated, but: %s", text)
	}
}

func TestShortCircuitSaysWhatItAssumed(t *testing.T) {
	b := newBench()
	b.source("G1", 50, 0)
	for i := range 8 { // more than are listed
		w := b.wire("G1.+", "F1.in", 0)
		w.Number, w.Pieces = fmt.Sprintf("W%d", i+1), nil
	}
	sc := shortCircuit(t, b.cart(), state(), b.node("G1.+"), wiring.NoNode)
	near(t, "current of a pack that states no resistance", sc.Amps, 5000)
	if text := fmt.Sprint(sc.Assumes); !strings.Contains(text, "G1: no resistance is stated, 10 mohm assumed") {
		t.Errorf("it does not say what was assumed of G1: %s", text)
	}
	far := shortCircuit(t, b.cart(), state(), b.node("F1.in"), wiring.NoNode)
	if text := fmt.Sprint(far.Assumes); !strings.Contains(text, "W1, W2, W3, W4, W5 and 3 more: size or length unknown") {
		t.Errorf("it does not name the wires of unknown size: %s", text)
	}
}

func TestShortCircuitBehindElectronicsHasTheirLimit(t *testing.T) {
	b, key := plant()
	c := b.cart()
	at := b.node("F7.out")
	sc := shortCircuit(t, c, state(key), at, wiring.NoNode)
	if sc.Amps != 0 || sc.Limit != 25 || len(sc.LeftOut) != 1 || sc.LeftOut[0].Base().Ref() != "T2.main" {
		t.Errorf("behind the reducer: %v, limit %v of %v; want 0 A and the 25 A of T2.main", sc.Amps, sc.Limit, sc.LeftOut)
	}
	if back := shortCircuit(t, c, state(key), wiring.NodeID(b.node("T2.in-")), at); back.Limit != 0 {
		t.Errorf("towards its own positive the reducer gives nothing, not %v", back.Limit)
	}
}

// An isolated reducer drives nothing into pack negative.
func TestIsolatedSideHasNoFaultToPackNegative(t *testing.T) {
	b := newBench()
	b.source("G1", 50, 0.01)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("G1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out+"), OutB: b.node("T2.out-"),
		Volts: 12, Amps: 20, Works: wiring.Band{Low: 30, High: 60},
	})
	c := b.cart()
	if sc := shortCircuit(t, c, state(), b.node("T2.out+"), b.node("G1.-")); sc.Limit != 0 || sc.Amps != 0 {
		t.Errorf("to pack negative: %v and up to %v", sc.Amps, sc.Limit)
	}
	if sc := shortCircuit(t, c, state(), b.node("T2.out+"), b.node("T2.out-")); sc.Limit != 20 {
		t.Errorf("to its own negative: up to %v, want 20 A", sc.Limit)
	}
}

func TestShortCircuitErrors(t *testing.T) {
	b, key := plant()
	c := b.cart()
	var unknown *Unknown
	if _, err := c.ShortCircuit(t.Context(), state(), 9999, wiring.NoNode, 0); !errors.As(err, &unknown) {
		t.Errorf("a node that is none: %v", err)
	}
	stopped, stop := context.WithCancel(t.Context())
	stop()
	if _, err := c.ShortCircuit(stopped, state(key), b.node("U1.+"), wiring.NoNode, 0); !errors.Is(err, context.Canceled) {
		t.Errorf("after its context ended: %v", err)
	}
	buzz := newBench()
	buzz.source("G1", 50, 0.01)
	coil := put(buzz, "K1.coil", &wiring.Coil{A: buzz.node("K1.1"), B: buzz.node("G1.-"), Ohms: 100, PullIn: 30, DropOut: 10})
	put(buzz, "K1.contact", &wiring.Contact{A: buzz.node("G1.+"), B: buzz.node("K1.1"), Coil: coil, RestClosed: true})
	var unsettled *Unsettled
	if _, err := buzz.cart().ShortCircuit(t.Context(), state(), buzz.node("G1.+"), wiring.NoNode, 0); !errors.As(err, &unsettled) {
		t.Errorf("a relay that chatters: %v", err)
	}
}

// ladder is a random network of batteries and resistors.
func ladder(t *rapid.T) *bench {
	b := newBench()
	nodes := rapid.IntRange(2, 8).Draw(t, "nodes")
	ohms := func() float64 { return math.Pow(10, rapid.Float64Range(-3, 2).Draw(t, "decade of ohms")) }
	node := func() string { return fmt.Sprintf("X%d.n", rapid.IntRange(1, nodes).Draw(t, "node")) }
	b.source("G1", rapid.Float64Range(10, 60).Draw(t, "volts"), ohms())
	b.wire("G1.-", "X1.n", ohms())
	b.wire("G1.+", "X2.n", ohms())
	for i := 2; i < nodes; i++ {
		b.wire(fmt.Sprintf("X%d.n", i), fmt.Sprintf("X%d.n", i+1), ohms())
	}
	for i := range rapid.IntRange(0, 6).Draw(t, "resistors") {
		b.resistor(fmt.Sprintf("R%d.ohms", i), node(), node(), ohms())
	}
	if rapid.Bool().Draw(t, "second battery") {
		b.source("G2", rapid.Float64Range(10, 60).Draw(t, "volts"), ohms())
		b.wire("G2.-", node(), ohms())
		b.wire("G2.+", node(), ohms())
	}
	return b
}

// Thevenin's theorem: what a network does to any load follows from its open-circuit
// voltage and its short-circuit current.
func TestShortCircuitForetellsEveryLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := ladder(t)
		nodes := len(b.h.Nodes)
		at := wiring.NodeID(rapid.IntRange(1, nodes-1).Draw(t, "at"))
		to := wiring.NodeID(rapid.IntRange(1, nodes-1).Draw(t, "to"))
		load := math.Pow(10, rapid.Float64Range(-3, 3).Draw(t, "decade of load"))
		sc, err := b.cart().ShortCircuit(t.Context(), state(), at, to, 0)
		if err != nil {
			t.Fatal(err)
		}
		if at == to || math.Abs(float64(sc.Volts)) < 1e-3 {
			return
		}
		e := put(b, "R99.load", &wiring.Resistor{A: at, B: to, Ohms: quantity.Ohm(load)})
		p, err := settle.State(t.Context(), b.h.Index(), state(), settle.Options{})
		if err != nil || p.Outcome != settle.Settled {
			t.Fatal(err, p.Outcome)
		}
		want := float64(sc.Volts) / (float64(sc.Ohms) + load)
		if got := float64(p.ElementAmps(e)); math.Abs(got-want) > 1e-6*math.Abs(want)+1e-9 {
			t.Fatalf("a load of %v ohm takes %v A, foretold %v A from %v and %v", load, got, want, sc.Volts, sc.Ohms)
		}
	})
}

func TestShortCircuitIsRepeatable(t *testing.T) {
	b, key := plant()
	first := shortCircuit(t, b.cart(), state(key), b.node("U1.+"), wiring.NoNode)
	again := shortCircuit(t, b.cart(), state(key), b.node("U1.+"), wiring.NoNode)
	if diff := cmp.Diff(fmt.Sprintf("%+v", first.Assumes), fmt.Sprintf("%+v", again.Assumes)); diff != "" || first.Amps != again.Amps {
		t.Errorf("%v and %v: %s", first.Amps, again.Amps, diff)
	}
}
