package figure

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// capacitor adds a capacitor between two terminals.
func (b *bench) capacitor(ref, from, to string, farads float64) *wiring.Capacitor {
	return put(b, ref, &wiring.Capacitor{A: b.node(from), B: b.node(to), Farads: quantity.Farad(farads)})
}

// netlist builds "V1 1 0 28|R1 1 2 4|C1 2 3 1e-4" and returns its capacitor.
func netlist(t *testing.T, text string) (*bench, *wiring.Capacitor) {
	t.Helper()
	b := newBench()
	var c *wiring.Capacitor
	for _, line := range strings.Split(text, "|") {
		f := strings.Fields(line)
		from, to, value := "X."+f[1], "X."+f[2], number(t, f[3])
		switch f[0][0] {
		case 'V':
			put(b, "X."+f[0], &wiring.Source{A: b.node(from), B: b.node(to), Volts: quantity.Volt(value), Ohms: 1e-6})
		case 'R':
			b.resistor("X."+f[0], from, to, value)
		case 'C':
			c = b.capacitor("X."+f[0], from, to, value)
		}
	}
	return b, c
}

// charged follows a capacitor from empty.
func follow(t testing.TB, c *Cart, e *wiring.Capacitor, s *wiring.State) Transient {
	t.Helper()
	tr, err := c.follow(context.Background(), course{capacitor: e, state: s})
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func TestTransientsOfWorkedExamples(t *testing.T) {
	for _, w := range workedExamples(t, "rc") {
		t.Run(w.id, func(t *testing.T) {
			text, after := w.givens, quantity.Second(0.06)
			if ohms := w.given(t, "ohm"); ohms > 0 {
				text = fmt.Sprintf("V1 1 0 %v|R1 1 2 %v|C1 2 0 %v", w.given(t, "source_V"), ohms, w.given(t, "farad"))
				after = quantity.Second(w.given(t, "t_s"))
			}
			b, c := netlist(t, text)
			tr := follow(t, b.cart(), c, state())
			got := float64(tr.At(after))
			if w.quantity == "current" {
				got = 1e6 * float64(tr.Stages[0].amps(tr.At(after))) // microampere
			}
			w.check(t, got)
		})
	}
}

// The hiccup of a reducer that is supplied from behind a pre-charge resistor: its idle
// current pulls the capacitor under its lockout, it stops, the capacitor recovers.
func TestReducerBehindResistorHiccups(t *testing.T) {
	b := newBench()
	b.source("G1", 52.8, 0.01)
	b.resistor("R1.ohms", "G1.+", "U1.+", 470)
	b.resistor("U1.bleed", "U1.+", "G1.-", 10e3)
	e := b.capacitor("U1.capacitor", "U1.+", "G1.-", 4.7e-3)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("U1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out"), OutB: b.node("G1.-"),
		Volts: 12.5, Amps: 25, Works: wiring.Band{Low: 30, High: 64}, Starts: 31, Idle: 0.06, Standby: 0.008,
	})
	tr := follow(t, b.cart(), e, state())
	if tr.Ending != Hiccups {
		t.Fatalf("it %v at %v", tr.Ending, tr.Final)
	}
	within(t, "lower end", tr.Low, 30, 0.01)
	within(t, "upper end", tr.High, 31, 0.01)
	if last := tr.Stages[len(tr.Stages)-1]; len(last.Acts) == 0 || last.Acts[0].Base().Ref() != "T2.main" {
		t.Errorf("what acts is %v, want T2.main", last.Acts)
	}
}

// At 38 V a reducer behind 250 ohm cannot start: it pulls its own supply down in no time.
func TestRestlessIsTakenAsOff(t *testing.T) {
	b := newBench()
	e := b.capacitor("U1.capacitor", "U1.+", "U1.-", 3.3e-3)
	b.resistor("U1.bleed", "U1.+", "U1.-", 10e3)
	b.source("G1", 38, 0.01)
	pack := b.key("S1", "key")
	b.wire("G1.+", "S1.in", 0.01)
	b.wire("S1.out", "U1.+", 0.01)
	b.wire("G1.-", "U1.-", 0.01)
	b.resistor("R1.ohms", "U1.+", "T2.in+", 250)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("T2.in+"), InB: b.node("U1.-"), OutA: b.node("T2.out"), OutB: b.node("U1.-"),
		Volts: 12.5, Amps: 25, Works: wiring.Band{Low: 24, High: 64}, Starts: 25,
	})
	b.resistor("E1.lamp", "T2.out", "U1.-", 3)
	// With the lamp it needs 52 W; at 38 V only 1.4 W come through.
	tr := follow(t, b.cart(), e, state(pack))
	if tr.Ending != Rests || len(tr.Restless) != 1 || tr.Restless[0].Base().Ref() != "T2.main" {
		t.Errorf("it %v at %v; restless %v, want T2.main", tr.Ending, tr.Final, tr.Restless)
	}
}

