package arrange_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/arrange/arrangetest"
	"github.com/lugwright/lugwright/render/symbol"
)

func TestTrimCutsBarsToTheirWires(t *testing.T) {
	b := arrangetest.New(60, 40).Bar("P", arrange.TopRow).Bar("X1", arrange.Free).Two("F1", arrange.InChain).Two("F2", arrange.InChain)
	b.Wire("W1", "P", "F1.1", "RD", 1).Wire("W2", "P", "F2.1", "RD", 1).Wire("W3", "F1.2", "X1", "RD", 1).Wire("W4", "X1", "F2.2", "RD", 1)
	l := &arrange.Layout{Items: make([]arrange.Place, 2), Bars: []arrange.Span{
		{At: symbol.Cell{X: 1, Y: 3}, Length: 58}, {At: symbol.Cell{X: 30, Y: 10}, Length: 20, Upright: true},
	}}
	path := func(x0, y0, x1, y1 int) []symbol.Cell { return []symbol.Cell{{X: x0, Y: y0}, {X: x1, Y: y1}} }
	arrange.Trim(&b.D, l, [][]symbol.Cell{path(10, 3, 10, 8), path(40, 3, 40, 8), path(10, 15, 30, 15), path(30, 22, 40, 22)})
	want := []arrange.Span{{At: symbol.Cell{X: 9, Y: 3}, Length: 32}, {At: symbol.Cell{X: 30, Y: 15}, Length: 7, Upright: true}}
	if diff := cmp.Diff(want, l.Bars); diff != "" {
		t.Errorf("a rail keeps a unit at either end, a splice none:\n%s", diff)
	}
}

func TestFitRailsKeepsTheLandings(t *testing.T) {
	b := arrangetest.Cart(110, 70)
	l, _ := arrange.Start(&b.D)
	ways := arrange.FitRails(&b.D, l)
	for w, way := range ways {
		for end, term := range b.D.Wires[w].Ends {
			if !term.IsBar() || b.D.Bars[term.Pin].Row == arrange.Free {
				continue
			}
			c := way[0]
			if end == 1 {
				c = way[len(way)-1]
			}
			if s := l.Bars[term.Pin]; c.X < s.At.X || c.X > s.End().X {
				t.Errorf("%s lands at %v beyond its rail %+v", b.D.Wires[w].Name, c, s)
			}
		}
	}
}
