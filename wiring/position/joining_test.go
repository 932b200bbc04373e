package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/position"
)

// What is varied together for a question of joining between X1 and X2.
func TestIndependent(t *testing.T) {
	const spare = "\nS9 switch spare off,on on:in,out"
	tests := []struct {
		name, text string
		want       [][]string // by space: controls
	}{
		{"nothing leads there", `
			W1 X1 S1.in
			S1 switch s off,on on:in,out`, nil},
		{"only wires", `
			W1 X1 X2`, [][]string{nil}},
		{"two switches on ways of their own", `
			S1 switch a off,on on:in,out
			S2 switch b off,on on:in,out
			W1 X1 S1.in
			W2 S1.out X2
			W3 X1 S2.in
			W4 S2.out X2`, [][]string{{"a"}, {"b"}}},
		{"two switches one behind the other", `
			S1 switch a off,on on:in,out
			S2 switch b off,on on:in,out
			W1 X1 S1.in
			W2 S1.out S2.in
			W3 S2.out X2`, [][]string{{"a", "b"}}},
		{"a switch that leads to a dead end", `
			S1 switch a off,on on:in,out
			S2 switch b off,on on:in,out
			W1 X1 S1.in
			W2 S1.out X2
			W3 S1.out S2.in`, [][]string{{"a"}}},
		{"two poles of one switch on two ways", `
			S1 switch a off,on on:1,2 on:3,4
			S2 switch b off,on on:in,out
			W1 X1 S1.1
			W2 S1.2 X2
			W3 X1 S1.3
			W4 S1.4 S2.in
			W5 S2.out X2`, [][]string{{"a", "b"}}},
		{"a lamp is no way", `
			E1 load + - 10
			S1 switch a off,on on:in,out
			W1 X1 S1.in
			W2 S1.out E1.+
			W3 E1.- X2`, nil},
		{"resistors up to the limit are one", `
			R1 resistor 1 2 900
			R2 resistor 1 2 1100
			S1 switch a off,on on:in,out
			S2 switch b off,on on:in,out
			W1 X1 R1.1
			W2 R1.2 S1.in
			W3 S1.out X2
			W4 X1 R2.1
			W5 R2.2 S2.in
			W6 S2.out X2`, [][]string{{"a"}}},
		{"a contact follows everything", `
			K1 coil coil+ coil-
			K1 contact in out
			S1 switch a off,on on:in,out
			W1 X1 K1.in
			W2 K1.out X2
			W3 X1 S1.in
			W4 S1.out X2`, [][]string{{"a", "spare"}}},
		{"a contact that is on no way does not matter", `
			K1 coil coil+ coil-
			K1 contact in out
			S1 switch a off,on on:in,out
			W1 X1 K1.in
			W3 X1 S1.in
			W4 S1.out X2`, [][]string{{"a"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := bench(t, "W91 X1 capped\nW92 X2 capped\n"+tt.text+spare)
			c := position.NewCart(h, nil)
			j := position.Joining{Sorts: path.Conducting | path.Resistor, Most: 1000}
			pair := position.Pair{From: pathtest.Node(t, h, "X1"), To: pathtest.Node(t, h, "X2")}
			var got [][]string
			for _, s := range c.Independent(j, []position.Pair{pair}, position.All(h)) {
				var names []string
				for _, a := range s.Axes() {
					names = append(names, a.Control.Name)
				}
				got = append(got, names)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A way ends at a node where ways end, and goes through diodes one way only; its resistors
// add up.
func TestWaysThatJoin(t *testing.T) {
	h := bench(t, `
		R1 resistor 1 2 600
		R2 resistor 1 2 300
		V1 diode a k
		W1 X1 R1.1
		W2 R1.2 X2
		W3 X2 V1.a
		W4 V1.k R2.1
		W5 R2.2 X3`)
	c := position.NewCart(h, nil)
	node := func(ref string) wiring.NodeID { return pathtest.Node(t, h, ref) }
	j := position.Joining{Sorts: path.Conducting | path.Resistor, Most: 1000}
	way, ohms, ok := j.Way(c, position.Pair{From: node("X1"), To: node("X3")}, nil)
	if !ok || ohms != 900 || way.String() != "X1 - W1 - R1 - W2 - X2 - W3 - V1 - W4 - R2 - W5 - X3" {
		t.Errorf("forwards: %v, %v, %v", way, ohms, ok)
	}
	if _, _, ok := j.Way(c, position.Pair{From: node("X3"), To: node("X1")}, nil); ok {
		t.Error("a way leads backwards through a diode")
	}
	j.Most = 800
	if _, _, ok := j.Way(c, position.Pair{From: node("X1"), To: node("X3")}, nil); ok {
		t.Error("900 ohm are less than 800")
	}
	j.Most, j.Ends = 1000, func(n wiring.NodeID) bool { return n == node("X2") }
	if _, _, ok := j.Way(c, position.Pair{From: node("X1"), To: node("X3")}, nil); ok {
		t.Error("a way goes on from where ways end")
	}
	if _, _, ok := j.Way(c, position.Pair{From: node("X1"), To: node("X2")}, nil); !ok {
		t.Error("no way leads to where ways end")
	}
}
