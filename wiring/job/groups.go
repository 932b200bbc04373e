package job

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// readGroups keeps the groups of a layer for the layers above it.
func (r *reading) readGroups(l *layer) {
	n := l.get("groups")
	if n == nil {
		return
	}
	seen := map[string]diag.Span{}
	for _, e := range r.entries(n, "groups") {
		if !r.twice(seen, e.Key.Text, e.Key.Span) {
			r.groups[wiring.Fold(e.Key.Text)] = &group{name: e.Key.Text, layer: l, items: r.items(e.Value, "a group")}
		}
	}
}

// checkGroups reports members of groups that nothing was ever called.
func (r *reading) checkGroups() {
	known := map[string]bool{}
	var names []string
	add := func(name string) {
		if !known[wiring.Fold(name)] {
			known[wiring.Fold(name)] = true
			names = append(names, name)
		}
	}
	for _, d := range r.allParts() {
		add(d.part.Designation)
	}
	for _, w := range r.laid {
		add(w.name())
	}
	for _, g := range r.groups {
		for _, member := range g.items {
			for _, name := range r.expand(member) {
				if name = g.layer.name(name); !known[wiring.Fold(name)] && !r.faulty[wiring.Fold(name)] {
					r.lost(member.Span, fmt.Sprintf("group %s: nothing is called %s here%s", g.name, name, r.alike(name, func() []string { return names })))
				}
			}
		}
	}
}
