package path_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
)

// cart is the smallest cart with everything that a search can meet.
const cart = `
G1 source + - 52.8
F1 fuse in out 200
K1 coil coil+ coil-
K1 contact in out
F2 fuse in out 5
S1 switch key off,on on:in,out
R1 resistor 1 2 470
V2 diode a k
U1 driver coil B-
U1 load B+ B- 100
W1 G1.+ F1.in
W2 F1.out K1.in
W3 K1.out U1.B+
W4 U1.B- G1.-
W5 K1.in F2.in
W6 F2.out S1.in
W7 S1.out K1.coil+
W8 K1.coil- U1.coil
W9 S1.out R1.1
W10 R1.2 V2.a
W11 V2.k K1.out
W12 G1.- capped
`

func TestPathTells(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	node := func(ref string) wiring.NodeID { return pathtest.Node(t, h, ref) }
	for _, c := range []struct {
		name     string
		through  path.Through
		from, to string
		want     string // empty: not reached
	}{
		{"metal", path.Through{Sorts: path.Metal}, "G1.+", "S1.out",
			"G1.+ - W1 - F1 - W2 - K1.in - W5 - F2 - W6 - S1 - S1.out"},
		{"fuse in the way", path.Through{Sorts: path.Conductors}, "G1.+", "K1.in", ""},
		{"key off", path.Through{Sorts: path.Metal, Setting: path.Parked}, "G1.+", "S1.out", ""},
		{"nowhere to go", path.Through{Sorts: path.Metal}, "G1.+", "G1.-", ""},
		{"through a load", path.Through{Sorts: path.Metal | path.Load}, "G1.+", "G1.-",
			"G1.+ - W1 - F1 - W2 - K1.contact2 - W3 - U1.load2 - W4 - G1.-"},
		{"to itself", path.Through{}, "G1.+", "G1.+", "G1.+"},
		{"diode forward", path.Through{Sorts: path.Wire | path.Diode | path.Resistor}, "S1.out", "U1.B+",
			"S1.out - W9 - R1 - W10 - V2 - W11 - K1.out - W3 - U1.B+"},
		{"diode backward", path.Through{Sorts: path.Wire | path.Diode | path.Resistor}, "U1.B+", "S1.out", ""},
		{"diode against the current", path.Through{Sorts: path.Wire | path.Diode | path.Resistor, Against: true}, "U1.B+", "S1.out",
			"U1.B+ - W3 - K1.out - W11 - V2 - W10 - R1 - W9 - S1.out"},
		{"resistor too large", path.Through{Sorts: path.Wire | path.Diode | path.Resistor, Ohms: 100}, "S1.out", "U1.B+", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := g.From(c.through, node(c.from)).To(node(c.to))
			if ok != (c.want != "") {
				t.Fatalf("reached: %v, path %v", ok, got)
			}
			if ok && got.String() != c.want {
				t.Errorf("path\n got %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestPathLists(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	p, ok := g.From(path.Through{Sorts: path.Metal}, pathtest.Node(t, h, "G1.+")).To(pathtest.Node(t, h, "S1.out"))
	if !ok {
		t.Fatal("not reached")
	}
	var wires, fuses []string
	for _, w := range p.Wires() {
		wires = append(wires, w.Name())
	}
	for _, el := range p.Elements(path.Fuse) {
		fuses = append(fuses, el.Base().Ref())
	}
	if diff := cmp.Diff([]string{"W1", "W2", "W5", "W6"}, wires); diff != "" {
		t.Errorf("wires (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]string{"F1.fuse1", "F2.fuse1"}, fuses); diff != "" {
		t.Errorf("fuses (-want +got):\n%s", diff)
	}
	if got, want := p.Reversed().String(), "S1.out - S1 - W6 - F2 - W5 - K1.in - W2 - F1 - W1 - G1.+"; got != want {
		t.Errorf("reversed %s, want %s", got, want)
	}
	if p.Passes(path.Contact) || !p.Passes(path.Switch) {
		t.Errorf("passes a contact: %v, a switch: %v", p.Passes(path.Contact), p.Passes(path.Switch))
	}
}

func TestThen(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	way := func(from, to string) path.Path {
		p, ok := g.From(path.Through{Sorts: path.Metal}, pathtest.Node(t, h, from)).To(pathtest.Node(t, h, to))
		if !ok {
			t.Fatalf("%s does not reach %s", from, to)
		}
		return p
	}
	got := way("G1.+", "K1.in").Then(way("K1.in", "F2.out"))
	if want := "G1.+ - W1 - F1 - W2 - K1.in - W5 - F2 - F2.out"; got.String() != want || got.End != pathtest.Node(t, h, "F2.out") {
		t.Errorf("path %s, want %s", got, want)
	}
}

func TestStopIsEnteredButNotLeft(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	stop := pathtest.Node(t, h, "K1.in")
	r := g.From(path.Through{Sorts: path.Metal}.Until(func(n wiring.NodeID) bool { return n == stop }), pathtest.Node(t, h, "G1.+"))
	if !r.Has(stop) {
		t.Error("K1.in is not reached")
	}
	if r.Has(pathtest.Node(t, h, "F2.in")) {
		t.Error("the search went on behind K1.in")
	}
}

func TestInState(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	on := &wiring.State{Set: map[*wiring.Control]string{h.Part("S1").Controls[0]: "on"}}
	off := &wiring.State{}
	closed := func(wiring.Element) bool { return true }
	for _, c := range []struct {
		name    string
		setting path.Setting
		ref     string
		want    bool
	}{
		{"key on", path.InState(on, nil), "K1.coil+", true},
		{"key off", path.InState(off, nil), "K1.coil+", false},
		{"contact at rest", path.InState(on, nil), "K1.out", false},
		{"contact closed", path.InState(on, closed), "K1.out", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := g.From(path.Through{Sorts: path.Metal, Setting: c.setting}, pathtest.Node(t, h, "G1.+"))
			if got := r.Has(pathtest.Node(t, h, c.ref)); got != c.want {
				t.Errorf("%s reached: %v, want %v", c.ref, got, c.want)
			}
		})
	}
}

func TestLeastTakesTheCheaperWay(t *testing.T) {
	h := pathtest.Harness(t, `
X1 link 1 2
R1 resistor a b 10
R2 resistor a b 1
W1 X1.1 R1.a
W2 R1.b X2
W3 X1.2 X3
W4 X3 R2.a
W5 R2.b X2
`)
	g := path.New(h)
	cost := func(e *path.Edge) float64 {
		if r, ok := e.Element.(*wiring.Resistor); ok {
			return float64(r.Ohms)
		}
		return 0.1
	}
	t.Run("fewest edges", func(t *testing.T) {
		p, _ := g.From(path.Through{Sorts: path.Conductors | path.Resistor}, pathtest.Node(t, h, "X1.1")).To(pathtest.Node(t, h, "X2"))
		if p.String() != "X1.1 - W1 - R1 - W2 - X2" {
			t.Errorf("path %s", p)
		}
	})
	t.Run("least ohms", func(t *testing.T) {
		r := g.Least(path.Through{Sorts: path.Conductors | path.Resistor}, cost, pathtest.Node(t, h, "X1.1"))
		p, _ := r.To(pathtest.Node(t, h, "X2"))
		if p.String() != "X1.1 - X1 - W3 - X3 - W4 - R2 - W5 - X2" {
			t.Errorf("path %s", p)
		}
		if got := r.Cost(pathtest.Node(t, h, "X2")); got < 1.39 || got > 1.41 {
			t.Errorf("cost %g, want 1.4", got)
		}
	})
}

func TestSameCopper(t *testing.T) {
	h := pathtest.Harness(t, cart)
	g := path.New(h)
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"S1.out", "R1.1", true}, {"S1.out", "S1.in", false}, {"F2.in", "K1.in", true}, {"F2.in", "F1.in", false},
	} {
		if got := g.SameCopper(pathtest.Node(t, h, c.a), pathtest.Node(t, h, c.b)); got != c.want {
			t.Errorf("%s and %s: %v, want %v", c.a, c.b, got, c.want)
		}
	}
	if g.Copper(pathtest.Node(t, h, "S1.out")) != g.Copper(pathtest.Node(t, h, "R1.1")) || g.Copper(wiring.NoNode) != -1 {
		t.Error("groups of copper are not numbered alike")
	}
	if g.SameCopper(wiring.NoNode, 1) {
		t.Error("no node is joined to something")
	}
}

func TestSortString(t *testing.T) {
	for s, want := range map[path.Sort]string{0: "nothing", path.Conductors: "wire|link", path.Fuse: "fuse"} {
		if got := s.String(); got != want {
			t.Errorf("%d: %q, want %q", s, got, want)
		}
	}
}
