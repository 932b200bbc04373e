package position

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
)

// tangle is a graph of up to 7 nodes with wires between them, written "1-2 2-3".
func tangle(t testing.TB, nodes int, wires string) *path.Graph {
	var text strings.Builder
	for i := 1; i <= nodes; i++ {
		fmt.Fprintf(&text, "W%d X%d capped\n", 100+i, i)
	}
	for i, w := range strings.Fields(wires) {
		from, to, _ := strings.Cut(w, "-")
		fmt.Fprintf(&text, "W%d X%s X%s\n", i+1, from, to)
	}
	return path.New(pathtest.Harness(t, text.String()))
}

func anyEdge(*path.Edge) bool { return true }

// wiresOf writes components as sorted lists of their wires.
func wiresOf(components [][]*path.Edge) []string {
	var all []string
	for _, c := range components {
		var wires []string
		for _, e := range c {
			wires = append(wires, e.Wire.Name())
		}
		slices.SortFunc(wires, compareNames)
		all = append(all, strings.Join(wires, " "))
	}
	slices.SortFunc(all, compareNames)
	return all
}

func compareNames(a, b string) int {
	switch {
	case wiring.Less(a, b):
		return -1
	case wiring.Less(b, a):
		return 1
	}
	return 0
}

func TestBetween(t *testing.T) {
	tests := []struct {
		name, wires string
		nodes       int
		want        []string
	}{
		{"one wire", "1-2", 2, []string{"W1"}},
		{"two wires side by side", "1-2 2-1", 2, []string{"W1", "W2"}},
		{"nothing", "1-3 2-4", 4, nil},
		{"a wire and a way around", "1-2 1-3 3-2", 3, []string{"W1", "W2 W3"}},
		{"a stub and a loop on it", "1-3 3-2 3-4 4-5 5-6 6-4", 6, []string{"W1 W2"}},
		{"a bridge between two ways", "1-3 3-2 1-4 4-2 3-4", 4, []string{"W1 W2 W3 W4 W5"}},
		{"a loop in the middle of a way", "1-3 3-4 3-5 4-6 5-6 6-2", 6, []string{"W1 W2 W3 W4 W5 W6"}},
		{"loops at both ends", "1-3 3-4 4-1 1-2 2-5 5-6 6-2", 6, []string{"W4"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g := tangle(t, tt.nodes, tt.wires)
			a, b := pathtest.Node(t, g.Harness, "X1"), pathtest.Node(t, g.Harness, "X2")
			if diff := cmp.Diff(tt.want, wiresOf(between(g, anyEdge, a, b))); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// The edges are those of all paths that visit no node twice, which are listed one by one
// here; and two edges are in one component if some path goes from one to the other without
// passing the ends.
func TestBetweenIsAllPaths(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		nodes := rapid.IntRange(2, 7).Draw(rt, "nodes")
		end := rapid.IntRange(1, nodes)
		var wires []string
		for range rapid.IntRange(0, 11).Draw(rt, "wires") {
			wires = append(wires, fmt.Sprintf("%d-%d", end.Draw(rt, "from"), end.Draw(rt, "to")))
		}
		g := tangle(t, nodes, strings.Join(wires, " "))
		a, b := pathtest.Node(t, g.Harness, "X1"), pathtest.Node(t, g.Harness, "X2")
		want := map[*path.Edge]bool{}
		simplePaths(g, a, b, map[wiring.NodeID]bool{a: true}, nil, func(p []*path.Edge) {
			for _, e := range p {
				want[e] = true
			}
		})
		got, owner := map[*path.Edge]bool{}, map[wiring.NodeID]int{a: -1, b: -1}
		for i, component := range between(g, anyEdge, a, b) {
			if !hangTogether(component, a, b) {
				rt.Fatalf("%v does not hang together", wiresOf([][]*path.Edge{component}))
			}
			for _, e := range component {
				if got[e] {
					rt.Fatalf("%s is in two components", e.Wire.Name())
				}
				got[e] = true
				for _, n := range []wiring.NodeID{e.A, e.B} {
					if k, ok := owner[n]; ok && k != i && k != -1 {
						rt.Fatalf("two components meet at %s", g.Name(n))
					} else if !ok {
						owner[n] = i
					}
				}
			}
		}
		if len(got) != len(want) {
			rt.Fatalf("%d edges, want %d, in %v", len(got), len(want), wires)
		}
		for e := range want {
			if !got[e] {
				rt.Fatalf("%s is on a path and not found, in %v", e.Wire.Name(), wires)
			}
		}
	})
}

func simplePaths(g *path.Graph, at, to wiring.NodeID, met map[wiring.NodeID]bool, p []*path.Edge, f func([]*path.Edge)) {
	if at == to {
		f(p)
		return
	}
	for _, e := range g.At(at) {
		if n := e.Other(at); !met[n] {
			met[n] = true
			simplePaths(g, n, to, met, append(p, e), f)
			delete(met, n)
		}
	}
}

// hangTogether reports whether edges hang together by nodes other than a and b.
func hangTogether(edges []*path.Edge, a, b wiring.NodeID) bool {
	reached := map[*path.Edge]bool{edges[0]: true}
	for again := true; again; {
		again = false
		for _, e := range edges {
			for f := range reached {
				touch := func(n wiring.NodeID) bool { return n != a && n != b && (n == f.A || n == f.B) }
				if !reached[e] && (touch(e.A) || touch(e.B)) {
					reached[e], again = true, true
				}
			}
		}
	}
	return len(reached) == len(edges)
}
