package position_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/settle"
)

// What holds of the three carts that ship. A lockout that watches for AC does not see a
// cord in a dead outlet, and one that is worked by the plug does: the two-seat cart and the
// truck have the first, the shuttle the second.
func TestTheExamplesHold(t *testing.T) {
	type row struct {
		Property                 string
		Verdict                  position.Verdict
		Product, Looked, Settled int64
		Shown                    []shown
	}
	drives := []shown{{"M1", "X1.plug dead, S1.key on, S3.direction forward, S4.pedal down"}}
	tests := map[string][]row{
		"tern-point-14": {
			{"buses-apart", position.Holds, 1152, 0, 0, nil},
			{"no-short", position.Holds, 1152, 768, 768, nil},
			{"no-drive-on-charge", position.Holds, 384, 384, 384, nil},
			{"no-drive-with-cord", position.Broken, 384, 384, 384, drives},
			{"off-means-off", position.Holds, 576, 384, 384, nil},
			{"sneak-path", position.Holds, 1152, 768, 768, nil},
			{"settles-everywhere", position.Holds, 1152, 768, 768, nil},
		},
		"tern-point-shuttle-3": {
			{"buses-apart", position.Holds, 192, 0, 0, nil},
			{"no-short", position.Holds, 192, 0, 0, nil},
			{"no-drive-on-charge", position.Holds, 96, 96, 96, nil},
			{"no-drive-with-cord", position.Holds, 96, 96, 96, nil},
			{"off-means-off", position.Holds, 96, 96, 96, nil},
			{"sneak-path", position.Holds, 192, 192, 192, nil},
			{"settles-everywhere", position.Holds, 192, 192, 192, nil},
		},
		"tern-point-truck-1": {
			{"buses-apart", position.Holds, 18432, 0, 0, nil},
			{"no-short", position.Holds, 18432, 0, 0, nil},
			{"no-drive-on-charge", position.Holds, 6144, 6144, 6144, nil},
			{"no-drive-with-cord", position.Broken, 6144, 6144, 6144, drives},
			{"off-means-off", position.Holds, 9216, 6144, 6144, nil},
			{"sneak-path", position.Holds, 18432, 12288, 12288, nil},
			{"settles-everywhere", position.Holds, 18432, 12288, 12288, nil},
		},
	}
	for name, want := range tests {
		t.Run(name, func(t *testing.T) {
			if testing.Short() && want[0].Product > 10000 {
				t.Skip("12,288 positions take a few seconds")
			}
			c := position.NewCart(example(t, name), nil)
			results, err := position.CheckAll(t.Context(), c, position.Properties(), position.CheckOptions{})
			if err != nil {
				t.Fatal(err)
			}
			var got []row
			for _, r := range results {
				got = append(got, row{r.Property.ID, r.Verdict, r.Product, r.Looked, r.Settled, shownOf(r)})
				if r.Races.Count+r.Unsettled.Count > 0 {
					t.Errorf("%s: %d races, %d points not settled", r.Property.ID, r.Races.Count, r.Unsettled.Count)
				}
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// The carts as they were before the work, taps on two of six batteries and all, raise no
// false alarm.
func TestFactoryCartsHold(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		h, findings, err := job.LoadBefore("../../examples/tern-point/jobs/"+name+".yaml", job.Options{})
		if err != nil || h == nil {
			t.Fatalf("%s: %v\n%v", name, err, findings)
		}
		ps := []*position.Property{position.BusesApart(), position.NoShort(), position.SneakPath(), position.SettlesEverywhere()}
		results, err := position.CheckAll(t.Context(), position.NewCart(h, nil), ps, position.CheckOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range results {
			if r.Verdict != position.Holds {
				t.Errorf("%s: %s: %v %s %v", name, r.Property.ID, r.Verdict, r.Why, shownOf(r))
			}
		}
	}
}

// A check that is called off says so, and draws no verdict.
func TestACheckThatIsCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	o := position.CheckOptions{}
	o.Progress = func(int64, int64) { cancel() }
	c := position.NewCart(example(t, "tern-point-14"), nil)
	results, err := position.CheckAll(ctx, c, []*position.Property{position.SneakPath(), position.SettlesEverywhere()}, o)
	if !errors.Is(err, context.Canceled) || len(results) != 2 {
		t.Fatalf("%d results, %v", len(results), err)
	}
	for _, r := range results {
		if r.Verdict != 0 {
			t.Errorf("%s: %v", r.Property.ID, r.Verdict)
		}
	}
}

// A property of one's own: the horn is heard whenever its button is pressed and the key is on.
func TestAPropertyOfOnesOwn(t *testing.T) {
	h := example(t, "tern-point-14")
	horn, button, key := h.Part("P3"), control(t, h, "S7.button"), control(t, h, "S1.key")
	heard := &position.Property{
		ID: "horn",
		Premise: func(_ *position.Cart, s *position.Space) ([]*position.Space, string) {
			s, err := s.Fix(button, "down")
			if err == nil {
				s, err = s.Fix(key, "on")
			}
			if err != nil {
				return nil, err.Error()
			}
			return []*position.Space{s}, ""
		},
		Judge: func(_ *position.Cart, p *settle.Point) []position.Violation {
			if p.On(horn) {
				return nil
			}
			return []position.Violation{{Subject: "P3", Says: "It is silent."}}
		},
	}
	r := check(t, h, heard, position.CheckOptions{})
	want := []shown{
		{"P3", "S7.button down, S1.key on, G1.pack off"},
	}
	if diff := cmp.Diff(want, shownOf(r)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Settled together or one by one, with one position at a time or with many, properties get
// the same answers.
func TestCheckAllIsCheckForEach(t *testing.T) {
	h := example(t, "tern-point-14")
	land(t, h, "W69", "K1.out", "K1.in")
	land(t, h, "W37", "T1.lock-b", "F4.out")
	land(t, h, "W29", "X12", "P3.-")
	c := position.NewCart(h, nil)
	all, err := position.CheckAll(t.Context(), c, position.Properties(), position.CheckOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range position.Properties() {
		one := check(t, h, p, position.CheckOptions{})
		if diff := cmp.Diff(told(one), told(all[i])); diff != "" {
			t.Errorf("%s (-one +all):\n%s", p.ID, diff)
		}
	}
}

// told is all that a result says in words and numbers.
func told(r position.Result) any {
	type text struct {
		State, Subject, Says string
		Ways                 []string
	}
	var xs []text
	for _, x := range r.Counterexamples {
		xs = append(xs, text{x.State.Name, x.Subject, x.Says, ways(x)})
	}
	doubt := func(d position.Doubt) string {
		if d.First == nil {
			return ""
		}
		return d.First.Name + ": " + d.Why
	}
	return []any{r.Property.ID, r.Verdict, r.Why, r.Pruned, r.Product, r.Looked, r.Settled, xs,
		r.Unsettled.Count, doubt(r.Unsettled), r.Races.Count, doubt(r.Races)}
}

// The truck drives while its inhibit pin is joined to its common pin, and that is among the
// reasons why it does.
func TestALoopIsAReason(t *testing.T) {
	o := position.CheckOptions{First: true}
	r := check(t, example(t, "tern-point-truck-1"), position.NoDriveWithCord(), o)
	if len(r.Counterexamples) != 1 {
		t.Fatalf("%v", r.Verdict)
	}
	const loop = "U1.loop: U1.common - W58 - T1.lockout - W57B - U1.inhibit"
	if all := ways(r.Counterexamples[0]); !slices.Contains(all, loop) {
		t.Errorf("%s is not among %q", loop, all)
	}
}

// The first position that is found is the one with the fewest controls away from rest.
func TestTheFirstOneIsEnough(t *testing.T) {
	h := example(t, "tern-point-14")
	lay(t, h, "W99", "E1.+", "F3.out")
	r := check(t, h, position.OffMeansOff(), position.CheckOptions{First: true})
	want := []shown{{"E1.load", "S1.key off"}}
	if diff := cmp.Diff(want, shownOf(r)); diff != "" || r.Settled != 1 {
		t.Errorf("%d settled, %s", r.Settled, diff)
	}
}

// A cart without a key, a plug, a motor or a second supply has nothing to prove.
func TestWhatDoesNotApplyIsSaid(t *testing.T) {
	h := bench(t, `
		G1 source + - 12
		S1 switch switch off,on on:in,out
		E1 load + - 10
		W1 G1.+ S1.in
		W2 S1.out E1.+
		W3 E1.- G1.-`)
	want := map[string]string{
		"buses-apart":        "there are no two supplies of different voltage",
		"no-drive-on-charge": "no part moves this cart",
		"no-drive-with-cord": "no part moves this cart",
		"off-means-off":      "it has no key that can be off",
	}
	for _, p := range position.Properties() {
		r := check(t, h, p, position.CheckOptions{})
		if why, idle := want[p.ID]; idle != (r.Verdict == position.Idle) || r.Why != why {
			t.Errorf("%s: %v, %q", p.ID, r.Verdict, r.Why)
		}
	}
}
