package settle

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// randomNetwork is a few batteries and a tangle of wires and resistors over eleven decades.
// With all it also holds consumers, diodes, converters and switches.
//
// ngspice, which has ordinary numbers, is given resistors up to 100 kohm only.
func randomNetwork(t *rapid.T, all bool, top float64) *bench {
	b := newBench()
	nodes := rapid.IntRange(2, 12).Draw(t, "nodes")
	node := func(what string) string {
		return fmt.Sprintf("X%d.n", rapid.IntRange(1, nodes).Draw(t, what))
	}
	ohms := func(low, high float64) float64 {
		return math.Pow(10, rapid.Float64Range(low, high).Draw(t, "decade of ohms"))
	}
	for i := 1; i <= nodes; i++ {
		b.node(fmt.Sprintf("X%d.n", i))
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "batteries") {
		b.battery(fmt.Sprintf("G%d", i+1), rapid.Float64Range(20, 60).Draw(t, "volts"), ohms(-3, -1))
		b.wire(fmt.Sprintf("G%d.+", i+1), node("plus"), ohms(-4, -2))
		b.wire(fmt.Sprintf("G%d.-", i+1), node("minus"), ohms(-4, -2))
	}
	for range rapid.IntRange(1, 2*nodes).Draw(t, "wires") {
		b.wire(node("from"), node("to"), ohms(-4, 0))
	}
	for i := range rapid.IntRange(0, nodes).Draw(t, "resistors") {
		ref := fmt.Sprintf("R%d", i+1)
		b.resistance(ref+".ohms", ref+".1", ref+".2", ohms(0, top))
		b.wire(node("from"), ref+".1", ohms(-4, -2))
		b.wire(ref+".2", node("to"), ohms(-4, -2))
	}
	if all {
		b.addBends(t, node, ohms)
	}
	return b
}

// addBends adds what has more than one piece.
func (b *bench) addBends(t *rapid.T, node func(string) string, ohms func(low, high float64) float64) {
	place := func(letter string, i int) (ref, a, z string) {
		ref = fmt.Sprintf("%s%d", letter, i+1)
		b.wire(node("from"), ref+".a", ohms(-3, -1))
		b.wire(ref+".z", node("to"), ohms(-3, -1))
		return ref, ref + ".a", ref + ".z"
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "loads") {
		ref, a, z := place("E", i)
		put(b, ref+".load", &wiring.Load{
			A: b.node(a), B: b.node(z), Law: rapid.SampledFrom([]wiring.LoadLaw{1, 2, 3}).Draw(t, "law"),
			Watts: quantity.Watt(rapid.Float64Range(1, 300).Draw(t, "watts")),
			Amps:  quantity.Ampere(rapid.Float64Range(0.01, 10).Draw(t, "amps")),
			Ohms:  quantity.Ohm(rapid.Float64Range(1, 100).Draw(t, "ohms")),
			Works: wiring.Band{Low: quantity.Volt(rapid.Float64Range(5, 30).Draw(t, "low"))}, Polarised: rapid.Bool().Draw(t, "polarised"),
		})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "diodes") {
		ref, a, z := place("V", i)
		put(b, ref+".diode", &wiring.Diode{A: b.node(a), B: b.node(z)})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "converters") {
		ref, a, z := place("T", i)
		put(b, ref+".main", &wiring.Converter{
			InA: b.node(a), InB: b.node(z), OutA: b.node(ref + ".out"), OutB: b.node(z),
			Volts: 12, Amps: quantity.Ampere(rapid.Float64Range(1, 30).Draw(t, "limit")),
			Works: wiring.Band{Low: 20, High: 70}, Idle: 0.02, Standby: 0.001,
		})
		b.wire(ref+".out", node("12 V"), ohms(-2, 1))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "relays") {
		ref := fmt.Sprintf("K%d", i+1)
		b.relay(ref, rapid.Float64Range(10, 200).Draw(t, "coil"), rapid.Float64Range(10, 30).Draw(t, "pull-in"), 5)
		for _, terminal := range []string{".86", ".85", ".30", ".87", ".87a"} {
			b.wire(node("relay"), ref+terminal, ohms(-2, 0))
		}
	}
}

