package route_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/arrange/arrangetest"
	"github.com/lugwright/lugwright/render/route"
	"github.com/lugwright/lugwright/render/symbol"
)

type cell = symbol.Cell

func at(x, y int) arrange.Place { return arrange.Place{At: cell{X: x, Y: y}} }

func TestStraightWireHasNoBend(t *testing.T) {
	b := arrangetest.New(40, 30).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Wire("W1", "F1.2", "F2.1", "", 1)
	r := route.Run(&b.D, &arrange.Layout{Items: []arrange.Place{at(10, 4), at(10, 18)}}, nil)
	if diff := cmp.Diff([][]cell{{{X: 10, Y: 8}, {X: 10, Y: 18}}}, r.Paths); diff != "" {
		t.Error(diff)
	}
	if r.Bends != 0 || r.Crossing != 0 || len(r.Dots) != 0 {
		t.Errorf("%+v", r)
	}
}

func TestWireGoesRoundABody(t *testing.T) {
	b := arrangetest.New(60, 40).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Box("U1", arrange.Host, "a", "", "", "").Wire("W1", "F1.2", "F2.1", "", 1)
	l := &arrange.Layout{Items: []arrange.Place{at(20, 3), at(20, 30), at(14, 14)}}
	r := route.Run(&b.D, l, nil)
	if len(r.Failed) > 0 {
		t.Fatal("no way was found")
	}
	checkPaths(t, &b.D, l, r)
	if r.Bends < 2 {
		t.Errorf("it cannot pass with %d bends", r.Bends)
	}
}

// Two wires of one pin join in a dot on a trunk before it, and one of them runs to the pin.
func TestWiresOfOnePinJoinBeforeIt(t *testing.T) {
	b := arrangetest.New(60, 40).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Two("F3", arrange.InChain)
	b.Wire("W1", "F1.2", "F2.1", "", 1).Wire("W2", "F3.1", "F2.1", "", 1)
	r := route.Run(&b.D, &arrange.Layout{Items: []arrange.Place{at(20, 4), at(20, 24), at(40, 24)}}, nil)
	if len(r.Failed) > 0 || len(r.Dots) != 1 {
		t.Fatalf("failed %v, dots %v", r.Failed, r.Dots)
	}
	if end := r.Paths[0][len(r.Paths[0])-1]; end != (cell{X: 20, Y: 24}) {
		t.Errorf("W1 ends at %v, not on the pin", end)
	}
	if d := r.Dots[0]; d.X != 20 || d.Y < 20 || d.Y > 24 {
		t.Errorf("the dot lies at %v, away from the pin", d)
	}
}

func TestRailIsLandedOnFromInside(t *testing.T) {
	b := arrangetest.New(40, 30).Bar("P", arrange.TopRow).Bar("N", arrange.BottomRow).Two("F1", arrange.InChain)
	b.Wire("W1", "P", "F1.1", "", 1).Wire("W2", "F1.2", "N", "", 1)
	l := &arrange.Layout{Items: []arrange.Place{at(15, 12)}, Bars: []arrange.Span{{At: cell{X: 2, Y: 3}, Length: 36}, {At: cell{X: 2, Y: 27}, Length: 36}}}
	r := route.Run(&b.D, l, nil)
	want := [][]cell{{{X: 15, Y: 3}, {X: 15, Y: 12}}, {{X: 15, Y: 16}, {X: 15, Y: 27}}}
	if diff := cmp.Diff(want, r.Paths); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]cell{{X: 15, Y: 3}, {X: 15, Y: 27}}, r.Dots); diff != "" {
		t.Errorf("every landing has its dot:\n%s", diff)
	}
}

func TestNoWayIsReported(t *testing.T) {
	b := arrangetest.New(40, 30).Two("F1", arrange.InChain).Box("U1", arrange.Host, "a", "", "", "").Wire("W1", "F1.1", "U1.a", "", 1)
	// the pin of the box is shut in by the edge of the sheet
	r := route.Run(&b.D, &arrange.Layout{Items: []arrange.Place{at(30, 10), at(0, 10)}}, nil)
	if diff := cmp.Diff([]int{0}, r.Failed); diff != "" || r.Paths[0] != nil {
		t.Errorf("failed %v, path %v", r.Failed, r.Paths[0])
	}
}

