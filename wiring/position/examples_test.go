package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/position"
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
