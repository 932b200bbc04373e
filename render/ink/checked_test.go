package ink

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestCheckedRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	ok := Text{At: At(10, 10), String: "W1", Capital: 2.5}
	text := func(change func(*Text)) func(Page) {
		return func(p Page) { t := ok; change(&t); p.Text(t) }
	}
	for _, c := range []struct {
		name string
		draw func(Page)
		want string
	}{
		{"not a number", func(p Page) { p.Path(Lines(At(nan, 1), At(2, 2)), Pen(Thin)) }, "a path goes to {NaN 1}"},
		{"infinite control", func(p Page) { p.Path(Path(nil).Move(1, 1).Curve(At(1, inf), At(1, 1), 2, 2), Pen(Thin)) }, "control points"},
		{"off the paper", func(p Page) { p.Path(Lines(At(1, 1), At(101, 2)), Pen(Thin)) }, "off the paper"},
		{"half a line off", func(p Page) { p.Path(Lines(At(0, 1), At(0, 2)), Pen(Thin)) }, "off the paper"},
		{"huge", func(p Page) { p.Path(Lines(At(1, 1), At(1e300, 2)), Pen(Thin)) }, "a path goes to"},
		{"no move", func(p Page) { p.Path(Path{}.Line(1, 1), Pen(Thin)) }, "instead of a move"},
		{"unknown operation", func(p Page) { p.Path(Path{{Op: MoveTo}, {Op: 9}}, Pen(Thin)) }, "unknown operation 9"},
		{"no width", func(p Page) { p.Path(Lines(At(1, 1), At(2, 2)), Pen(0)) }, "width of 0"},
		{"bad width", func(p Page) { p.Path(Lines(At(1, 1), At(2, 2)), Pen(nan)) }, "width of NaN"},
		{"bad dash", func(p Page) {
			p.Path(Lines(At(1, 1), At(2, 2)), Style{Stroke: &Color{}, Width: 1, Dash: []float64{-1}})
		}, "dash pattern"},
		{"empty dash", func(p Page) {
			p.Path(Lines(At(1, 1), At(2, 2)), Style{Stroke: &Color{}, Width: 1, Dash: []float64{0, 0}})
		}, "no length"},
		{"text nowhere", text(func(t *Text) { t.At.X = nan }), "stands at no number"},
		{"text off", text(func(t *Text) { t.At.X = 99 }), `text "W1" reaches off the paper`},
		{"text of no height", text(func(t *Text) { t.Capital = 0 }), "height of 0"},
		{"no such face", text(func(t *Text) { t.Face = 7 }), "face 7"},
		{"class with a quote", func(p Page) { p.Open(Group{Class: `a"b`}); p.Close() }, "not a plain lower-case word"},
		{"data with a space", func(p Page) { p.Open(Group{Class: "wire", Data: map[string]string{"x y": ""}}); p.Close() }, `data named "x y"`},
		{"closed twice", func(p Page) { p.Open(Group{Class: "wire"}); p.Close(); p.Close() }, "never opened"},
		{"left open", func(p Page) { p.Open(Group{Class: "wire"}) }, "1 groups are still open"},
	} {
		page := NewRecorder(100, 100)
		checked := Check(page)
		c.draw(checked)
		if err := checked.Err(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
		if len(page.Marks) > 0 {
			t.Errorf("%s: the mark was drawn", c.name)
		}
	}
}

func TestCheckedPassesGoodMarksAndKeepsTheFirstFault(t *testing.T) {
	page := NewRecorder(100, 100)
	checked := Check(page)
	checked.Text(Text{At: At(10, 10), String: "two\nlines", Capital: 2.5})
	checked.Path(nil, Pen(Thin))
	checked.Text(Text{At: At(200, 10), String: "first", Capital: 2.5})
	checked.Text(Text{At: At(300, 10), String: "second", Capital: 2.5})
	checked.Path(Lines(At(1, 1), At(2, 2)), Pen(Thin))
	if err := checked.Err(); err == nil || !strings.Contains(err.Error(), `"first"`) {
		t.Errorf("error is %v", err)
	}
	if len(page.Marks) != 2 || page.Marks[0].Text.String != "two lines" {
		t.Errorf("drawn: %+v", page.Marks)
	}
}

func TestReplayDrawsTheSame(t *testing.T) {
	first := NewRecorder(100, 100)
	first.Open(Group{Class: "part", Name: "K1"})
	first.Path(Circle(At(50, 50), 5), Pen(Thin))
	first.Open(Group{Class: "label", Data: map[string]string{"wire": "W1"}})
	first.Text(Text{At: At(10, 10), String: "W1", Capital: 2.5})
	first.Close()
	first.Path(Lines(At(1, 1), At(2, 2)), Pen(Wide).Dashed())
	first.Close()
	first.Open(Group{Class: "part", Name: "K2"})
	first.Text(Text{At: At(20, 10), String: "K2", Capital: 2.5})
	first.Close()

	second := NewRecorder(100, 100)
	checked := Check(second)
	first.Replay(checked)
	if err := checked.Err(); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(first.Marks, second.Marks); diff != "" {
		t.Error(diff)
	}
	if second.Depth() != 0 {
		t.Errorf("%d groups stay open", second.Depth())
	}
}

func TestRecorderBoxIncludesLineWidth(t *testing.T) {
	page := NewRecorder(100, 100)
	if _, any := page.Box(); any {
		t.Error("an empty page has ink")
	}
	page.Path(Lines(At(10, 10), At(20, 10)), Pen(2))
	page.Path(Rect{At(30, 30), At(40, 40)}.Path(), Style{}) // neither line nor fill
	box, any := page.Box()
	if want := (Rect{At(9, 9), At(21, 11)}); !any || box != want {
		t.Errorf("box %v, want %v", box, want)
	}
}
