package figure

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// charging is a pack with a charger on its posts.
func charging(capacity quantity.AmpereHour, amps quantity.Ampere) (*bench, *wiring.Source) {
	b := newBench()
	g := packOf(b, capacity)
	put(b, "T1.charger", &wiring.Charger{A: g.A, B: g.B, Amps: amps, End: 58.4, L: wiring.NoNode, N: wiring.NoNode})
	return b, g
}

// Charge hours are missing ampere-hours over charger amperes, plus the taper: common
// practice, no published source. What the taper takes is computed from our own model of it.
func TestChargeTime(t *testing.T) {
	b, g := charging(110, 18)
	g.Charge = 50
	c, err := b.cart().ChargeTime(t.Context(), state(), 0.5)
	if err != nil {
		t.Fatal(err)
	}
	const net = 18 - 0.015
	near(t, "current", c.Amps, net)
	near(t, "missing", c.Missing, 55)
	near(t, "at constant current", c.Constant, 3600*(0.95-0.5)*110/net)
	near(t, "taper", c.Tapering, quantity.Second(3600*5.5/(net-5.5)*math.Log(net/5.5)))
	near(t, "in all", c.Total(), c.Constant+c.Tapering)
	if c.Limit != 50 || len(c.Assumes) != 3 {
		t.Errorf("limit %v, assumptions %v", c.Limit, c.Assumes)
	}
}

// A charger that gives less than the end current never tapers.
func TestSlowChargerNeverTapers(t *testing.T) {
	b, _ := charging(160, 5)
	c, err := b.cart().ChargeTime(t.Context(), state(), 0.2)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "in all", c.Total(), 3600*0.8*160/(5-0.015))
	near(t, "taper", c.Tapering, 0)
}

func TestChargeTimeOfLeadAcid(t *testing.T) {
	b, g := charging(170, 17)
	g.Chemistry, g.Cells = "lead-acid", 24
	c, err := b.cart().ChargeTime(t.Context(), state(), 0.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "charged", c.Missing, quantity.AmpereHour(1.15*85))
	if c.Tapering <= c.Constant {
		t.Errorf("a lead-acid pack spends %v at constant current and only %v in the taper", c.Constant, c.Tapering)
	}
}

// The taper, added up step by step: the current falls in proportion to what is missing.
func TestTaperStepByStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(0, 0.999).Draw(t, "from")
		amps := rapid.Float64Range(6, 40).Draw(t, "amps")
		c := ChargeTime{
			Pack: &wiring.Source{Capacity: 110}, From: quantity.Ratio(from), Amps: quantity.Ampere(amps),
			Taper: tapers[0],
		}
		c.reckon()
		seconds, steps := 0.0, 20000
		for i := range steps {
			soc := from + (1-from)*(float64(i)+0.5)/float64(steps)
			i := 5.5 + (amps-5.5)*min(1, (1-soc)/0.05)
			seconds += 3600 * 110 * (1 - from) / float64(steps) / i
		}
		if got := float64(c.Total()); math.Abs(got-seconds) > 1e-4*seconds+0.01 {
			t.Fatalf("%v s, step by step %v s", got, seconds)
		}
	})
}

func TestChargeTimeErrors(t *testing.T) {
	b, g := charging(110, 18)
	c := b.cart()
	for _, tt := range []struct {
		change func()
		from   quantity.Ratio
		want   string
	}{
		{func() {}, 1.2, "test: 120 % is no state of charge"},
		{func() { g.Chemistry = "salt" }, 0.5, "G1: no chemistry whose end of charge is known"},
		{func() { g.Chemistry, g.Capacity = "LFP", 0 }, 0.5, "G1: no capacity is stated"},
		{func() { g.Capacity = 110; b.part("T1").Elements = nil; c = b.cart() }, 0.5, `G1: nothing charges it in the state "test"`},
	} {
		tt.change()
		var unknown *Unknown
		if _, err := c.ChargeTime(t.Context(), state(), tt.from); !errors.As(err, &unknown) || err.Error() != tt.want {
			t.Errorf("%v, want %s", err, tt.want)
		}
	}
}
