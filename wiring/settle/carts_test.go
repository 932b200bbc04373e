package settle

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/kind"
)

// carts are three invented carts, with the kinds, kits, platforms and states that they
// stand on beside them in testdata/carts, so that nothing that ships can change them.
var carts = []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"}

// cart reads one of the carts.
func cart(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	states, err := os.ReadFile(filepath.Join("testdata", "carts", "states.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	h, findings, err := job.Load(filepath.Join("testdata", "carts", "jobs", name+".yaml"), job.Options{
		Catalog: &job.Catalog{
			Kind:   func(string) (*kind.Definition, bool) { return nil, false },
			Names:  func() []string { return nil },
			States: func() (string, []byte) { return "states.yaml", states },
			AddTo:  func(*diag.Files) {},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		for _, f := range findings {
			t.Errorf("%s:%d: %s", f.At.File, f.At.Line, f.Message)
		}
		t.FailNow()
	}
	return h
}

// expected says whether a point is as its state expects, and what is not.
func expected(p *Point) (unmet []string) {
	for _, e := range p.State.Expect {
		switch {
		case e.Traction && p.Traction() != e.On:
			unmet = append(unmet, "traction")
		case e.Part != nil && p.On(e.Part) != e.On:
			unmet = append(unmet, e.Part.Designation)
		}
	}
	return unmet
}

// Every state settles, in at most nine rounds, and is as it expects; but TP-14, whose
// interlock lead is on pack positive, drives off with its plug in.
func TestCartsDoAsTheyShould(t *testing.T) {
	for _, name := range carts {
		h := cart(t, name)
		n := Compile(h)
		for _, state := range h.States {
			t.Run(name+"/"+state.Name, func(t *testing.T) {
				p, err := n.Settle(t.Context(), state, Options{})
				if err != nil {
					t.Fatal(err)
				}
				settled(t, p)
				checkResiduals(t, p)
				if p.Rounds > 9 || p.OrderMatters || len(p.Opened()) > 0 {
					t.Errorf("%d rounds, order matters %v, opened %v", p.Rounds, p.OrderMatters, refs(p.Opened()))
				}
				wrong := len(expected(p)) > 0
				if want := h.Identity.Number == "TP-14" && state.Name == "drive-away"; wrong != want {
					t.Errorf("not as expected: %v", expected(p))
				}
			})
		}
	}
}

// positions calls f with every position of every control.
func positions(h *wiring.Harness, f func(set map[*wiring.Control]string)) {
	var controls []*wiring.Control
	for _, p := range h.Parts {
		controls = append(controls, p.Controls...)
	}
	set := map[*wiring.Control]string{}
	var turn func(i int)
	turn = func(i int) {
		if i == len(controls) {
			f(set)
			return
		}
		for _, position := range controls[i].Positions {
			set[controls[i]] = position
			turn(i + 1)
		}
	}
	turn(0)
}

// All positions of all switches settle, but those in which 18 A of charger alone are to
// feed the motor: driving, plug in, pack off.
func TestEverySwitchPosition(t *testing.T) {
	for name, want := range map[string]struct{ positions, chatter int }{
		"tern-point-14":        {768, 16},
		"tern-point-shuttle-3": {192, 0},
		"tern-point-truck-1":   {12288, 0},
	} {
		t.Run(name, func(t *testing.T) {
			if testing.Short() && want.positions > 1000 {
				t.Skip("takes some seconds")
			}
			h := cart(t, name)
			n := Compile(h)
			count, chatter := 0, 0
			positions(h, func(set map[*wiring.Control]string) {
				count++
				p, err := n.Settle(t.Context(), &wiring.State{Set: set}, Options{})
				if err != nil {
					t.Fatal(err)
				}
				checkResiduals(t, p)
				if p.Outcome != Settled {
					chatter++
				}
			})
			if count != want.positions || chatter != want.chatter {
				t.Errorf("%d positions, %d of which do not settle; want %d and %d", count, chatter, want.positions, want.chatter)
			}
		})
	}
}

// BenchmarkCart settles a whole cart, driving, from cold.
func BenchmarkCart(b *testing.B) {
	h := cart(b, "tern-point-14")
	n := Compile(h)
	for b.Loop() {
		if p, err := n.Settle(b.Context(), h.State("driving"), Options{}); err != nil || p.Outcome != Settled {
			b.Fatal(p.Outcome, err)
		}
	}
}
