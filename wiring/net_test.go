package wiring

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// bench builds a harness of parts with terminals by the given names.
func bench(parts map[string][]string) *Harness {
	h := &Harness{Nodes: []Node{{Name: "frame"}}}
	for name, terminals := range parts {
		p := &Part{Designation: name, Kind: &Kind{Name: "test"}}
		h.Parts = append(h.Parts, p)
		for _, t := range terminals {
			p.Terminals = append(p.Terminals, &Terminal{Part: p, Name: t, Form: Form{Type: Stud, Size: "M8"}})
		}
	}
	h.Index()
	for _, p := range h.Parts {
		for _, t := range p.Terminals {
			t.Node = NodeID(len(h.Nodes))
			h.Nodes = append(h.Nodes, Node{Part: p, Terminal: t, Name: t.Name})
		}
	}
	return h
}

func (h *Harness) lay(number, from, to string) *Wire {
	w := &Wire{Number: number, From: End{Terminal: h.Terminal(from)}, To: End{Terminal: h.Terminal(to)}}
	h.Wires = append(h.Wires, w)
	return w
}

func TestNetsAreJoinedByWiresAlone(t *testing.T) {
	h := bench(map[string][]string{"G1": {"+", "-"}, "F1": {"in", "out"}, "K1": {"in", "out"}, "X5": {"s"}})
	h.lay("W1", "G1.+", "F1.in")
	h.lay("W2", "F1.out", "K1.in")
	h.lay("W3", "f1.OUT", "X5")
	capped := h.lay("W4", "K1.out", "nowhere")
	capped.To = End{Capped: true}

	nets, of := h.Nets()
	got := map[string][]string{}
	for _, net := range nets {
		var nodes []string
		for _, n := range net.Nodes {
			nodes = append(nodes, h.Nodes[n].String())
			if of[n] != net.ID {
				t.Errorf("node %v is in net %d, and of says %d", h.Nodes[n], net.ID, of[n])
			}
		}
		for _, w := range net.Wires {
			got[w.Name()] = nodes
		}
	}
	want := map[string][]string{
		"W1": {"F1.in", "G1.+"},
		"W2": {"F1.out", "K1.in", "X5.s"},
		"W3": {"F1.out", "K1.in", "X5.s"},
		"W4": {"K1.out"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestCordJoinsPolesOfTheSameName(t *testing.T) {
	port := func(names ...string) *Terminal {
		t := &Terminal{Form: Form{Type: Port}, Node: NoNode}
		for i, n := range names {
			t.Poles = append(t.Poles, Pole{n, NodeID(10*len(names) + i)})
		}
		return t
	}
	cord := &Wire{From: End{Terminal: port("L", "N", "PE")}, To: End{Terminal: port("N", "L")}}
	want := [][2]NodeID{{30, 21}, {31, 20}}
	if diff := cmp.Diff(want, cord.Joins()); diff != "" {
		t.Error(diff)
	}
}

// Nets must not depend on the order in which wires were written.
func TestNetsDoNotDependOnWireOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		build := func(order []int, pairs [][2]int) []int {
			h := bench(map[string][]string{"X1": {"1", "2", "3", "4", "5", "6", "7", "8"}})
			for _, i := range order {
				h.Wires = append(h.Wires, &Wire{
					From: End{Terminal: h.Parts[0].Terminals[pairs[i][0]]},
					To:   End{Terminal: h.Parts[0].Terminals[pairs[i][1]]},
				})
			}
			_, of := h.Nets()
			return of
		}
		n := rapid.IntRange(0, 8).Draw(t, "wires")
		pairs := make([][2]int, n)
		order := make([]int, n)
		for i := range pairs {
			pairs[i] = [2]int{rapid.IntRange(0, 7).Draw(t, "from"), rapid.IntRange(0, 7).Draw(t, "to")}
			order[i] = i
		}
		shuffled := rapid.Permutation(order).Draw(t, "order")
		if diff := cmp.Diff(build(order, pairs), build(shuffled, pairs)); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestTerminalsAreFoundByEveryNameTheyHave(t *testing.T) {
	h := bench(map[string][]string{"U1": {"key", "run"}, "X5": {"s"}})
	key := h.Part("U1").Terminals[0]
	key.Pin, key.Also = "J1-2", []string{"KSI"}
	for ref, want := range map[string]*Terminal{
		"U1.key": key, "u1.KEY": key, "U1.J1-2": key, "U1.ksi": key,
		"X5": h.Part("X5").Terminals[0], "U1": nil, "U1.": nil, "U9.key": nil, "": nil,
	} {
		if got := h.Terminal(ref); got != want {
			t.Errorf("Terminal(%q) = %v, want %v", ref, got, want)
		}
	}
}
