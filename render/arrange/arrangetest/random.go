package arrangetest

import (
	"fmt"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/symbol"
)

// Random draws a diagram of a few boxes and two-pin parts in a loose grid, with rails, a
// splice and wires between random terminals, and a layout in which nothing overlaps.
func Random(t *rapid.T) (*arrange.Diagram, *arrange.Layout) {
	const pitchX, pitchY = 20, 16
	cols, rows := rapid.IntRange(2, 4).Draw(t, "columns"), rapid.IntRange(1, 3).Draw(t, "rows")
	b := New(cols*pitchX+6, rows*pitchY+14)
	b.Bar("P", arrange.TopRow).Bar("N", arrange.BottomRow)
	l := &arrange.Layout{Bars: []arrange.Span{
		{At: symbol.Cell{X: 1, Y: arrange.RailInset}, Length: b.D.Width - 2},
		{At: symbol.Cell{X: 1, Y: b.D.Height - arrange.RailInset}, Length: b.D.Width - 2},
	}}
	refs := []string{"P", "N"}
	for i := range cols * rows {
		name := fmt.Sprintf("X%d", i+1)
		at := symbol.Cell{X: 5 + i%cols*pitchX, Y: 7 + i/cols*pitchY}
		if rapid.Bool().Draw(t, "box") {
			b.Box(name, arrange.InChain, "a b", "c d", "e", "f")
			refs = append(refs, name+".a", name+".b", name+".c", name+".d", name+".e", name+".f")
		} else {
			b.Two(name, arrange.InChain)
			refs = append(refs, name+".1", name+".2")
			at.X += 5
		}
		l.Items = append(l.Items, arrange.Place{At: at})
	}
	for i := range rapid.IntRange(1, 10).Draw(t, "wires") {
		from := rapid.SampledFrom(refs).Draw(t, "from")
		to := rapid.SampledFrom(refs).Filter(func(r string) bool { return r != from }).Draw(t, "to")
		b.Wire(fmt.Sprintf("W%d", i+1), from, to, "RD 18 AWG", rapid.SampledFrom([]int{1, 2, 4}).Draw(t, "weight"))
	}
	return &b.D, l
}
