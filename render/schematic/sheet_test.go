package schematic

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/wiring"
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

// An extended wire shows each of its pieces, joined by a sleeve.
func TestExtendedWireShowsItsPieces(t *testing.T) {
	o := Options{Width: 270, Height: 170}
	sheets, err := Sheets(load(t, "../../examples/tern-point/jobs/tern-point-14.yaml"), o)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sheets {
		rec := ink.NewRecorder(o.Width, o.Height)
		s.Draw(rec)
		for i := range s.g.wires {
			d := s.g.wires[i]
			if d.line.wire == nil || d.flag != nil {
				continue
			}
			ps := s.piecesOf(i)
			if len(ps) != max(1, len(d.line.wire.Pieces)) {
				t.Errorf("%s shows %d of %d pieces", d.line.wire.Name(), len(ps), len(d.line.wire.Pieces))
			}
		}
	}
}

// A flag names the sheet and the zone where its wire goes on, and so does the one there.
func TestReferencesMeet(t *testing.T) {
	o := Options{Width: 270, Height: 170, Zone: func(at ink.Point) string {
		return string(rune('A'+int(at.Y/60))) + string(rune('1'+int(at.X/70)))
	}}
	sheets, err := Sheets(load(t, "../../examples/tern-point/jobs/tern-point-14.yaml"), o)
	if err != nil {
		t.Fatal(err)
	}
	if len(sheets) < 2 {
		t.Skip("all on one sheet")
	}
	seen := map[*wiring.Wire]int{}
	for _, s := range sheets {
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