// Whatever is wired to whatever, there is an end, and where there is an answer it obeys
// Kirchhoff's laws and loses no power.
func TestAnyNetworkComesToAnEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := randomNetwork(t, true, 7)
		p, err := State(t.Context(), b.h, &wiring.State{}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if p.Outcome == NoSolution {
			t.Fatalf("no solution: %s", p.Why)
		}
		if p.Residual.KCL > enough || p.Residual.Power > enough {
			t.Fatalf("%v with residuals %v", p.Outcome, p.Residual)
		}
		kirchhoff(t, p)
	})
}

// kirchhoff adds up the currents of every terminal again, from what the point says of
// wires and elements, and the voltages around every wire.
func kirchhoff(t *rapid.T, p *Point) {
	sum := make([]float64, len(p.net.harness.Nodes))
	largest := make([]float64, len(sum))
	add := func(a, b wiring.NodeID, amps float64) {
		sum[a] += amps
		sum[b] -= amps
		for _, n := range []wiring.NodeID{a, b} {
			largest[n] = max(largest[n], math.Abs(amps))
		}
	}
	for _, w := range p.net.harness.Wires {
		pair := w.Joins()[0]
		amps := float64(p.WireAmps(w, 0))
		add(pair[0], pair[1], amps)
		if ohms, _ := p.WireOhms(w); pair[0] != pair[1] && math.Abs(float64(ohms)) > least {
			drop := float64(p.Across(pair[0], pair[1]))
			if math.Abs(drop-amps*float64(ohms)) > 1e-9*math.Abs(drop)+2*noise {
				t.Fatalf("wire %s of %v drops %v at %v A", w.Number, ohms, drop, amps)
			}
		}
	}
	for _, part := range p.net.harness.Parts {
		for _, e := range part.Elements {
			amps := float64(p.ElementAmps(e))
			switch e := e.(type) {
			case *wiring.Resistor:
				add(e.A, e.B, amps)
			case *wiring.Source:
				add(e.A, e.B, amps)
			case *wiring.Load:
				add(e.A, e.B, amps)
			case *wiring.Diode:
				add(e.A, e.B, amps)
			case *wiring.Coil:
				add(e.A, e.B, amps)
			case *wiring.Contact:
				add(e.A, e.B, amps)
			case *wiring.Converter:
				add(e.InA, e.InB, float64(p.InputAmps(e)))
				add(e.OutB, e.OutA, amps)
			}
		}
	}
	for n, amps := range sum {
		if math.Abs(amps) > 1e-9*largest[n]+10*noise {
			t.Fatalf("%v A are left over at %v, of %v A", amps, p.net.harness.Nodes[n], largest[n])
		}
	}
}

// The same harness gives the same point, whoever settles it and how often.
func TestSettlingIsRepeatable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := randomNetwork(t, true, 7)
		n := Compile(b.h)
		points := make(chan *Point, 4)
		for range cap(points) {
			go func() {
				p, _ := n.Settle(t.Context(), &wiring.State{}, Options{})
				points <- p
			}()
		}
		first := <-points
		for range cap(points) - 1 {
			if p := <-points; !same(p, first) {
				t.Fatal("two settlings of one state differ")
			}
		}
	})
}

func same(p, q *Point) bool {
	for i := range p.hi {
		if p.hi[i] != q.hi[i] || p.lo[i] != q.lo[i] {
			return false
		}
	}
	return p.Outcome == q.Outcome && p.Why == q.Why && p.Rounds == q.Rounds
}

func TestLinearNetworksAgreeWithSpice(t *testing.T) {
	for seed := range 20 {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			b := rapid.Custom(func(t *rapid.T) *bench { return randomNetwork(t, false, 5) }).Example(seed)
			compareWithSpice(t, b.settle(t, nil))
		})
	}
}

func TestBentNetworksAgreeWithSpice(t *testing.T) {
	for seed := range 40 {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			b := rapid.Custom(func(t *rapid.T) *bench { return randomNetwork(t, true, 5) }).Example(seed)
			p := b.settle(t, nil)
			if p.Outcome != Settled || len(p.Overloaded()) > 0 {
				t.Skipf("%v: ngspice has no answer to compare with", p.Outcome)
			}
			compareWithSpice(t, p)
		})
	}
}
