package fault_test

import (
	"context"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Every mode says what it is, and is met on one of the carts.
func TestModes(t *testing.T) {
	met := map[string]bool{}
	for _, name := range jobtest.Examples() {
		for _, f := range fault.NewCart(jobtest.Example(t, name)).Faults(fault.Modes()) {
			met[f.Mode.ID] = true
			if len(f.Defects)+len(f.Stuck) == 0 {
				t.Errorf("%s: %s changes nothing", name, f.Name)
			}
			if f.Part == nil && len(f.Wires) == 0 {
				t.Errorf("%s: %s is about nothing", name, f.Name)
			}
		}
	}
	seen := map[string]bool{}
	for _, m := range fault.Modes() {
		if m.ID == "" || m.Title == "" || m.Why == "" || m.Class.String() == "unknown" || seen[m.ID] {
			t.Errorf("mode %q does not say what it is, or twice", m.ID)
		}
		seen[m.ID] = true
		if !met[m.ID] {
			t.Errorf("no example has a fault of the mode %s", m.ID)
		}
	}
}

// Kirchhoff's laws hold to a billionth whatever is wrong, or there is a named outcome.
func TestEveryFaultObeysKirchhoff(t *testing.T) {
	const most = 1e-9
	for _, name := range jobtest.Examples() {
		t.Run(name, func(t *testing.T) {
			c := fault.NewCart(jobtest.Example(t, name))
			v, err := c.Survey(t.Context(), c.Faults(fault.Modes()), c.Harness.States)
			if err != nil {
				t.Fatal(err)
			}
			outcomes := map[settle.Outcome]int{}
			for _, r := range v.Rows {
				for _, s := range r.Seen {
					outcomes[s.Outcome]++
					if s.Outcome == settle.NoSolution {
						if s.Why == "" {
							t.Errorf("%s, %s: no solution, and no word why", r.Fault.Name, s.State.Name)
						}
						continue
					}
					if s.Residual.KCL > most || s.Residual.Power > most {
						t.Errorf("%s, %s: residuals %.2g and %.2g", r.Fault.Name, s.State.Name, s.Residual.KCL, s.Residual.Power)
					}
				}
			}
			t.Logf("%d faults in %d states: %v", len(v.Rows), len(v.States), outcomes)
		})
	}
}

// The faults of one place, as they are listed: nothing is forgotten and nothing doubled.
func TestFaultsOfAPlace(t *testing.T) {
	h := jobtest.Example(t, "tern-point-14")
	var names []string
	for _, f := range fault.NewCart(h).Faults(fault.Modes()) {
		if f.Part == h.Part("S7") || slices.Contains(f.Wires, h.Wire("W76")) {
			names = append(names, f.Name)
		}
	}
	want := []string{
		"W76 open", "W76 loose at a lug",
		"W75 on S7.out instead of S7.in", "W76 on S7.in instead of S7.out",
		"W75 and W76 swapped at S7",
		"W73, W76, W78, W80 chafed through to the frame",
		"S7 stuck at up", "S7 stuck at down", "S7 makes no contact",
	}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestConcerns(t *testing.T) {
	h := jobtest.Example(t, "tern-point-14")
	for _, f := range fault.NewCart(h).Faults(fault.Modes()) {
		want := f.Name == "W64 open" || f.Name == "A1.1 blown"
		if want && !f.Concerns(h.Part("A1")) {
			t.Errorf("%s does not concern A1", f.Name)
		}
		if f.Name == "F11 blown" && f.Concerns(h.Part("A1")) {
			t.Error("F11 blown concerns A1")
		}
	}
}

// A wire that lands elsewhere carries there what it carries: the lamp's feed on the next
// channel lights the lamp through that channel's fuse.
func TestLandedElsewhere(t *testing.T) {
	h := jobtest.Example(t, "tern-point-14")
	c := fault.NewCart(h)
	for _, f := range c.Faults(fault.Modes()) {
		if f.Name != "W71 on A1.2 instead of A1.1" {
			continue
		}
		p, err := c.Settle(t.Context(), h.State("everything on"), f)
		if err != nil {
			t.Fatal(err)
		}
		one, two := p.ElementAmps(h.Part("A1").Elements[fuseAt(t, h, 1)]), p.ElementAmps(h.Part("A1").Elements[fuseAt(t, h, 2)])
		if one > 0.001 || two < 5 {
			t.Errorf("channel 1 carries %v and channel 2 %v; the lamp's 60 W should come through channel 2", one, two)
		}
		return
	}
	t.Fatal("the lamp's feed has no neighbouring channel")
}

func fuseAt(t *testing.T, h *wiring.Harness, channel int) int {
	t.Helper()
	for i, e := range h.Part("A1").Elements {
		if f, ok := e.(*wiring.Fuse); ok && f.Channel == channel {
			return i
		}
	}
	t.Fatalf("A1 has no channel %d", channel)
	return 0
}

func TestASurveyEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	c := fault.NewCart(jobtest.Example(t, "tern-point-14"))
	if _, err := c.Survey(ctx, c.Faults(fault.Modes()), c.Harness.States); err == nil {
		t.Error("a survey went on after its context had ended")
	}
}

// Every single fault of the main example in every state, on one core. Near-linear in
// faults: ns/settle does not grow with their number.
func BenchmarkEveryFault(b *testing.B) {
	c := fault.NewCart(jobtest.Example(b, jobtest.Examples()[0]))
	faults := c.Faults(fault.Modes())
	for b.Loop() {
		for _, f := range faults {
			if _, err := c.Look(context.Background(), c.Harness.States, f); err != nil {
				b.Fatal(err)
			}
		}
	}
	settles := len(faults) * len(c.Harness.States)
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(settles), "ns/settle")
	b.ReportMetric(float64(settles), "settles")
}
