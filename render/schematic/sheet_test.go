package schematic

import (
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

func TestJointsLieInOrderOnTheLine(t *testing.T) {
	points := []ink.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 6}}
	if got := length(points); got != 16 {
		t.Fatalf("length %v", got)
	}
	j := pointAlong(points, 13)
	if j.at != (ink.Point{X: 10, Y: 3}) || j.level {
		t.Errorf("13 along: %+v", j)
	}
	runs := cutAt(points, []joint{pointAlong(points, 4), j})
	want := [][]ink.Point{{{X: 0, Y: 0}, {X: 4, Y: 0}}, {{X: 4, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 3}}, {{X: 10, Y: 3}, {X: 10, Y: 6}}}
	if diff := cmp.Diff(want, runs); diff != "" {
		t.Error(diff)
	}
}

// shuttle is one of the examples laid out on A4, once for all tests that look at it.
var shuttle = sync.OnceValues(func() ([]*Sheet, error) {
	h, _, err := job.Load("../../examples/tern-point/jobs/tern-point-shuttle-3.yaml", job.Options{})
	if err != nil {
		return nil, err
	}
	return Sheets(h, areaOn(frame.A4()))
})

func shuttleSheets(t *testing.T) []*Sheet {
	t.Helper()
	sheets, err := shuttle()
	if err != nil || len(sheets) < 2 {
		t.Fatalf("%d sheets, %v", len(sheets), err)
	}
	return sheets
}

// An extended wire shows each of its pieces, with a sleeve between two.
func TestExtendedWireShowsItsPieces(t *testing.T) {
	o := areaOn(frame.A4())
	sleeves, joints := 0, 0
	for _, s := range shuttleSheets(t) {
		rec := ink.NewRecorder(o.Width, o.Height)
		s.Draw(rec)
		for _, m := range rec.Marks {
			for _, g := range m.Groups {
				if g.Class == "sleeve" {
					sleeves++
				}
			}
		}
		for i, w := range s.g.wires {
			if w.line.wire != nil && s.c.routes.Paths[i] != nil {
				joints += len(s.piecesOf(i)) - 1
			}
		}
	}
	if sleeves != joints || joints == 0 {
		t.Errorf("%d sleeves for %d joints", sleeves, joints)
	}
}

// A flag names the sheet and the zone where its wire goes on, and so does the one there.
func TestReferencesMeet(t *testing.T) {
	seen := map[*wiring.Wire]int{}
	for _, s := range shuttleSheets(t) {
		for _, f := range s.g.s.flags {
			if f.there().terminal == nil {
				continue
			}
			seen[f.line.wire]++
			words := s.set.where(f)
			if strings.Contains(words, zoneToCome) || !strings.Contains(words, "sheet ") {
				t.Errorf("sheet %d: %s %q", s.Number, f.line.wire.Name(), words)
			}
		}
	}
	for w, n := range seen {
		if n != 2 {
			t.Errorf("%s has %d flags, want one on either sheet", w.Name(), n)
		}
	}
	if len(seen) == 0 {
		t.Error("no wire leaves a sheet")
	}
}

// A sheet takes the next cluster as long as there is room.
func TestPlanSheets(t *testing.T) {
	size := []int{30, 20, 20, 50, 10}
	fits := func(plan [][]int, sheet int) (bool, error) {
		sum := 0
		for _, k := range plan[sheet] {
			sum += size[k]
		}
		return sum <= 60, nil
	}
	for _, c := range []struct {
		used []int
		want [][]int
	}{
		{[]int{0}, [][]int{{0}}},
		{[]int{0, 1}, [][]int{{0, 1}}},
		{[]int{0, 1, 2}, [][]int{{0, 1}, {2}}},
		{[]int{0, 1, 2, 3, 4}, [][]int{{0, 1}, {2}, {3, 4}}},
	} {
		s := &set{}
		if err := s.planSheets(c.used, fits); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(c.want, s.plan); diff != "" {
			t.Errorf("%v:\n%s", c.used, diff)
		}
	}
}

// On an area that is far too small nothing panics: what found no place is listed.
func TestCrowdedAreaListsWhatIsMissing(t *testing.T) {
	o := Options{Width: 125, Height: 95}
	sheets, err := Sheets(load(t, "../../examples/tern-point/jobs/tern-point-14.yaml"), o)
	if err != nil {
		t.Fatal(err)
	}
	missing := 0
	for _, s := range sheets {
		missing += len(s.Stats.Unrouted) + len(s.Stats.Unlabelled)
		s.Draw(ink.NewRecorder(o.Width, o.Height))
	}
	if missing == 0 {
		t.Error("everything is said to be on a sheet of a hand's breadth")
	}
	if _, err := Sheets(load(t, "../../examples/tern-point/jobs/tern-point-14.yaml"), Options{Width: 60, Height: 50}); err == nil {
		t.Error("an area of 60 x 50 mm is accepted")
	}
}

// As much is free at the left of a sheet as at its right.
func TestSheetsAreCentred(t *testing.T) {
	for _, s := range shuttleSheets(t) {
		h := s.c.hull(&s.g.d)
		if off := h.X0 + h.X1 - float64(s.g.d.Width); off > 1.01 || off < -1.01 {
			t.Errorf("sheet %d reaches from %v to %v of %d", s.Number, h.X0, h.X1, s.g.d.Width)
		}
	}
}
