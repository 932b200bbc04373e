package difference_test

import (
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
	"github.com/lugwright/lugwright/wiring/job"
)

// carts loads a shipped example, which is invented, as it came and as it is to be.
func carts(t *testing.T, name string) (before, after *wiring.Harness) {
	t.Helper()
	file := filepath.Join("..", "..", "examples", "tern-point", "jobs", name+".yaml")
	after, _, err := job.Load(file, job.Options{})
	if err != nil || after == nil {
		t.Fatal(err)
	}
	before, _, err = job.LoadBefore(file, job.Options{})
	if err != nil || before == nil {
		t.Fatal(err)
	}
	return before, after
}

// What a conversion does to the cart of the first example, as a technician who has both
// files before him would tell it.
func TestConversion(t *testing.T) {
	before, after := carts(t, "tern-point-14")
	d := difference.Between(before, after)
	got := map[string]bool{}
	for _, c := range d.Changes {
		got[c.Name+" "+string(c.Class)+": "+c.Old+" > "+c.New] = true
	}
	for _, want := range []string{
		"G11 removed: battery-lead-acid > ",
		"X11 removed: inlet-dc > ",
		"G1 added:  > pack-lfp",
		"W3 removed: G13.+ - G14.- BK 2 AWG 9 in > ",
		"W37 moved: X11.lock > T1.lock-b",
		"W37 extended:  > GN/WH 18 AWG 14 in",
		"W38 moved: G11.- > G1.-",
		"W6 moved: G16.+ > F1.out",
		"W63 added:  > T2.memory - capped",
		"K1.out restacked: W8 W41 > W8 W69 W41",
	} {
		if !got[want] {
			t.Errorf("%q is not among the changes", want)
		}
	}
	for _, name := range []string{"W8", "W14", "W20"} {
		if mark := d.Marks().Wires[name]; mark != "" {
			t.Errorf("%s is marked %s, and nobody touched it", name, mark)
		}
	}
}

// A job read twice is the same job, and every change of the conversion is undone by going
// back.
func TestExamplesBothWays(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		before, after := carts(t, name)
		_, again := carts(t, name)
		if d := difference.Between(after, again); !d.None() {
			t.Errorf("%s differs from itself: %+v", name, d.Changes)
		}
		forth, back := difference.Between(before, after), difference.Between(after, before)
		count := func(d difference.Difference, turn func(difference.Class) difference.Class) map[difference.Class]int {
			n := map[difference.Class]int{}
			for _, c := range d.Changes {
				n[turn(c.Class)]++
			}
			return n
		}
		same := func(c difference.Class) difference.Class { return c }
		if diff := cmp.Diff(count(forth, same), count(back, difference.Class.Inverse)); diff != "" {
			t.Errorf("%s: -forth +back\n%s", name, diff)
		}
	}
}
