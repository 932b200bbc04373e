package arrange_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/arrange/arrangetest"
	"github.com/lugwright/lugwright/render/symbol"
)

func TestPinFollowsFormAndSlot(t *testing.T) {
	b := arrangetest.New(60, 40).Two("F1", arrange.InChain).Box("U1", arrange.Host, "a b c", "", "", "")
	l := &arrange.Layout{Items: []arrange.Place{{At: symbol.Cell{X: 10, Y: 5}}, {At: symbol.Cell{X: 30, Y: 5}}}}
	for _, c := range []struct {
		form int
		want symbol.Cell
		side symbol.Side
	}{
		{0, symbol.Cell{X: 10, Y: 9}, symbol.Bottom},
		{1, symbol.Cell{X: 6, Y: 5}, symbol.Left},
		{2, symbol.Cell{X: 10, Y: 1}, symbol.Top},
		{3, symbol.Cell{X: 14, Y: 5}, symbol.Right},
	} {
		l.Items[0].Form = c.form
		if at, side := l.Pin(&b.D, 0, 1); at != c.want || side != c.side {
			t.Errorf("form %d: pin 2 at %v on %v, want %v on %v", c.form, at, side, c.want, c.side)
		}
	}
	l.Items[1].Slot = []int{2, 0, 1}
	if at, _ := l.Pin(&b.D, 1, 0); at != (symbol.Cell{X: 30, Y: 12}) {
		t.Errorf("pin a in the place of c is at %v, want 30, 12", at)
	}
}

func TestPullBringsItemsBack(t *testing.T) {
	b := arrangetest.New(60, 40).Bar("P", arrange.TopRow).Bar("N", arrange.BottomRow).Box("U1", arrange.Host, "a b", "c", "", "")
	rapid.Check(t, func(t *rapid.T) {
		l := &arrange.Layout{Items: []arrange.Place{{At: symbol.Cell{X: rapid.IntRange(-30, 90).Draw(t, "x"), Y: rapid.IntRange(-30, 90).Draw(t, "y")}}}}
		l.Pull(&b.D, 0)
		r := l.Reach(&b.D, 0)
		if r.X0 < 0 || r.Y0 < arrange.RailInset || r.X1 > 60 || r.Y1 > 40-arrange.RailInset {
			t.Fatalf("it still reaches to %+v", r)
		}
	})
}

func TestFrameHoldsItsItems(t *testing.T) {
	b := arrangetest.New(60, 40).Bar("P", arrange.TopRow).Two("F1", arrange.InChain).Two("F2", arrange.InChain)
	b.D.Frames = []arrange.Frame{{Name: "A1", Items: []int{0, 1}, Bars: []int{0}}}
	l := &arrange.Layout{Items: []arrange.Place{{At: symbol.Cell{X: 10, Y: 5}}, {At: symbol.Cell{X: 30, Y: 5}}},
		Bars: []arrange.Span{{At: symbol.Cell{X: 8, Y: 3}, Length: 30}}}
	f := l.FrameBox(&b.D, 0)
	for i := range b.D.Items {
		if r := arrange.Hull(l.Bodies(&b.D, i)); r.X0 < f.X0 || r.X1 > f.X1 || r.Y0 < f.Y0 || r.Y1 > f.Y1 {
			t.Errorf("item %d reaches out of its frame: %+v, %+v", i, r, f)
		}
	}
	for _, v := range []float64{f.X0, f.Y0, f.X1, f.Y1} {
		if v == float64(int(v)) {
			t.Errorf("an edge of the frame lies on the grid, where wires run: %+v", f)
		}
	}
}

func TestOverlap(t *testing.T) {
	a := symbol.Box{X1: 4, Y1: 4}
	for _, c := range []struct {
		b    symbol.Box
		want float64
	}{
		{symbol.Box{X0: 1, Y0: 1, X1: 2, Y1: 3}, 2},
		{symbol.Box{X0: 4, X1: 6, Y1: 4}, 0},
		{symbol.Box{X0: 3, Y0: 3, X1: 9, Y1: 9}, 1},
		{symbol.Box{X0: -5, Y0: -5, X1: -1, Y1: -1}, 0},
	} {
		if got := arrange.Overlap(a, c.b); got != c.want {
			t.Errorf("overlap with %+v: %v, want %v", c.b, got, c.want)
		}
		if got := arrange.Touch(a, c.b); got != (c.want > 0) {
			t.Errorf("touch %+v: %v", c.b, got)
		}
	}
}

func TestCloneSharesNothing(t *testing.T) {
	l := &arrange.Layout{Items: []arrange.Place{{Slot: []int{0, 1}}}, Bars: []arrange.Span{{Length: 3}}}
	c := l.Clone()
	c.Items[0].Slot[0], c.Bars[0].Length = 7, 9
	want := &arrange.Layout{Items: []arrange.Place{{Slot: []int{0, 1}}}, Bars: []arrange.Span{{Length: 3}}}
	if diff := cmp.Diff(want, l); diff != "" {
		t.Error(diff)
	}
}