// A narrow gap that only one wire can take: the other goes round, neither is lost.
func TestTearingUpFindsRoomForBoth(t *testing.T) {
	b := arrangetest.New(70, 40)
	for _, n := range []string{"F1", "F2", "F3", "F4"} {
		b.Two(n, arrange.InChain)
	}
	b.Box("U1", arrange.Host, "", "", "", "").Box("U2", arrange.Host, "", "", "", "")
	b.Wire("W1", "F1.2", "F2.1", "", 1).Wire("W2", "F3.2", "F4.1", "", 1)
	l := &arrange.Layout{Items: []arrange.Place{at(29, 4), at(29, 30), at(33, 4), at(33, 30), at(16, 16), at(30, 16)}}
	r := route.Run(&b.D, l, nil)
	if len(r.Failed) > 0 {
		t.Fatalf("failed: %v", r.Failed)
	}
	checkPaths(t, &b.D, l, r)
}

func TestAgainKeepsWhatFits(t *testing.T) {
	b := arrangetest.Cart(110, 70)
	l, _ := arrange.Start(&b.D)
	l = arrange.Improve(&b.D, l, arrange.Effort{Moves: 4000, Hot: 20, Cold: 1, Reach: 20, Seed: 1})
	first := route.Run(&b.D, l, arrange.FitRails(&b.D, l))
	again := route.Again(&b.D, l, first.Paths)
	kept := 0
	for w := range first.Paths {
		if cmp.Equal(first.Paths[w], again.Paths[w]) {
			kept++
		}
	}
	if kept < len(first.Paths)*9/10 {
		t.Errorf("only %d of %d paths stayed on an unchanged diagram", kept, len(first.Paths))
	}
}

// Whatever the diagram: every wire has a path or is reported; paths are level and upright,
// run through no body, over no foreign pin, share no stretch; and joining what touches at
// dots and ends gives back the netlist.
func TestRandomDiagrams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := arrangetest.Random(t)
		r := route.Run(d, l, nil)
		missing := map[int]bool{}
		for _, w := range r.Failed {
			missing[w] = true
		}
		for w, p := range r.Paths {
			if (p == nil) != missing[w] {
				t.Fatalf("%s: path %v, reported missing: %v", d.Wires[w].Name, p, missing[w])
			}
		}
		checkPaths(t, d, l, r)
		checkNets(t, d, l, r)
		if diff := cmp.Diff(r, route.Run(d, l, nil)); diff != "" {
			t.Fatalf("the same diagram is routed otherwise:\n%s", diff)
		}
	})
}

type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// stretches lists the unit lines of a path.
func stretches(path []cell) []string {
	var s []string
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		for a != b {
			n := a
			switch {
			case b.X > a.X:
				n.X++
			case b.X < a.X:
				n.X--
			case b.Y > a.Y:
				n.Y++
			default:
				n.Y--
			}
			lo, hi := a, n
			if n.X < a.X || n.Y < a.Y {
				lo, hi = n, a
			}
			s = append(s, fmt.Sprint(lo, hi))
			a = n
		}
	}
	return s
}

// checkPaths holds paths to what may never happen.
func checkPaths(t failer, d *arrange.Diagram, l *arrange.Layout, r *route.Result) {
	t.Helper()
	owner := map[string]int{}
	pins := map[cell]arrange.Terminal{}
	for i := range d.Items {
		for p := range d.Items[i].Forms[0].Pins {
			c, _ := l.Pin(d, i, p)
			pins[c] = arrange.Terminal{Item: i, Pin: p}
		}
	}
	for w, path := range r.Paths {
		for i := 1; i < len(path); i++ {
			if path[i].X != path[i-1].X && path[i].Y != path[i-1].Y {
				t.Fatalf("%s slants from %v to %v", d.Wires[w].Name, path[i-1], path[i])
			}
		}
		for _, s := range stretches(path) {
			if o, ok := owner[s]; ok && o != w {
				t.Fatalf("%s and %s share the stretch %s", d.Wires[w].Name, d.Wires[o].Name, s)
			}
			owner[s] = w
		}
		for _, c := range points(path) {
			if term, ok := pins[c]; ok && term != d.Wires[w].Ends[0] && term != d.Wires[w].Ends[1] {
				t.Fatalf("%s runs over a foreign pin at %v", d.Wires[w].Name, c)
			}
			for i := range d.Items {
				for _, b := range l.Bodies(d, i) {
					if float64(c.X) > b.X0 && float64(c.X) < b.X1 && float64(c.Y) > b.Y0 && float64(c.Y) < b.Y1 {
						t.Fatalf("%s runs through %s at %v", d.Wires[w].Name, d.Items[i].Name, c)
					}
				}
			}
		}
	}
}

