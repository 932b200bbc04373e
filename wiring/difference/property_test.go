package difference

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// drawNetlist makes a small cart in which names and values often coincide with those of
// another one.
func drawNetlist(rt *rapid.T, label string) Netlist {
	var n Netlist
	word := rapid.SampledFrom([]string{"a", "b", "c"})
	for i := range 4 {
		if rapid.Bool().Draw(rt, label+"part") {
			n.Parts = append(n.Parts, Part{Name: fmt.Sprintf("G%d", i+1), Kind: word.Draw(rt, "kind"),
				Facts: []Fact{fact("fuse 1", word.Draw(rt, "fuse")), fact("place", word.Draw(rt, "place"))}})
			n.Stacks = append(n.Stacks, Stack{fmt.Sprintf("G%d.+", i+1), rapid.SliceOfN(word, 0, 2).Draw(rt, "lugs")})
		}
	}
	for i := range 4 {
		if rapid.Bool().Draw(rt, label+"wire") {
			n.Wires = append(n.Wires, drawWire(rt, fmt.Sprintf("W%d", i+1)))
		}
	}
	return n
}

func drawWire(rt *rapid.T, name string) Wire {
	word := rapid.SampledFrom([]string{"a", "b", "c"})
	w := Wire{Name: name, Facts: []Fact{fact("colour", word.Draw(rt, "colour")), fact("length", word.Draw(rt, "length"))}}
	for i := range w.Ends {
		w.Ends[i] = End{On: fmt.Sprint("K", i, ".", word.Draw(rt, "terminal")), Lug: word.Draw(rt, "lug")}
		switch rapid.IntRange(0, 5).Draw(rt, "landing") {
		case 0:
			w.Ends[i].On, w.Ends[i].State = fmt.Sprint("capped", i), Capped
		case 1:
			w.Ends[i].On, w.Ends[i].State = fmt.Sprint("loose", i), Loose
		}
		for _, text := range rapid.SliceOfN(word, 0, 2).Draw(rt, "pieces") {
			w.Ends[i].Pieces = append(w.Ends[i].Pieces, Word(text))
		}
	}
	return w
}

func TestComparedWithItselfNothingChanges(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := drawNetlist(rt, "")
		if d := Compare(n, n); !d.None() {
			rt.Errorf("%+v", d.Changes)
		}
	})
}

// What changed from a to b is undone from b to a, and by nothing else.
func TestBackwardsEveryChangeIsUndone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, b := drawNetlist(rt, "old "), drawNetlist(rt, "new ")
		forth, back := Compare(a, b).Changes, Compare(b, a).Changes
		for i := range back {
			c := &back[i]
			c.Class, c.Old, c.New = c.Class.Inverse(), c.New, c.Old
		}
		slices.SortStableFunc(back, order)
		slices.SortStableFunc(forth, order)
		if diff := cmp.Diff(forth, back, cmpopts.IgnoreUnexported(Change{})); diff != "" {
			rt.Errorf("-forth +back\n%s", diff)
		}
	})
}

// The changes say all that one has to know to make the new cart of the old one.
func TestChangesMakeTheNewOfTheOld(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, b := drawNetlist(rt, "old "), drawNetlist(rt, "new ")
		d := Compare(a, b)
		got := apply(a, d)
		if left := Compare(got, b); !left.None() {
			rt.Errorf("what is left: %+v", left.Changes)
		}
	})
}

// apply makes the changes on a copy of a netlist. Of what is added or replaced it takes the
// new thing, of everything else the words of the change.
func apply(old Netlist, d Difference) Netlist {
	var out Netlist
	changes := map[string][]Change{}
	for _, c := range d.Changes {
		changes[string(c.What)+c.Name] = append(changes[string(c.What)+c.Name], c)
	}
	for _, p := range old.Parts {
		out.Parts = append(out.Parts, applyPart(p, changes[string(APart)+p.Name], d.New)...)
	}
	for _, w := range old.Wires {
		out.Wires = append(out.Wires, applyWire(w, changes[string(AWire)+w.Name], d.New)...)
	}
	for _, s := range old.Stacks {
		for _, c := range changes[string(AStack)+s.Terminal] {
			s.Wires = strings.Fields(c.New)
		}
		out.Stacks = append(out.Stacks, s)
	}
	for _, c := range d.Changes {
		if c.Class == Added && c.What == APart {
			out.Parts = append(out.Parts, d.New.Parts[slices.IndexFunc(d.New.Parts, func(p Part) bool { return p.Name == c.Name })])
		}
		if c.Class == Added && c.What == AWire {
			out.Wires = append(out.Wires, d.New.Wires[slices.IndexFunc(d.New.Wires, func(w Wire) bool { return w.Name == c.Name })])
		}
	}
	return out
}

func applyPart(p Part, changes []Change, after Netlist) []Part {
	p.Facts = slices.Clone(p.Facts)
	for _, c := range changes {
		switch c.Class {
		case Removed:
			return nil
		case Replaced:
			return []Part{after.Parts[slices.IndexFunc(after.Parts, func(q Part) bool { return q.Name == c.Name })]}
		}
		set(p.Facts, c)
	}
	return []Part{p}
}

func set(facts []Fact, c Change) {
	for i := range facts {
		if facts[i].Key == c.Key {
			facts[i].Value = Word(c.New)
		}
	}
}

func applyWire(w Wire, changes []Change, after Netlist) []Wire {
	w.Facts = slices.Clone(w.Facts)
	for _, c := range changes {
		e := &w.Ends[c.end]
		switch c.Class {
		case Removed:
			return nil
		case Extended, Shortened, Respliced:
			e.Pieces = nil
			for _, text := range strings.Split(c.New, " + ") {
				if text != "" {
					e.Pieces = append(e.Pieces, Word(text))
				}
			}
		case Moved, Landed, Loosened, Covered, Freed:
			e.On, e.Lug = c.New, lugOf(after, w.Name, c.New)
			e.State = map[string]Landing{"capped": Capped, "loose": Loose}[strings.TrimRight(c.New, "01")]
		case Relugged:
			e.Lug = c.New
		default:
			set(w.Facts, c)
		}
	}
	return []Wire{w}
}

// lugOf finds the lug of an end that has moved: it follows from where the end lands now.
func lugOf(n Netlist, name, on string) string {
	for _, w := range n.Wires {
		for _, e := range w.Ends {
			if w.Name == name && e.On == on {
				return e.Lug
			}
		}
	}
	return ""
}

// The order in which a netlist lists its things makes no difference.
func TestOrderOfListsIsNoDifference(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, b := drawNetlist(rt, "old "), drawNetlist(rt, "new ")
		shuffled := Netlist{
			Parts:  rapid.Permutation(b.Parts).Draw(rt, "parts"),
			Wires:  rapid.Permutation(b.Wires).Draw(rt, "wires"),
			Stacks: rapid.Permutation(b.Stacks).Draw(rt, "stacks"),
		}
		if diff := cmp.Diff(Compare(a, b).Changes, Compare(a, shuffled).Changes, cmpopts.IgnoreUnexported(Change{})); diff != "" {
			rt.Errorf("-in order +shuffled\n%s", diff)
		}
	})
}
