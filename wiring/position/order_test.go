package position

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
)

// spaceOf is a space over controls with so many positions each.
func spaceOf(positions ...int) *Space {
	part := &wiring.Part{Designation: "S1"}
	for i, n := range positions {
		c := &wiring.Control{Part: part, Name: fmt.Sprintf("c%d", i+1)}
		for p := range n {
			c.Positions = append(c.Positions, fmt.Sprint(p))
		}
		part.Controls = append(part.Controls, c)
	}
	return All(&wiring.Harness{Parts: []*wiring.Part{part}})
}

func TestFewestControlsComeFirst(t *testing.T) {
	s := spaceOf(2, 3, 2)
	var got []string
	for i := range s.Count() {
		got = append(got, s.At(i).Name)
	}
	want := []string{
		"everything at rest",
		"S1.c1 1", "S1.c2 1", "S1.c2 2", "S1.c3 1",
		"S1.c1 1, S1.c2 1", "S1.c1 1, S1.c2 2", "S1.c1 1, S1.c3 1", "S1.c2 1, S1.c3 1", "S1.c2 2, S1.c3 1",
		"S1.c1 1, S1.c2 1, S1.c3 1", "S1.c1 1, S1.c2 2, S1.c3 1",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Every position of the product comes once, and none moves fewer controls than the one
// before it; the numbers are in the order in which quest.compare has them.
func TestNumbersAreAllPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := spaceOf(rapid.SliceOfN(rapid.IntRange(1, 4), 0, 6).Draw(t, "positions")...)
		product := int64(1)
		for _, a := range s.Axes() {
			product *= int64(len(a.Positions))
		}
		if s.Count() != product {
			t.Fatalf("%d positions are counted, want %d", s.Count(), product)
		}
		q := quest{cart: &Cart{Harness: s.harness}}
		seen := map[string]bool{}
		var before *wiring.State
		for i := range s.Count() {
			state := s.At(i)
			if seen[state.Name] {
				t.Fatalf("%s comes twice", state.Name)
			}
			seen[state.Name] = true
			if before != nil && q.compare(before, state) >= 0 {
				t.Fatalf("%s comes before %s, and compare says otherwise", before.Name, state.Name)
			}
			before = state
		}
	})
}

func TestCountsStopWhereTheyDoNotFit(t *testing.T) {
	positions := make([]int, 63)
	for i := range positions {
		positions[i] = 2
	}
	tests := []struct {
		positions []int
		want      int64
	}{
		{positions[:62], 1 << 62},
		{positions, math.MaxInt64}, // 2^63 itself does not fit
		{append(positions, 3, 3), math.MaxInt64},
		{nil, 1},
	}
	for _, tt := range tests {
		if got := spaceOf(tt.positions...).Count(); got != tt.want {
			t.Errorf("%d controls: %d, want %d", len(tt.positions), got, tt.want)
		}
	}
}
