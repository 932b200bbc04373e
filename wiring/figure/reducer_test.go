package figure

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func reducers(t *testing.T, c *Cart, s *wiring.State) map[string]ReducerRoom {
	t.Helper()
	all, err := c.ReducerRooms(t.Context(), s, 0)
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]ReducerRoom{}
	for _, r := range all {
		by[r.Converter.Ref()] = r
	}
	return by
}

// The input current of a reducer by the balance of power.
func TestReducersOfWorkedExamples(t *testing.T) {
	for _, w := range workedExamples(t, "power") {
		t.Run(w.id, func(t *testing.T) {
			b := newBench()
			b.source("G1", w.given(t, "in_V"), 1e-6)
			out, amps := w.given(t, "out_V"), w.given(t, "out_A")
			put(b, "T2.main", &wiring.Converter{
				InA: b.node("G1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out"), OutB: b.node("G1.-"),
				// A converter holds its voltage behind 5 mohm.
				Volts: quantity.Volt(out + amps*0.005), Amps: 10, Works: wiring.Band{Low: 30, High: 64},
				Efficiency: quantity.Ratio(w.given(t, "efficiency")),
			})
			b.resistor("R1.load", "T2.out", "G1.-", out/amps)
			r := reducers(t, b.cart(), state())["T2.main"]
			w.check(t, float64(r.Input))
			within(t, "asked for", r.Asked, quantity.Ampere(amps), 1e-3)
			if left, ok := r.Left(); !ok || left > -19 { // its limit does not hide what is asked
				t.Errorf("left are %v, %v", left, ok)
			}
		})
	}
}

// lit is a reducer with a lamp, a flasher of half duty, a horn and a buzzer on buttons, and
// a pump that runs a fifth of the time.
func lit() (*bench, *wiring.State) {
	b := newBench()
	b.source("G1", 52.8, 0.01)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("G1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out"), OutB: b.node("G1.-"),
		Volts: 12, Amps: 20, Works: wiring.Band{Low: 30, High: 64},
	})
	load := func(part string, a, z string, amps float64) *wiring.Load {
		return put(b, part+".load", &wiring.Load{A: b.node(a), B: b.node(z), Law: wiring.ConstantCurrent, Amps: quantity.Ampere(amps), Works: wiring.Band{Low: 9}})
	}
	load("E1", "T2.out", "G1.-", 5).Inrush = wiring.Burst{Amps: 20, For: 0.05}
	put(b, "A1.flash", &wiring.Driver{A: b.node("T2.out"), B: b.node("A1.out"), Duty: 0.5})
	load("E2", "A1.out", "G1.-", 2)
	load("M1", "T2.out", "G1.-", 3).Duty = 0.2
	var buttons []*wiring.Control
	for i, amps := range []float64{4, 1} { // switched at the low side
		s := fmt.Sprintf("S%d", i+1)
		control := b.lever(s, "button", "up", "down")
		put(b, s+".switch", &wiring.Switch{Control: control, Closes: map[string][][]wiring.NodeID{"down": {{b.node(s + ".in"), b.node("G1.-")}}}})
		load(fmt.Sprintf("P%d", i+1), "T2.out", s+".in", amps)
		buttons = append(buttons, control)
	}
	load("M2", "G1.+", "G1.-", 7) // hangs on the pack, not on the reducer
	s := state()
	for _, control := range buttons {
		s.Set[control] = "down"
	}
	return b, s
}

func TestReducerByDuties(t *testing.T) {
	b, s := lit()
	r := reducers(t, b.cart(), s)["T2.main"]
	within(t, "asked for", r.Asked, 15, 1e-3)
	within(t, "continuous", r.Continuous, 5+1+0.6, 1e-3)
	within(t, "peak", r.Peak, 5+2+3+4, 1e-3)
	left, ok := r.Left()
	within(t, "left", left, 20-6.6, 1e-3)
	atPeak, _ := r.LeftAtPeak()
	within(t, "left at the peak", atPeak, 6, 1e-3)
	if !ok || !r.Runs || r.Inrush == nil || r.Inrush.Part.Designation != "E1" {
		t.Errorf("it runs %v, the largest inrush is of %v", r.Runs, r.Inrush)
	}
	var got []string
	for _, k := range r.Consumers {
		got = append(got, fmt.Sprintf("%s %v %v %v", k.Element.Base().Ref(), k.Amps, k.Duty, k.Share))
	}
	want := []string{
		"E1.load 5 A continuous 100 %", "E2.load 2 A intermittent 50 %", "M1.load 3 A intermittent 20 %",
		"P1.load 4 A momentary 100 %", "P2.load 1 A momentary 100 %",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("consumers (-want +got):\n%s", diff)
	}
}

func TestReducerThatIsOff(t *testing.T) {
	b, s := lit()
	for _, e := range b.part("T2").Elements {
		e.(*wiring.Converter).Works.Low = 60
	}
	r := reducers(t, b.cart(), s)["T2.main"]
	if left, ok := r.Left(); r.Runs || r.Asked != 0 || r.Consumers != nil || left != 20 || !ok {
		t.Errorf("it runs: %+v", r)
	}
}

// The reducers of the example carts with everything on. Invented carts; the currents are
// those of package settle, the horn of 4 A being on a button.
func TestReducersOfExamples(t *testing.T) {
	for _, tt := range []struct {
		job                      string
		limit, asked, continuous quantity.Ampere
	}{
		{"tern-point-14", 25, 17.1, 13.1},
		{"tern-point-truck-1", 40, 30.4, 26.4},
	} {
		t.Run(tt.job, func(t *testing.T) {
			c := New(example(t, tt.job), nil)
			s := c.harness.State("everything on")
			r := reducers(t, c, s)["T2.main"]
			p, err := c.point(t.Context(), s, 0)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "asked for, as the settled state has it", r.Asked, p.ElementAmps(r.Converter))
			within(t, "asked for", r.Asked, tt.asked, 0.05)
			within(t, "continuous", r.Continuous, tt.continuous, 0.1)
			sum := quantity.Ampere(0)
			for _, k := range r.Consumers {
				sum += k.Amps
				if (k.Duty == Momentary) != (k.Element.Base().Part.Designation == "P3") {
					t.Errorf("%s is %v", k.Element.Base().Ref(), k.Duty)
				}
			}
			within(t, "all consumers together", sum, r.Asked, 0.01)
			if r.Limit != tt.limit {
				t.Errorf("its limit is %v", r.Limit)
			}
		})
	}
}
