package settle

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
)

// current is what a law carries at a voltage.
func (l law) current(v float64) float64 {
	i := l.siemens*(v-l.emf) + l.amps
	if l.watts != 0 {
		i += l.watts / v
	}
	return i
}

// rest goes from piece to piece at a fixed voltage until it is inside of one.
func rest(t *rapid.T, b bend, on func(piece) law, v float64, now piece) law {
	for range 5 {
		excess, to := b.outside(v, on(now).current(v), now)
		if excess <= outsideTolerance {
			return on(now)
		}
		now = to
	}
	t.Fatalf("at %v V no piece is the right one", v)
	return law{}
}

// From whatever piece one begins, at a given voltage the pieces of a consumer lead to its
// characteristic as the format has it.
func TestConsumerIsOneCharacteristic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(1, 40).Draw(t, "low")
		watts := rapid.Float64Range(0, 500).Draw(t, "watts")
		amps := rapid.Float64Range(0, 10).Draw(t, "amps")
		polarised := rapid.Bool().Draw(t, "polarised")
		v := rapid.Float64Range(-80, 80).Draw(t, "v")
		b := newBand(low, watts, amps, polarised)
		want := v * (watts/(low*low) + amps/low)
		switch {
		case v < 0 && polarised:
			want = 0
		case math.Abs(v) >= low:
			want = watts/v + math.Copysign(amps, v)
		}
		last := mirrored // of the pieces that it has
		if polarised {
			last = reversed
		}
		for _, from := range []piece{upper, lower, last, b.start(v, upper)} {
			if got := rest(t, b, b.law, v, from).current(v); math.Abs(got-want) > 1e-9*math.Abs(want)+4*outsideTolerance*(watts/low+amps) {
				t.Fatalf("from piece %d: %v A at %v V, want %v", from, got, v, want)
			}
		}
	})
}

// The pieces of a regulated output lead to: its voltage behind its resistance, at most its
// current, never taking any.
func TestOutputIsOneCharacteristic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := regulator{volts: rapid.Float64Range(3, 60).Draw(t, "volts"), ohms: 0.005, amps: rapid.Float64Range(0.1, 40).Draw(t, "amps")}
		v := r.volts + rapid.OneOf(rapid.Float64Range(-60, 20), rapid.Float64Range(-0.3, 0.1)).Draw(t, "beyond")
		want := min(max((r.volts-v)/r.ohms, 0), r.amps)
		for _, from := range []piece{regulating, limiting, backed} {
			got := -rest(t, r, r.law, v, from).current(v)
			if math.Abs(got-want) > 4*outsideTolerance*(r.volts/r.ohms+r.amps) {
				t.Fatalf("from piece %d: delivers %v A at %v V, want %v", from, got, v, want)
			}
		}
	})
}

// Of two diodes that ought to conduct the one farther beyond its drop goes first.
func TestTheFarthestOutsideGoesFirst(t *testing.T) {
	b := newBench()
	for i, volts := range []float64{2, 5, 3} {
		part := strconv.Itoa(i + 1)
		b.battery("G"+part, volts, 0.01)
		put(b, "V"+part+".diode", &wiring.Diode{A: b.node("V" + part + ".a"), B: b.node("V" + part + ".k")})
		b.wire("G"+part+".+", "V"+part+".a", 0.01)
		b.wire("G"+part+".-", "V"+part+".k", 0.01)
	}
	n := Compile(b.h)
	s := newSolving(n)
	s.prepare(&wiring.State{}, Options{})
	s.behaveAll()
	s.begin()
	s.unstrand()
	if !s.newton() {
		t.Fatal("no answer")
	}
	out := s.outside()
	if len(out) != 1 || refOf(n.bendings[out[0].bend].model.itself().element) != "V2.diode" || out[0].to != conducting {
		t.Errorf("outside are %v", out)
	}
}

// A load of constant current that a supply cannot feed has nothing else to close its
// circuit: it becomes a resistor.
func TestConstantCurrentBeyondTheLimitOfItsSupply(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	c := b.reducer("T2", "G1.+", "G1.-", "T2.out", "G1.-")
	c.Amps = 1
	fan := put(b, "M1.fan", &wiring.Load{
		A: b.node("T2.out"), B: b.node("G1.-"), Law: wiring.ConstantCurrent, Amps: 2, Works: wiring.Band{Low: 10},
	})
	p := b.settle(t, nil)
	settled(t, p)
	near(t, "voltage", float64(p.ElementVolts(fan)), 1*10/2.0)
	near(t, "current", float64(p.ElementAmps(fan)), 1)
	if len(p.Overloaded()) != 1 {
		t.Errorf("overloaded: %v", refs(p.Overloaded()))
	}
}
