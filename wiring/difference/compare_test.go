package difference

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func fact(key, text string) Fact { return Fact{key, Word(text)} }

// wire is a wire from one terminal to another.
func wire(name, from, to string, known ...Fact) Wire {
	return Wire{Name: name, Ends: [2]End{{On: from}, {On: to}}, Facts: known}
}

// with puts pieces at the second end of a wire.
func (w Wire) with(pieces ...string) Wire {
	for _, p := range pieces {
		w.Ends[1].Pieces = append(w.Ends[1].Pieces, Word(p))
	}
	return w
}

// joinedTo says on which leads of devices a wire is.
func (w Wire) joinedTo(leads ...string) Wire { w.Leads = leads; return w }

func (w Wire) lug(text string) Wire { w.Ends[1].Lug = text; return w }

// ended puts the second end of a wire somewhere that is no terminal.
func (w Wire) ended(state Landing, text string) Wire {
	w.Ends[1].State, w.Ends[1].On = state, text
	return w
}

func parts(all ...Part) Netlist { return Netlist{Parts: all} }
func wires(all ...Wire) Netlist { return Netlist{Wires: all} }

func TestCompare(t *testing.T) {
	w := wire("W1", "G1.+", "K1.in", fact("colour", "RD"), fact("length", "4 ft"), fact("size", "14 AWG"))
	fuse := Part{Name: "F1", Kind: "fuse-blade", Facts: []Fact{fact("fuse fuse", "5 A"), fact("place", "dash")}}
	for _, c := range []struct {
		name     string
		old, new Netlist
		want     []Change
	}{
		{"part added", parts(), parts(fuse), []Change{{What: APart, Name: "F1", Class: Added, New: "fuse-blade"}}},
		{"part removed", parts(fuse), parts(), []Change{{What: APart, Name: "F1", Class: Removed, Old: "fuse-blade"}}},
		{"another kind", parts(fuse), parts(Part{Name: "f1", Kind: "breaker"}),
			[]Change{{What: APart, Name: "F1", Class: Replaced, Old: "fuse-blade", New: "breaker"}}},
		{"re-fused and carried elsewhere", parts(fuse),
			parts(Part{Name: "F1", Kind: "fuse-blade", Facts: []Fact{fact("fuse fuse", "10 A"), fact("place", "roof")}}),
			[]Change{{What: APart, Name: "F1", Class: Refused, Key: "fuse fuse", Old: "5 A", New: "10 A"},
				{What: APart, Name: "F1", Class: Moved, Key: "place", Old: "dash", New: "roof"}}},
		{"fuse taken out", parts(fuse), parts(Part{Name: "F1", Kind: "fuse-blade", Facts: []Fact{fact("place", "dash")}}),
			[]Change{{What: APart, Name: "F1", Class: Refused, Key: "fuse fuse", Old: "5 A"}}},
		{"re-rated", parts(Part{Name: "E1", Kind: "lamp", Facts: []Fact{fact("rating power", "35 W")}}),
			parts(Part{Name: "E1", Kind: "lamp", Facts: []Fact{fact("rating power", "60 W")}}),
			[]Change{{What: APart, Name: "E1", Class: Rerated, Key: "rating power", Old: "35 W", New: "60 W"}}},
		{"wire moved", wires(w), wires(wire("W1", "G1.+", "F1.in", w.Facts...)),
			[]Change{{What: AWire, Name: "W1", Class: Moved, Old: "K1.in", New: "F1.in"}}},
		{"written the other way round", wires(w.with("GN 18 AWG 14 in")),
			wires(Wire{Name: "W1", Ends: [2]End{w.with("GN 18 AWG 14 in").Ends[1], w.Ends[0]}, Facts: w.Facts}), nil},
		{"moved and turned", wires(w), wires(wire("W1", "F1.in", "G1.+", w.Facts...)),
			[]Change{{What: AWire, Name: "W1", Class: Moved, Old: "K1.in", New: "F1.in"}}},
		{"both ends", wires(w), wires(wire("W1", "F1.in", "F2.in", w.Facts...)),
			[]Change{{What: AWire, Name: "W1", Class: Moved, Old: "G1.+", New: "F1.in"},
				{What: AWire, Name: "W1", Class: Moved, Old: "K1.in", New: "F2.in"}}},
		{"capped", wires(w), wires(w.ended(Capped, "capped")),
			[]Change{{What: AWire, Name: "W1", Class: Covered, Old: "K1.in", New: "capped"}}},
		{"uncapped", wires(w.ended(Capped, "capped")), wires(w),
			[]Change{{What: AWire, Name: "W1", Class: Freed, Old: "capped", New: "K1.in"}}},
		{"lost", wires(w), wires(w.ended(Loose, "loose, was on K1.in")),
			[]Change{{What: AWire, Name: "W1", Class: Loosened, Old: "K1.in", New: "loose, was on K1.in"}}},
		{"recoloured, recut, resized", wires(w),
			wires(wire("W1", "G1.+", "K1.in", fact("colour", "OG"), fact("length", "5 ft"), fact("size", "12 AWG"))),
			[]Change{{What: AWire, Name: "W1", Class: Recoloured, Key: "colour", Old: "RD", New: "OG"},
				{What: AWire, Name: "W1", Class: Recut, Key: "length", Old: "4 ft", New: "5 ft"},
				{What: AWire, Name: "W1", Class: Resized, Key: "size", Old: "14 AWG", New: "12 AWG"}}},
		{"the same length in other words", wires(Wire{Name: "W1", Facts: []Fact{{"length", Value{"4 ft", "1.2192"}}}}),
			wires(Wire{Name: "W1", Facts: []Fact{{"length", Value{"48 in", "1.2192"}}}}), nil},
		{"extended", wires(w.with("GN 18 AWG 1 ft")), wires(w.with("GN 18 AWG 1 ft", "RD 18 AWG 2 ft")),
			[]Change{{What: AWire, Name: "W1", Class: Extended, Old: "GN 18 AWG 1 ft", New: "GN 18 AWG 1 ft + RD 18 AWG 2 ft"}}},
		{"shortened", wires(w.with("GN 18 AWG 1 ft")), wires(w),
			[]Change{{What: AWire, Name: "W1", Class: Shortened, Old: "GN 18 AWG 1 ft"}}},
		{"another piece", wires(w.with("GN 18 AWG 1 ft")), wires(w.with("BU 18 AWG 1 ft")),
			[]Change{{What: AWire, Name: "W1", Class: Respliced, Old: "GN 18 AWG 1 ft", New: "BU 18 AWG 1 ft"}}},
		{"another lug", wires(w.lug("ring M8")), wires(w.lug("ring M6")),
			[]Change{{What: AWire, Name: "W1", Class: Relugged, Key: "K1.in", Old: "ring M8", New: "ring M6"}}},
		{"a lead is given a number", wires(wire("T2.enable", "T2.enable", "K1.in").joinedTo("T2.enable")),
			wires(wire("W62", "T2.enable", "S1.out").joinedTo("T2.enable")),
			[]Change{{What: AWire, Name: "T2.enable", Class: Moved, Old: "K1.in", New: "S1.out"},
				{What: AWire, Name: "T2.enable", Class: Renumbered, Old: "T2.enable", New: "W62"}}},
		{"restacked", Netlist{Stacks: []Stack{{"G1.-", []string{"W1", "W2"}}}}, Netlist{Stacks: []Stack{{"G1.-", []string{"W2", "W1"}}}},
			[]Change{{What: AStack, Name: "G1.-", Class: Stacked, Old: "W1 W2", New: "W2 W1"}}},
		{"a stud of a new part", Netlist{}, Netlist{Stacks: []Stack{{"G1.-", []string{"W2", "W1"}}}}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Compare(c.old, c.new).Changes
			if diff := cmp.Diff(c.want, got, cmpopts.IgnoreUnexported(Change{}), cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("-want +got\n%s", diff)
			}
		})
	}
}

