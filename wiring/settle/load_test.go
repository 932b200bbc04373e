package settle

import (
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// loaded feeds a load E1 from a battery through 0.5 ohm in all.
func loaded(volts float64, e *wiring.Load) (*bench, *wiring.Load) {
	b := newBench()
	b.battery("G1", volts, 0.1)
	e.A, e.B = b.node("E1.+"), b.node("E1.-")
	put(b, "E1.lamp", e)
	b.wire("G1.+", "E1.+", 0.2)
	b.wire("G1.-", "E1.-", 0.2)
	return b, e
}

func TestLoadLaws(t *testing.T) {
	const r = 0.5
	high := func(volts, watts float64) float64 { // current at the high-voltage root
		v := volts/2 + math.Sqrt(volts*volts/4-watts*r)
		return watts / v
	}
	band := wiring.Band{Low: 10, High: 15}
	for _, c := range []struct {
		name  string
		volts float64
		load  wiring.Load
		amps  float64
		on    bool
	}{
		{"resistive", 12, wiring.Load{Law: wiring.Resistive, Ohms: 5.5}, 2, true},
		{"resistive reversed", -12, wiring.Load{Law: wiring.Resistive, Ohms: 5.5}, -2, true},
		{"resistive reversed, polarised", -12, wiring.Load{Law: wiring.Resistive, Ohms: 5.5, Polarised: true}, 0, false},
		{"resistive without voltage", 0, wiring.Load{Law: wiring.Resistive, Ohms: 5.5}, 0, false},
		{"amperes", 12, wiring.Load{Law: wiring.ConstantCurrent, Amps: 2, Works: band}, 2, true},
		{"amperes, under its band", 8, wiring.Load{Law: wiring.ConstantCurrent, Amps: 2, Works: band}, 8 / (5 + r), false},
		{"amperes reversed", -12, wiring.Load{Law: wiring.ConstantCurrent, Amps: 2, Works: band}, -2, true},
		{"amperes reversed, polarised", -12, wiring.Load{Law: wiring.ConstantCurrent, Amps: 2, Works: band, Polarised: true}, 0, false},
		{"watts", 14, wiring.Load{Law: wiring.ConstantPower, Watts: 24, Works: band}, high(14, 24), true},
		{"watts reversed", -14, wiring.Load{Law: wiring.ConstantPower, Watts: 24, Works: band}, -high(14, 24), true},
		{"watts reversed, polarised", -14, wiring.Load{Law: wiring.ConstantPower, Watts: 24, Works: band, Polarised: true}, 0, false},
		{"watts, pulled under its band", 10.5, wiring.Load{Law: wiring.ConstantPower, Watts: 24, Works: band}, 10.5 / (100/24.0 + r), false},
		{"watts, more than the line can carry", 14, wiring.Load{Law: wiring.ConstantPower, Watts: 200, Works: band}, 14 / (100/200.0 + r), false},
		{"watts without a band", 14, wiring.Load{Law: wiring.ConstantPower, Watts: 24}, high(14, 24), true},
		{"nothing at all", 14, wiring.Load{Law: wiring.ConstantPower, Works: band}, 0, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, e := loaded(c.volts, &c.load)
			p := b.settle(t, nil)
			settled(t, p)
			near(t, "current", float64(p.ElementAmps(e)), c.amps)
			if p.Holds(e) != c.on || p.On(b.part("E1")) != c.on {
				t.Errorf("on: %v, want %v", p.Holds(e), c.on)
			}
		})
	}
}

// Close to the most that a line can carry the two roots of a constant power meet; the
// higher one is the answer up to there.
func TestConstantPowerUpToTheNose(t *testing.T) {
	for _, share := range []float64{0.5, 0.9, 0.99, 0.9999} {
		most := 14.0 * 14 / 4 / 0.5
		b, e := loaded(14, &wiring.Load{Law: wiring.ConstantPower, Watts: wattsOf(share * most), Works: wiring.Band{Low: 1}})
		p := b.settle(t, nil)
		settled(t, p)
		near(t, "power", float64(p.Watts(e)), share*most)
		if v := p.ElementVolts(e); v < 7 {
			t.Errorf("at %v of the most power the load has %v, which is the lower root", share, v)
		}
	}
}

// A load whose return is open is dead, and its far end has the voltage of the near one.
func TestLoadWithoutReturn(t *testing.T) {
	for _, law := range []wiring.LoadLaw{wiring.ConstantPower, wiring.ConstantCurrent, wiring.Resistive} {
		b := newBench()
		b.battery("G1", 12, 0.1)
		e := put(b, "E1.lamp", &wiring.Load{
			A: b.node("E1.+"), B: b.node("E1.-"), Law: law, Watts: 20, Amps: 2, Ohms: 6, Works: wiring.Band{Low: 10},
		})
		key := b.key("S1")
		b.wire("G1.+", "E1.+", 0.2)
		b.wire("E1.-", "S1.in", 0.2)
		b.wire("S1.out", "G1.-", 0.2)
		p := b.settle(t, nil)
		settled(t, p)
		near(t, "current", p.ElementAmps(e), 0)
		near(t, "far end", p.Volts(b.node("E1.-")), 12)
		if p.Holds(e) {
			t.Error("it is on")
		}
		if p = b.settle(t, map[*wiring.Control]string{key: "on"}); !p.Holds(e) {
			t.Error("with its return it is on")
		}
	}
}

// Two equal loads in series share the voltage, as nearly as their kind can: neither is
// left to a current that nothing can close.
func TestLoadsInSeries(t *testing.T) {
	for _, volts := range []float64{12, 24, 30} {
		b := newBench()
		b.battery("G1", volts, 0.1)
		var loads []*wiring.Load
		for _, name := range []string{"E1", "E2"} {
			loads = append(loads, put(b, name+".lamp", &wiring.Load{
				A: b.node(name + ".+"), B: b.node(name + ".-"), Law: wiring.ConstantPower, Watts: 20,
				Works: wiring.Band{Low: 10},
			}))
		}
		b.wire("G1.+", "E1.+", 0.1)
		b.wire("E1.-", "E2.+", 0.1)
		b.wire("E2.-", "G1.-", 0.1)
		p := b.settle(t, nil)
		settled(t, p)
		near(t, "current in", p.ElementAmps(loads[0]), p.ElementAmps(loads[1]))
		if p.ElementAmps(loads[0]) <= 0 {
			t.Error("no current")
		}
	}
}

func TestLoadWaitsForItsCondition(t *testing.T) {
	b, e := loaded(12, &wiring.Load{Law: wiring.Resistive, Ohms: 5.5})
	c := b.lever("E1", "switch", "off", "on")
	e.When = stands(c, "on")
	p := b.settle(t, nil)
	near(t, "current while off", p.ElementAmps(e), 0)
	p = b.settle(t, map[*wiring.Control]string{c: "on"})
	near(t, "current while on", p.ElementAmps(e), 2)
}

func wattsOf(w float64) quantity.Watt { return quantity.Watt(w) }