func TestTransientNeedsCapacitance(t *testing.T) {
	b, e := netlist(t, "V1 1 0 10|R1 1 2 10|C1 2 0 1")
	c := b.cart()
	var unknown *Unknown
	if _, err := c.Precharge(t.Context(), &wiring.Capacitor{ElementBase: e.ElementBase, A: e.A, B: e.B}, state(), 0); !errors.As(err, &unknown) {
		t.Errorf("without farads: %v", err)
	}
	stopped, stop := context.WithCancel(t.Context())
	stop()
	if _, err := c.Precharge(stopped, e, state(), 0); !errors.Is(err, context.Canceled) {
		t.Errorf("after its context ended: %v", err)
	}
}

// A current that does not change with the voltage: v = I t / C.
func TestConstantCurrentStage(t *testing.T) {
	s := newStage(sample{volts: 10, amps: -2}, sample{volts: 4, amps: -2}, 0.5)
	near(t, "time", s.Lasts, 0.5*6/2)
	near(t, "voltage half way", s.at(s.Lasts/2), 7)
	if !math.IsInf(math.Abs(float64(s.Ohms())), 1) {
		t.Errorf("the resistance is %v", s.Ohms())
	}
}

func TestTransientTimes(t *testing.T) {
	b, e := netlist(t, "V1 1 0 50|R1 1 2 100|R2 2 0 900|C1 2 0 0.01")
	tr := follow(t, b.cart(), e, state())
	near(t, "final voltage", tr.Final, 45)
	after, ok := tr.Until(22.5)
	near(t, "to half of it", after, quantity.Second(0.9*math.Ln2))
	if !ok {
		t.Error("it does reach half")
	}
	near(t, "voltage then", tr.At(after), 22.5)
	if after, ok := tr.Until(46); ok {
		t.Errorf("it never comes to 46 V, but after %v", after)
	}
	if _, ok := tr.Until(45); ok {
		t.Error("it only comes near 45 V")
	}
	near(t, "largest current", tr.Most(), 0.5)
	near(t, "until the last change", tr.Lasts(), 0)
	var none Transient
	if _, ok := none.Until(5); ok || none.At(1) != 0 {
		t.Error("a transient without stages stays where it is")
	}
}

// Whatever hangs on a capacitor, its stages add up to C dv/dt = i(v), integrated here step
// by step (fourth-order Runge and Kutta) with currents from the solver.
func TestStagesIntegrateTheCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := newBench()
		b.source("G1", rapid.Float64Range(30, 60).Draw(t, "volts"), 0.01)
		b.resistor("R1.ohms", "G1.+", "V1.a", rapid.Float64Range(150, 500).Draw(t, "ohms"))
		if rapid.Bool().Draw(t, "diode") {
			put(b, "V1.diode", &wiring.Diode{A: b.node("V1.a"), B: b.node("U1.+")})
		} else {
			b.wire("V1.a", "U1.+", 0.1)
		}
		b.resistor("U1.bleed", "U1.+", "G1.-", 10e3)
		for i := range rapid.IntRange(0, 3).Draw(t, "loads") {
			put(b, fmt.Sprintf("E%d.load", i+1), &wiring.Load{
				A: b.node("U1.+"), B: b.node("G1.-"), Law: rapid.SampledFrom([]wiring.LoadLaw{1, 2, 3}).Draw(t, "law"),
				Watts: quantity.Watt(rapid.Float64Range(0.05, 0.5).Draw(t, "watts")), Amps: 0.005, Ohms: 3000,
				Works: wiring.Band{Low: quantity.Volt(rapid.Float64Range(3, 25).Draw(t, "low"))},
			})
		}
		e := b.capacitor("U1.capacitor", "U1.+", "G1.-", 1e-3)
		c := b.cart()
		k := course{capacitor: e, state: state()}
		tr, err := c.follow(t.Context(), k)
		if err != nil || tr.Ending != Rests {
			t.Fatalf("it %v: %v, %s", tr.Ending, err, tr.Why)
		}
		w, err := c.walk(t.Context(), k)
		if err != nil {
			t.Fatal(err)
		}
		rate := func(v float64) float64 {
			s, err := w.hold(t.Context(), v, nil)
			if err != nil {
				t.Fatal(err)
			}
			return s.amps / 1e-3
		}
		const steps = 100
		v, dt := 0.0, 0.3/steps
		for i := range steps {
			k1 := rate(v)
			k2 := rate(v + dt/2*k1)
			k3 := rate(v + dt/2*k2)
			k4 := rate(v + dt*k3)
			v += dt / 6 * (k1 + 2*k2 + 2*k3 + k4)
			if got := float64(tr.At(quantity.Second(float64(i+1) * dt))); math.Abs(got-v) > 0.01+1e-3*v {
				t.Fatalf("after %v s the stages say %v V, step by step it is %v V", float64(i+1)*dt, got, v)
			}
		}
	})
}