func TestMarks(t *testing.T) {
	w := func(name, to string) Wire { return wire(name, "G1.+", to) }
	d := Compare(
		Netlist{Parts: []Part{{Name: "G11"}, {Name: "K1", Kind: "a"}, {Name: "E1", Facts: []Fact{fact("title", "x")}}},
			Wires: []Wire{w("W1", "K1.in"), w("W2", "K1.in"), wire("T2.out", "T2.out", "A1.+").joinedTo("T2.out")}},
		Netlist{Parts: []Part{{Name: "G1"}, {Name: "K1", Kind: "b"}, {Name: "E1", Facts: []Fact{fact("title", "y")}}},
			Wires: []Wire{w("W1", "F1.in").with("GN"), wire("W64", "T2.out", "A1.-").joinedTo("T2.out")}})
	want := Marks{
		Parts: map[string]Mark{"G11": IsGone, "G1": IsNew, "K1": IsNew},
		Wires: map[string]Mark{"W1": IsMoved, "W2": IsGone, "W64": IsMoved},
	}
	if diff := cmp.Diff(want, d.Marks()); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}

func TestNote(t *testing.T) {
	d := Compare(wires(wire("W1", "a", "b"), wire("W2", "a", "b")),
		Netlist{Parts: []Part{{Name: "E1"}}, Wires: []Wire{wire("W1", "a", "c"), wire("W3", "a", "b")}})
	for _, c := range []struct {
		most int
		want string
	}{
		{80, "E1, W3 added; W1 moved; W2 removed"},
		{33, "2 added, 1 moved, 1 removed"},
		{10, "4 changes"},
	} {
		if got := d.Note(c.most); got != c.want {
			t.Errorf("in %d characters: %q, want %q", c.most, got, c.want)
		}
	}
	if got := Compare(Netlist{}, Netlist{}).Note(80); got != "" {
		t.Errorf("nothing changed: %q", got)
	}
}
