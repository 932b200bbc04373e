package path_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/quantity"
	"pgregory.net/rapid"
)

// grid is the nodes that random harnesses are laid between: the only terminals of X1…X6.
const grid = 6

func randomEnds(rt *rapid.T) (a, b int) {
	return rapid.IntRange(1, grid).Draw(rt, "a"), rapid.IntRange(1, grid).Draw(rt, "b")
}

// TestJoinedAgainstEveryPosition compares Joined with the plain question, asked in each
// position of every switch and each state of every coil.
func TestJoinedAgainstEveryPosition(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var b strings.Builder
		for i := 1; i <= grid; i++ {
			fmt.Fprintf(&b, "X%d link s s\n", i)
		}
		wire := 0
		join := func(part, terminal string, to int) {
			wire++
			fmt.Fprintf(&b, "W%d %s.%s X%d\n", wire, part, terminal, to)
		}
		for i := range rapid.IntRange(1, 4).Draw(rt, "switches") {
			part := fmt.Sprintf("S%d", i+1)
			fmt.Fprintf(&b, "%s switch direction neutral,forward,reverse forward:c,1 reverse:c,2\n", part)
			from, one := randomEnds(rt)
			join(part, "c", from)
			join(part, "1", one)
			join(part, "2", rapid.IntRange(1, grid).Draw(rt, "two"))
		}
		for i := range rapid.IntRange(0, 2).Draw(rt, "relays") {
			part := fmt.Sprintf("K%d", i+1)
			fmt.Fprintf(&b, "%s coil 86 85\n%s contact 30 87\n%s contact 30 87a rest\n", part, part, part)
			from, one := randomEnds(rt)
			join(part, "30", from)
			join(part, "87", one)
			join(part, "87a", rapid.IntRange(1, grid).Draw(rt, "rest"))
		}
		h := pathtest.Harness(t, b.String())
		g := path.New(h)
		from, to := pathtest.Node(t, h, "X1"), pathtest.Node(t, h, "X2")
		p, got := g.Joined(path.Through{Sorts: path.Metal}, from, to)
		if want := joinedInSome(g, h, from, to); got != want {
			rt.Fatalf("joined: %v by %v, every position: %v\n%s", got, p, want, b.String())
		}
		if got && (p.Begin != from || p.End != to || !p.Agrees()) {
			rt.Fatalf("path %v from %v to %v agrees: %v", p, p.Begin, p.End, p.Agrees())
		}
	})
}

// joinedInSome tries every position of every control and both states of every coil.
func joinedInSome(g *path.Graph, h *wiring.Harness, from, to wiring.NodeID) bool {
	var controls []*wiring.Control
	var coils []*wiring.Coil
	for _, p := range h.Parts {
		controls = append(controls, p.Controls...)
		for _, el := range p.Elements {
			if c, ok := el.(*wiring.Coil); ok {
				coils = append(coils, c)
			}
		}
	}
	s := &wiring.State{Set: map[*wiring.Control]string{}}
	energised := map[*wiring.Coil]bool{}
	closed := func(el wiring.Element) bool {
		c := el.(*wiring.Contact)
		return c.RestClosed != energised[c.Coil]
	}
	var try func(i int) bool
	try = func(i int) bool {
		switch {
		case i < len(controls):
			for _, position := range controls[i].Positions {
				s.Set[controls[i]] = position
				if try(i + 1) {
					return true
				}
			}
			return false
		case i < len(controls)+len(coils):
			for _, on := range []bool{false, true} {
				energised[coils[i-len(controls)]] = on
				if try(i + 1) {
					return true
				}
			}
			return false
		}
		return g.From(path.Through{Sorts: path.Metal, Setting: path.InState(s, closed)}, from).Has(to)
	}
	return try(0)
}

// TestProtectionAgainstEveryPath compares Protection with the largest of the smallest fuses
// over all simple paths.
func TestProtectionAgainstEveryPath(t *testing.T) {
	ratings := []int{5, 10, 30, 200}
	rapid.Check(t, func(rt *rapid.T) {
		var b strings.Builder
		for i := 1; i <= grid; i++ {
			fmt.Fprintf(&b, "X%d link s s\n", i)
		}
		for i := range rapid.IntRange(0, 10).Draw(rt, "fuses") {
			a, z := randomEnds(rt)
			fmt.Fprintf(&b, "F%d fuse in out %d\nW%d F%d.in X%d\nW%d F%d.out X%d\n", i+1,
				rapid.SampledFrom(ratings).Draw(rt, "rating"), 2*i+1, i+1, a, 2*i+2, i+1, z)
		}
		for i := range rapid.IntRange(0, 2).Draw(rt, "bypasses") {
			a, z := randomEnds(rt)
			fmt.Fprintf(&b, "W%d X%d X%d\n", 100+i, a, z)
		}
		h := pathtest.Harness(t, b.String())
		g := path.New(h)
		from := pathtest.Node(t, h, "X1")
		p := g.Protection(path.Through{Sorts: path.Metal}, from, path.Unlimited)
		for i := 1; i <= grid; i++ {
			n := pathtest.Node(t, h, fmt.Sprintf("X%d", i))
			got, _ := p.At(n)
			if want := widest(g, from, n, path.Unlimited, map[wiring.NodeID]bool{}); got != want {
				rt.Fatalf("X%d: %v, every path: %v\n%s", i, got, want, b.String())
			}
			if way, ok := p.To(n); ok && narrowest(way) != got {
				rt.Fatalf("X%d: the path %v lets through %v, not %v", i, way, narrowest(way), got)
			}
		}
	})
}

func widest(g *path.Graph, at, to wiring.NodeID, amps quantity.Ampere, seen map[wiring.NodeID]bool) quantity.Ampere {
	if at == to {
		return amps
	}
	seen[at] = true
	defer delete(seen, at)
	best := quantity.Ampere(0)
	for _, e := range g.At(at) {
		next := e.Other(at)
		if seen[next] {
			continue
		}
		through := amps
		if f, ok := e.Element.(*wiring.Fuse); ok {
			through = min(through, f.Rating)
		}
		best = max(best, widest(g, next, to, through, seen))
	}
	return best
}

func narrowest(way path.Path) quantity.Ampere {
	amps := path.Unlimited
	for _, el := range way.Elements(path.Fuse) {
		amps = min(amps, el.(*wiring.Fuse).Rating)
	}
	return amps
}
