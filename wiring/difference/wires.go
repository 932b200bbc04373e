package difference

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// pair is one wire in both netlists.
type pair struct{ old, new *Wire }

// wires compares the wires.
func (d *Difference) wires() {
	pairs := d.pairs()
	for _, p := range pairs {
		switch {
		case p.new == nil:
			d.say(Change{What: AWire, Name: p.old.Name, Class: Removed, Old: p.old.route()})
		case p.old == nil:
			d.say(Change{What: AWire, Name: p.new.Name, Class: Added, New: p.new.route()})
		default:
			d.wire(*p.old, p.new.turned(*p.old))
		}
	}
}

// route is a wire from end to end, and what is cut for it.
func (w Wire) route() string {
	words := []string{w.Ends[0].On, "-", w.Ends[1].On}
	for _, key := range []string{"colour", "size", "length"} {
		if text := value(w.Facts, key).Text; text != "" {
			words = append(words, text)
		}
	}
	return strings.Join(words, " ")
}

// pairs finds the same wire in both netlists: by its name, else by the leads that it is
// joined to in both, since a lead has one wire.
func (d *Difference) pairs() []pair {
	var all []pair
	taken := map[*Wire]bool{}
	for _, key := range []func(*Wire) string{wireKey, leadsKey} {
		found := map[string]*Wire{}
		for i := range d.New.Wires {
			if w := &d.New.Wires[i]; !taken[w] && key(w) != "" {
				found[key(w)] = w
			}
		}
		for i := range d.Old.Wires {
			w := &d.Old.Wires[i]
			if v := found[key(w)]; v != nil && !taken[w] && !taken[v] {
				taken[v], taken[w] = true, true
				all = append(all, pair{w, v})
			}
		}
	}
	for i := range d.Old.Wires {
		if w := &d.Old.Wires[i]; !taken[w] {
			all = append(all, pair{old: w})
		}
	}
	for i := range d.New.Wires {
		if w := &d.New.Wires[i]; !taken[w] {
			all = append(all, pair{new: w})
		}
	}
	return all
}

func wireKey(w *Wire) string { return wiring.Fold(w.Name) }

// leadsKey is the leads that a wire is joined to; "" if there are none.
func leadsKey(w *Wire) string {
	leads := slices.Clone(w.Leads)
	slices.Sort(leads)
	return wiring.Fold(strings.Join(leads, " "))
}

// turned is the wire with its ends in the order in which more of them are where those of
// another are.
func (w *Wire) turned(like Wire) Wire {
	fit := func(i, j int) int {
		if w.Ends[i].On == like.Ends[j].On {
			return 1
		}
		return 0
	}
	out := *w
	if fit(0, 1)+fit(1, 0) > fit(0, 0)+fit(1, 1) {
		out.Ends[0], out.Ends[1] = w.Ends[1], w.Ends[0]
	}
	return out
}

// wire compares one wire, the ends of which are in the same order.
func (d *Difference) wire(old, new Wire) {
	if old.Name != new.Name {
		d.say(Change{What: AWire, Name: old.Name, Class: Renumbered, Old: old.Name, New: new.Name})
	}
	d.facts(AWire, old.Name, old.Facts, new.Facts, wireClass)
	for i := range old.Ends {
		d.end(old.Name, i, old, new)
	}
}

// end compares one end of a wire.
func (d *Difference) end(name string, i int, old, new Wire) {
	was, is := old.Ends[i], new.Ends[i]
	c := Change{What: AWire, Name: name, end: i}
	switch {
	case was.On != is.On:
		c.Class, c.Old, c.New = endClass(was.State, is.State), was.On, is.On
		d.say(c)
	case was.Lug != is.Lug:
		c.Class, c.Key, c.Old, c.New = Relugged, was.On, was.Lug, is.Lug
		d.say(c)
	}
	if !slices.EqualFunc(was.Pieces, is.Pieces, func(a, b Value) bool { return a.Exact == b.Exact }) {
		d.say(Change{What: AWire, Name: name, end: i,
			Class: pieceClass(was.Pieces, is.Pieces), Old: texts(was.Pieces), New: texts(is.Pieces)})
	}
}

// texts sets pieces behind each other, outwards.
func texts(all []Value) string {
	words := make([]string, len(all))
	for i, v := range all {
		words[i] = v.Text
	}
	return strings.Join(words, " + ")
}
