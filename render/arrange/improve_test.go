package arrange

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/symbol"
)

// field is an invented diagram of a few parts for the inside tests of this package.
func field(n int) (*Diagram, *Layout) {
	d := &Diagram{Width: 80, Height: 50, Bars: []Bar{
		{Name: "P", Row: TopRow, Thick: true, Owner: OnBar(0)}, {Name: "N", Row: BottomRow, Thick: true, Owner: OnBar(0)}, {Name: "X1", Owner: OnBar(0)},
	}}
	for i := range n {
		place := symbol.Placement{}
		it := Item{Name: string(rune('A' + i))}
		for t := range 4 {
			place.Turns = t
			it.Forms = append(it.Forms, Form{Placement: place, Body: []symbol.Box{place.Box(symbol.Box{X0: -1, Y0: 0.5, X1: 1, Y1: 3.5})}, Pins: []symbol.Pin{
				{At: place.Cell(symbol.Cell{}), Side: place.Side(symbol.Top)}, {At: place.Cell(symbol.Cell{Y: 4}), Side: place.Side(symbol.Bottom)},
			}})
		}
		d.Items = append(d.Items, it)
	}
	box := Item{Name: "U", Trades: [][]int{{0, 1, 2, 3}}, Forms: []Form{{Body: []symbol.Box{{X0: 0.5, Y0: 0.5, X1: 9.5, Y1: 11.5}}}}}
	for i := range 4 {
		box.Forms[0].Pins = append(box.Forms[0].Pins, symbol.Pin{At: symbol.Cell{Y: 3 + 2*i}, Side: symbol.Left})
	}
	d.Items = append(d.Items, box)
	words := []Words{{Lines: []string{"W"}, Width: 4, Height: 1.2}}
	for i := range n {
		a, b := Terminal{Item: i, Pin: 0}, Terminal{Item: i, Pin: 1}
		d.Wires = append(d.Wires, Wire{Name: "u", Ends: [2]Terminal{OnBar(i % 3), a}, Weight: 1 + i%4, Labels: words},
			Wire{Name: "d", Ends: [2]Terminal{b, {Item: n, Pin: i % 4}}, Weight: 1, Labels: words, Marks: [2]Words{words[0], {}}})
	}
	l, _ := Start(d)
	return d, l
}

// What is tried and taken back leaves no trace on the grid.
func TestRejectedChangesLeaveNoTrace(t *testing.T) {
	d, l := field(6)
	p := newPlan(d, l.Clone())
	p.rng = newRandom(3)
	p.hold(nil)
	price, taken, words, level, plumb := slices.Clone(p.price), slices.Clone(p.taken), slices.Clone(p.words), slices.Clone(p.run[0]), slices.Clone(p.run[1])
	var c change
	for range 3000 {
		if _, ok := p.try(&c, 20, 1e-9); ok {
			// it was an improvement: begin from there
			price, taken, words, level, plumb = slices.Clone(p.price), slices.Clone(p.taken), slices.Clone(p.words), slices.Clone(p.run[0]), slices.Clone(p.run[1])
			continue
		}
		if !slices.Equal(price, p.price) || !slices.Equal(taken, p.taken) || !slices.Equal(words, p.words) || !slices.Equal(level, p.run[0]) || !slices.Equal(plumb, p.run[1]) {
			t.Fatal("a change that was taken back left something on the grid")
		}
	}
}

// What a plan keeps while it changes is what it would be if it were made anew.
func TestPlanStaysTrue(t *testing.T) {
	d, l := field(6)
	p := newPlan(d, l.Clone())
	p.rng = newRandom(5)
	p.hold(nil)
	var c change
	for range 2000 {
		p.try(&c, 20, 30)
	}
	fresh := &plan{d: d, l: p.l}
	for i := range d.Items {
		if diff := cmp.Diff(fresh.measureAlone(i), p.hulls[i].all); diff != "" {
			t.Errorf("item %d: %s", i, diff)
		}
	}
	for w := range p.ways {
		p.mark(w, -1)
	}
	for i := range d.Items {
		p.stand(i, -1)
	}
	for b := range d.Bars {
		p.lay(b, -1)
	}
	for q := range p.price {
		if p.price[q] != 0 || p.taken[q] != 0 || p.words[q] != 0 || p.metal[q] != 0 || p.run[0][q] != 0 || p.run[1][q] != 0 {
			t.Fatalf("point %d is not free after everything was taken off", q)
		}
	}
}

// measureAlone measures an item without a grid.
func (p *plan) measureAlone(i int) symbol.Box {
	p.hulls = make([]footprint, len(p.d.Items))
	f := p.measure(i)
	return f.all
}

func TestImproveMakesItNoDearer(t *testing.T) {
	d, l := field(8)
	before := CostOf(d, l).Total
	got := Improve(d, l, Effort{Moves: 4000, Hot: 30, Cold: 1, Reach: 20, Seed: 1})
	if after := CostOf(d, got).Total; after > before {
		t.Errorf("from %v to %v", before, after)
	}
	if again := Improve(d, l, Effort{Moves: 4000, Hot: 30, Cold: 1, Reach: 20, Seed: 1}); !cmp.Equal(got, again) {
		t.Error("the same effort gives another layout")
	}
}

func TestImproveHoldsWhatIsHeld(t *testing.T) {
	d, l := field(5)
	held := make([]bool, len(d.Items))
	held[0], held[3] = true, true
	d.Items[4].Fixed = true
	got := Improve(d, l, Effort{Moves: 3000, Hot: 60, Cold: 1, Reach: 20, Seed: 2, Held: held})
	for _, i := range []int{0, 3, 4} {
		if !cmp.Equal(l.Items[i], got.Items[i]) {
			t.Errorf("item %d moved from %+v to %+v", i, l.Items[i], got.Items[i])
		}
	}
}

// Whatever happens, items and splices stay on the sheet and pins keep places of their own.
func TestImproveKeepsItWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := field(rapid.IntRange(1, 9).Draw(t, "items"))
		got := Improve(d, l, Effort{Moves: 600, Hot: 100, Cold: 1, Reach: 30, Seed: rapid.Uint64().Draw(t, "seed")})
		for i := range d.Items {
			if r := got.Reach(d, i); r.X0 < 0 || r.Y0 < RailInset || r.X1 > 80 || r.Y1 > 50-RailInset {
				t.Fatalf("item %d lies at %+v", i, r)
			}
			if s := slices.Clone(got.Items[i].Slot); s != nil {
				slices.Sort(s)
				for k, v := range s {
					if v != k {
						t.Fatalf("item %d: pins in the places %v", i, got.Items[i].Slot)
					}
				}
			}
		}
		for b := range d.Bars {
			if e := got.Bars[b].End(); got.Bars[b].At.X < 0 || e.X > 80 || got.Bars[b].At.Y < 0 || e.Y > 50 {
				t.Fatalf("bar %d lies from %v to %v", b, got.Bars[b].At, e)
			}
		}
	})
}

// A part hung on a rail by a crooked wire is brought under it.
func TestImproveStraightensWires(t *testing.T) {
	d, l := field(1)
	l.Items[0].At = symbol.Cell{X: 60, Y: 30}
	got := Improve(d, l, Effort{Moves: 3000, Hot: 30, Cold: 0.5, Reach: 20, Seed: 1})
	if c := CostOf(d, got); c.Bends > 1 || c.NoRoom > 0 || c.Crossings > 0 {
		t.Errorf("two wires come to %+v", c)
	}
}
