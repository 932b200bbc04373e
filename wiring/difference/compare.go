package difference

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// What is a sort of thing that changes.
type What string

// The sorts.
const (
	APart  What = "part"
	AWire  What = "wire"
	AStack What = "stack"
)

// Change is one thing that is not as it was.
type Change struct {
	What  What
	Name  string // designation, number, or the terminal of a stack
	Class Class
	Key   string // which fact, or where a lug is; empty where Class says it all
	Old   string // as written; empty if there was nothing
	New   string // as written; empty if there is nothing

	end int // of a change at an end: which one, of the wire as it was
}

// Difference is what changed from one netlist to another.
type Difference struct {
	Old, New Netlist
	Changes  []Change // parts, wires, stacks; by name; in the order of their keys
}

// None reports whether nothing changed.
func (d Difference) None() bool { return len(d.Changes) == 0 }

// Compare lists what changed from an old netlist to a new one.
func Compare(old, new Netlist) Difference {
	d := Difference{Old: old, New: new}
	d.parts()
	d.wires()
	d.stacks()
	slices.SortStableFunc(d.Changes, order)
	return d
}

// Between compares two carts.
func Between(old, new *wiring.Harness) Difference { return Compare(Of(old), Of(new)) }

func order(a, b Change) int {
	switch {
	case a.What != b.What:
		return rank(a.What) - rank(b.What)
	case a.Name != b.Name && wiring.Less(a.Name, b.Name):
		return -1
	case a.Name != b.Name:
		return 1
	case a.Key != b.Key:
		return strings.Compare(a.Key, b.Key)
	case a.Class != b.Class:
		return strings.Compare(string(a.Class), string(b.Class))
	}
	return strings.Compare(a.Old+a.New, b.Old+b.New)
}

func rank(w What) int { return slices.Index([]What{APart, AWire, AStack}, w) }

func (d *Difference) say(c Change) { d.Changes = append(d.Changes, c) }

// parts compares the parts.
func (d *Difference) parts() {
	before, after := d.Old.byName(), d.New.byName()
	for _, p := range d.Old.Parts {
		q := after[wiring.Fold(p.Name)]
		switch {
		case q == nil:
			d.say(Change{What: APart, Name: p.Name, Class: Removed, Old: p.Kind})
		case q.Kind != p.Kind:
			d.say(Change{What: APart, Name: p.Name, Class: Replaced, Old: p.Kind, New: q.Kind})
		default:
			d.facts(APart, p.Name, p.Facts, q.Facts, partClass)
		}
	}
	for _, q := range d.New.Parts {
		if before[wiring.Fold(q.Name)] == nil {
			d.say(Change{What: APart, Name: q.Name, Class: Added, New: q.Kind})
		}
	}
}

// facts compares what is known of one thing.
func (d *Difference) facts(what What, name string, old, new []Fact, class func(string) Class) {
	for _, key := range keys(old, new) {
		was, is := value(old, key), value(new, key)
		if was.Exact != is.Exact {
			d.say(Change{What: what, Name: name, Class: class(key), Key: key, Old: was.Text, New: is.Text})
		}
	}
}

// keys lists the keys of two lists of facts, each once, in order.
func keys(lists ...[]Fact) []string {
	var all []string
	for _, l := range lists {
		for _, f := range l {
			all = append(all, f.Key)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// stacks compares the order of lugs on the studs that both carts have.
func (d *Difference) stacks() {
	now := map[string]Stack{}
	for _, s := range d.New.Stacks {
		now[s.Terminal] = s
	}
	for _, s := range d.Old.Stacks {
		if t, ok := now[s.Terminal]; ok && !slices.Equal(s.Wires, t.Wires) {
			d.say(Change{What: AStack, Name: s.Terminal, Class: Stacked,
				Old: strings.Join(s.Wires, " "), New: strings.Join(t.Wires, " ")})
		}
	}
}
