package wiring

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestLessIsTheOrderOfAWireList(t *testing.T) {
	got := []string{"W10", "W9", "W2", "T2.memory", "E1R", "E1", "E1F", "W012", "W12", "W12A", "A1"}
	slices.SortFunc(got, func(a, b string) int {
		switch {
		case Less(a, b):
			return -1
		case Less(b, a):
			return 1
		}
		return 0
	})
	want := []string{"A1", "E1", "E1F", "E1R", "T2.memory", "W2", "W9", "W10", "W012", "W12", "W12A"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A sort that is not a strict weak order gives another listing on another machine.
func TestLessIsAStrictOrder(t *testing.T) {
	name := rapid.StringMatching(`[A-C]?[0-9]{0,3}[a-b]?[0-9]{0,2}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := name.Draw(t, "a"), name.Draw(t, "b"), name.Draw(t, "c")
		if a != b && Less(a, b) == Less(b, a) {
			t.Fatalf("%q and %q have no order", a, b)
		}
		if Less(a, b) && Less(b, c) && !Less(a, c) {
			t.Fatalf("%q < %q < %q, but not the first before the last", a, b, c)
		}
	})
}
