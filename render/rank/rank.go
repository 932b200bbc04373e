// Package rank orders the parts of a diagram that no rail holds. It is the only package
// that knows the graph layout library; package arrange asks it through an interface and
// can do without.
package rank

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	graphviz "github.com/goccy/go-graphviz"
	"github.com/goccy/go-graphviz/cgraph"
)

// MostNodes bounds the graphs that Dot takes: the library cannot be stopped once it runs.
const MostNodes = 400

// Dot ranks by layered drawing (Gansner, Koutsofios, North, Vo: A technique for drawing
// directed graphs, IEEE Transactions on Software Engineering 19:214, 1993), as the library
// implements it.
type Dot struct{}

// running keeps one layout at a time in the library, which is not made for more.
var running sync.Mutex

// Rank gives each of n nodes its layer, counted from 0 in the direction of the edges, and
// its place within the layer, counted from 0. Edges are pairs of node numbers; one from a
// node to itself says nothing and is passed over. The same graph always has the same ranks.
// The error is a graph that is too large, an edge to a node that is not there, or a fault
// of the library.
func (Dot) Rank(n int, edges [][2]int) (layer, place []int, err error) {
	switch {
	case n == 0:
		return nil, nil, nil
	case n > MostNodes:
		return nil, nil, fmt.Errorf("rank: %d nodes are more than %d", n, MostNodes)
	}
	for _, e := range edges {
		if min(e[0], e[1]) < 0 || max(e[0], e[1]) >= n {
			return nil, nil, fmt.Errorf("rank: an edge from %d to %d among %d nodes", e[0], e[1], n)
		}
	}
	at, err := positions(n, edges)
	if err != nil {
		return nil, nil, fmt.Errorf("rank: %w", err)
	}
	layer, place = layers(at)
	return layer, place, nil
}

// point is where the library put a node, in its own units: x counts along the layers.
type point struct{ x, y float64 }

// positions lays the graph out from left to right.
func positions(n int, edges [][2]int) (at []point, err error) {
	running.Lock()
	defer running.Unlock()
	ctx := context.Background()
	lib, err := graphviz.New(ctx)
	if err != nil {
		return nil, err
	}
	defer func() { err = firstOf(err, lib.Close()) }()
	g, err := lib.Graph()
	if err != nil {
		return nil, err
	}
	defer func() { err = firstOf(err, g.Close()) }()
	g.SetRankDir(cgraph.LRRank)
	nodes := make([]*cgraph.Node, n)
	for i := range nodes {
		if nodes[i], err = g.CreateNodeByName(strconv.Itoa(i)); err != nil {
			return nil, err
		}
	}
	for i, e := range edges {
		if e[0] == e[1] {
			continue
		}
		if _, err = g.CreateEdgeByName(strconv.Itoa(i), nodes[e[0]], nodes[e[1]]); err != nil {
			return nil, err
		}
	}
	// the drawing itself is not wanted: rendering leaves the positions on the nodes
	if err = lib.Render(ctx, g, graphviz.XDOT, io.Discard); err != nil {
		return nil, err
	}
	at = make([]point, n)
	for i, node := range nodes {
		if at[i], err = parsePoint(node.GetStr("pos")); err != nil {
			return nil, err
		}
	}
	return at, nil
}

func firstOf(a, b error) error {
	if a != nil {
		return a
	}
	return b
}

// parsePoint reads "x,y".
func parsePoint(s string) (point, error) {
	xs, ys, ok := strings.Cut(strings.TrimSuffix(s, "!"), ",")
	x, errX := strconv.ParseFloat(xs, 64)
	y, errY := strconv.ParseFloat(ys, 64)
	if !ok || errX != nil || errY != nil {
		return point{}, fmt.Errorf("%q is no position", s)
	}
	return point{x, y}, nil
}

// layers turns positions into numbers. All nodes of a layer have the same x; y counts
// upwards in the library, and places count downwards.
func layers(at []point) (layer, place []int) {
	var xs []float64
	for _, p := range at {
		xs = append(xs, p.x)
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	layer, place = make([]int, len(at)), make([]int, len(at))
	members := make([][]int, len(xs))
	for i, p := range at {
		layer[i], _ = slices.BinarySearch(xs, p.x)
		members[layer[i]] = append(members[layer[i]], i)
	}
	for _, m := range members {
		slices.SortStableFunc(m, func(a, b int) int {
			switch {
			case at[a].y > at[b].y:
				return -1
			case at[a].y < at[b].y:
				return 1
			}
			return a - b
		})
		for k, i := range m {
			place[i] = k
		}
	}
	return layer, place
}
