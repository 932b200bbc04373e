package settle

import (
	"fmt"
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// ladder is a battery at one end of two rails of so many wires in all, with a rung at each
// step: a resistor, at every tenth a lamp of constant power.
func ladder(wires int) *bench {
	b := newBench()
	b.battery("G1", 48, 0.01)
	plus, minus := "G1.+", "G1.-"
	// All lamps together would take half of the least that such a ladder can carry.
	steps := max(wires/2, 1)
	ohms := 0.5 / float64(steps)
	for i := range steps {
		part := fmt.Sprintf("X%d", i+1)
		b.wire(plus, part+".1", ohms)
		b.wire(minus, part+".2", ohms)
		plus, minus = part+".1", part+".2"
		if i%10 == 9 {
			put(b, part+".lamp", &wiring.Load{
				A: b.node(plus), B: b.node(minus), Law: wiring.ConstantPower, Polarised: true,
				Watts: quantity.Watt(3000 / float64(steps)), Works: wiring.Band{Low: 10},
			})
		} else {
			b.resistance(part+".rung", plus, minus, 100*float64(steps))
		}
	}
	return b
}

// The first rung of a ladder of equal resistances has a closed form: the ladder of n steps
// as seen from its beginning, r(n) = 2w + rung r(n-1) / (rung + r(n-1)).
func TestLadderOfResistors(t *testing.T) {
	const wire, rung, steps = 0.05, 40.0, 200
	b := newBench()
	b.battery("G1", 48, 0.01)
	plus, minus := "G1.+", "G1.-"
	seen := math.Inf(1)
	for i := range steps {
		part := fmt.Sprintf("X%d", i+1)
		b.wire(plus, part+".1", wire)
		b.wire(minus, part+".2", wire)
		plus, minus = part+".1", part+".2"
		b.resistance(part+".rung", plus, minus, rung)
		beyond := rung
		if i > 0 {
			beyond = rung * seen / (rung + seen)
		}
		seen = 2*wire + beyond
	}
	p := b.settle(t, nil)
	settled(t, p)
	near(t, "current", float64(p.ElementAmps(b.part("G1").Elements[0])), -48/(0.01+seen))
}

// Work grows with the number of wires, not with its square: the pattern of a ladder fills
// in nothing worth speaking of.
func TestLadderFillsInLittle(t *testing.T) {
	n := Compile(ladder(10_000).h)
	if fill, size := n.pattern.Fill(), n.pattern.Size(); fill > 2*size {
		t.Errorf("%d entries for %d nodes", fill, size)
	}
}

func TestLongLadderSettles(t *testing.T) {
	p := ladder(20_000).settle(t, nil)
	settled(t, p)
	if p.Rounds != 1 {
		t.Errorf("%d rounds", p.Rounds)
	}
}

// BenchmarkSettle settles ladders of compiled networks; ns/wire is what one wire costs.
func BenchmarkSettle(b *testing.B) {
	for _, wires := range []int{100, 1000, 10_000, 100_000} {
		n := Compile(ladder(wires).h)
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			for b.Loop() {
				if p, err := n.Settle(b.Context(), &wiring.State{}, Options{}); err != nil || p.Outcome != Settled {
					b.Fatal(p.Outcome, err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(wires), "ns/wire")
		})
	}
}

// BenchmarkCompile compiles the same ladders.
func BenchmarkCompile(b *testing.B) {
	for _, wires := range []int{100, 1000, 10_000, 100_000} {
		h := ladder(wires).h
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			for b.Loop() {
				Compile(h)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(wires), "ns/wire")
		})
	}
}
