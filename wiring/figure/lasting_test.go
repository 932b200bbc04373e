package figure

import (
	"context"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// packOf adds a 16S LFP pack with electronics of 15 mA.
func packOf(b *bench, capacity quantity.AmpereHour) *wiring.Source {
	g := b.source("G1", 0, 0.007)
	g.Chemistry, g.Cells, g.Capacity = "LFP", 16, capacity
	put(b, "G1.protection", &wiring.Load{A: g.A, B: g.B, Law: wiring.ConstantCurrent, Amps: 0.015, Works: wiring.Band{Low: 20}})
	return g
}

// A reducer that is always on and draws 90 mA, with 15 mA of the pack, empties 160 Ah from
// 80 % in 51 days. Invented and rounded figures; computed.
func TestParked(t *testing.T) {
	b := newBench()
	packOf(b, 160)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("G1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out"), OutB: b.node("G1.-"),
		Volts: 12.5, Amps: 40, Works: wiring.Band{Low: 30, High: 64}, Idle: 0.09,
	})
	b.h.States = []*wiring.State{{Name: "key off"}}
	l, err := b.cart().Parked(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	within(t, "days", l.Days(), 51, 0.5)
	near(t, "current", l.Amps, 0.105)
	near(t, "charge", l.Used, 128)
	if l.To != 0 || l.StoppedBy != nil || len(l.Assumes) == 0 {
		t.Errorf("it ends at %v, stopped by %v", l.To, l.StoppedBy)
	}
	if len(l.Draws) != 2 || l.Draws[0].Part.Designation != "T2" || l.Draws[1].Part.Designation != "G1" {
		t.Fatalf("draws are %+v", l.Draws)
	}
	within(t, "draw of the reducer", l.Draws[0].Amps, 0.09, 1e-4)
	within(t, "draw of the pack", l.Draws[1].Amps, 0.015, 1e-4)
}

// Lights of constant power use energy, not charge: the hours are ∫ V dQ / P over the
// voltage curve of the handbook.
func TestHoursOfLights(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		watts := rapid.Float64Range(5, 300).Draw(t, "watts")
		from := rapid.Float64Range(0.3, 1).Draw(t, "from")
		to := rapid.Float64Range(0, 0.25).Draw(t, "to")
		b := newBench()
		g := b.source("G1", 0, 1e-6)
		g.Chemistry, g.Cells, g.Capacity = "LFP", 16, 110
		put(b, "E1.lamp", &wiring.Load{A: g.A, B: g.B, Law: wiring.ConstantPower, Watts: quantity.Watt(watts), Works: wiring.Band{Low: 20}})
		l, err := b.cart().Lasting(t.Context(), state(), quantity.Ratio(from), quantity.Ratio(to))
		if err != nil {
			t.Fatal(err)
		}
		pack, err := handbook.Default().Pack("LFP", 16)
		if err != nil {
			t.Fatal(err)
		}
		want, steps := 0.0, 2000
		for i := range steps {
			soc := to + (from-to)*(float64(i)+0.5)/float64(steps)
			want += float64(pack.RestVolts(quantity.Ratio(soc))) * 110 * (from - to) / float64(steps) / watts
		}
		if math.Abs(l.Hours()-want) > 0.01*want {
			t.Fatalf("%v hours, want %v", l.Hours(), want)
		}
	})
}

// A lamp with a lockout of 50 V goes out where the curve has 50 V, and nothing after that
// counts as hours of light.
func TestLightsThatGoOutBeforeThePackDoes(t *testing.T) {
	b := newBench()
	g := b.source("G1", 0, 1e-6)
	g.Chemistry, g.Cells, g.Capacity = "LFP", 16, 110
	lamp := put(b, "E1.lamp", &wiring.Load{A: g.A, B: g.B, Law: wiring.ConstantCurrent, Amps: 2, Works: wiring.Band{Low: 50}})
	l, err := b.cart().Lasting(t.Context(), state(), 0.8, 0)
	if err != nil {
		t.Fatal(err)
	}
	pack, err := handbook.Default().Pack("LFP", 16)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "voltage where it ends", pack.RestVolts(l.To), 50, 0.05)
	within(t, "hours", l.Hours(), float64(0.8-l.To)*110/2, 0.05)
	if len(l.StoppedBy) != 1 || l.StoppedBy[0] != lamp.Part {
		t.Errorf("stopped by %v, want E1", l.StoppedBy)
	}
}

func TestNothingDrawnLastsForEver(t *testing.T) {
	b := newBench()
	g := packOf(b, 100)
	g.Part.Elements = g.Part.Elements[:1]
	l, err := b.cart().Lasting(t.Context(), state(), 0.8, 0)
	if err != nil || !math.IsInf(float64(l.Lasts), 1) {
		t.Errorf("it lasts %v: %v", l.Lasts, err)
	}
}

func TestLastingErrors(t *testing.T) {
	b := newBench()
	g := packOf(b, 0)
	c := b.cart()
	var unknown *Unknown
	if _, err := c.Lasting(t.Context(), state(), 0.8, 0); !errors.As(err, &unknown) || err.Error() != "G1: no capacity is stated" {
		t.Errorf("without a capacity: %v", err)
	}
	g.Capacity = 100
	for _, way := range [][2]quantity.Ratio{{0.5, 0.8}, {0.5, 0.5}, {1.1, 0}, {0.5, -0.1}, {quantity.Ratio(math.NaN()), 0}} {
		if _, err := c.Lasting(t.Context(), state(), way[0], way[1]); !errors.As(err, &unknown) {
			t.Errorf("from %v to %v: %v", way[0], way[1], err)
		}
	}
	if _, err := c.Parked(t.Context()); !errors.As(err, &unknown) {
		t.Errorf("parked without such a state: %v", err)
	}
	if _, err := newBench().cart().Lasting(t.Context(), state(), 0.8, 0); !errors.As(err, &unknown) {
		t.Errorf("without a pack: %v", err)
	}
	stopped, stop := context.WithCancel(t.Context())
	stop()
	if _, err := c.Lasting(stopped, state(), 0.8, 0); !errors.Is(err, context.Canceled) {
		t.Errorf("after its context ended: %v", err)
	}
}

// The draws of an example cart add up to what its pack gives, but for the heat of wires:
// nothing to speak of while it is parked, up to 4 % with its lights on. Invented carts.
func TestDrawsAddUp(t *testing.T) {
	for _, name := range jobs {
		c := New(example(t, name), nil)
		for s, wires := range map[string]float64{"key off": 0.001, "ready": 0.04} {
			p, err := c.point(t.Context(), c.harness.State(s), 0)
			if err != nil {
				t.Fatal(err)
			}
			sum, whole := quantity.Ampere(0), -p.ElementAmps(c.pack())
			for _, d := range c.draws(p, c.pack()) {
				sum += d.Amps
			}
			if missing := float64((whole - sum) / whole); missing < -1e-6 || missing > wires {
				t.Errorf("%s, %s: the parts draw %v of %v", name, s, sum, whole)
			}
		}
	}
}