func points(path []cell) []cell {
	var ps []cell
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		for x := min(a.X, b.X); x <= max(a.X, b.X); x++ {
			for y := min(a.Y, b.Y); y <= max(a.Y, b.Y); y++ {
				ps = append(ps, cell{X: x, Y: y})
			}
		}
	}
	return ps
}

// checkNets joins what the drawing joins and compares it with the wires that were routed.
func checkNets(t failer, d *arrange.Diagram, l *arrange.Layout, r *route.Result) {
	t.Helper()
	name := func(e arrange.Terminal) string {
		if e.IsBar() {
			return d.Bars[e.Pin].Name
		}
		return fmt.Sprintf("%s.%d", d.Items[e.Item].Name, e.Pin)
	}
	drawn, wanted := union{}, union{}
	dots := map[cell]bool{}
	for _, c := range r.Dots {
		dots[c] = true
	}
	for w, path := range r.Paths {
		if path == nil {
			continue
		}
		me := d.Wires[w].Name
		wanted.join(name(d.Wires[w].Ends[0]), name(d.Wires[w].Ends[1]))
		for _, end := range [2]cell{path[0], path[len(path)-1]} {
			for i := range d.Items {
				for p := range d.Items[i].Forms[0].Pins {
					if c, _ := l.Pin(d, i, p); c == end {
						drawn.join(me, name(arrange.Terminal{Item: i, Pin: p}))
					}
				}
			}
			for b := range d.Bars {
				s := l.Bars[b].Box()
				if x, y := float64(end.X), float64(end.Y); x >= s.X0 && x <= s.X1 && y >= s.Y0 && y <= s.Y1 {
					drawn.join(me, d.Bars[b].Name)
				}
			}
		}
		for v, other := range r.Paths {
			for _, c := range points(other) {
				if v != w && dots[c] && contains(points(path), c) {
					drawn.join(me, d.Wires[v].Name)
				}
			}
		}
	}
	for a := range wanted {
		for b := range wanted {
			if (wanted.find(a) == wanted.find(b)) != (drawn.find(a) == drawn.find(b)) {
				t.Fatalf("%s and %s: joined by wires %v, on paper %v", a, b, wanted.find(a) == wanted.find(b), drawn.find(a) == drawn.find(b))
			}
		}
	}
}

func contains(cs []cell, c cell) bool {
	for _, x := range cs {
		if x == c {
			return true
		}
	}
	return false
}

type union map[string]string

func (u union) find(a string) string {
	for u[a] != "" && u[a] != a {
		a = u[a]
	}
	return a
}

func (u union) join(a, b string) {
	for _, n := range [2]string{a, b} {
		if u[n] == "" {
			u[n] = n
		}
	}
	u[u.find(a)] = u.find(b)
}

// The heaviest wire of a pin runs on to it, whoever lands farther out.
func TestHeaviestWireReachesThePin(t *testing.T) {
	b := arrangetest.New(70, 40).Two("F1", arrange.InChain).Two("F2", arrange.InChain).Two("F3", arrange.InChain)
	b.Wire("W1", "F1.2", "F2.1", "", 1).Wire("W2", "F3.1", "F2.1", "", 4)
	r := route.Run(&b.D, &arrange.Layout{Items: []arrange.Place{at(20, 4), at(20, 24), at(40, 24)}}, nil)
	if len(r.Failed) > 0 {
		t.Fatal(r.Failed)
	}
	heavy := r.Paths[1]
	if heavy[0] != (cell{X: 20, Y: 24}) && heavy[len(heavy)-1] != (cell{X: 20, Y: 24}) {
		t.Errorf("the cable runs %v and not to the pin at 20, 24", heavy)
	}
}
