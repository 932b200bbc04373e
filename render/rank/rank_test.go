package rank

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestLayersFollowTheEdges(t *testing.T) {
	// a fuse feeds two switches, each its lamp; the lamps meet at one bar
	layer, _, err := Dot{}.Rank(6, [][2]int{{0, 1}, {0, 2}, {1, 3}, {2, 4}, {3, 5}, {4, 5}})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]int{0, 1, 1, 2, 2, 3}, layer); diff != "" {
		t.Error(diff)
	}
}

// Two chains that start crossed are uncrossed: that is what the ordering is for.
func TestPlacesUncross(t *testing.T) {
	_, place, err := Dot{}.Rank(6, [][2]int{{0, 4}, {1, 3}, {3, 5}, {4, 2}})
	if err != nil {
		t.Fatal(err)
	}
	if (place[0] < place[1]) != (place[4] < place[3]) {
		t.Errorf("the chains cross: places %v", place)
	}
}

func TestFaultsAreSaid(t *testing.T) {
	if _, _, err := (Dot{}).Rank(2, [][2]int{{0, 2}}); err == nil {
		t.Error("an edge to a node that is not there went through")
	}
	if _, _, err := (Dot{}).Rank(MostNodes+1, nil); err == nil {
		t.Error("too large a graph went through")
	}
	if layer, place, err := (Dot{}).Rank(0, nil); err != nil || len(layer)+len(place) != 0 {
		t.Errorf("nothing has ranks %v %v, %v", layer, place, err)
	}
}

// Any graph gets every node one place of its own, the same each time.
func TestEveryNodeHasItsOwnPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "nodes")
		var edges [][2]int
		for range rapid.IntRange(0, 16).Draw(t, "edges") {
			edges = append(edges, [2]int{rapid.IntRange(0, n-1).Draw(t, "from"), rapid.IntRange(0, n-1).Draw(t, "to")})
		}
		layer, place, err := Dot{}.Rank(n, edges)
		if err != nil {
			t.Fatal(err)
		}
		taken := map[[2]int]bool{}
		for i := range n {
			at := [2]int{layer[i], place[i]}
			if taken[at] {
				t.Fatalf("two nodes at layer and place %v", at)
			}
			taken[at] = true
		}
		again, anew, _ := Dot{}.Rank(n, edges)
		if diff := cmp.Diff([][]int{layer, place}, [][]int{again, anew}); diff != "" {
			t.Fatal(diff)
		}
	})
}
