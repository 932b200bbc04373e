package job

import (
	"fmt"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// removeParts takes away the parts that a layer's `remove` names, alone or in groups, and
// keeps the other names for when wires are known.
func (r *reading) removeParts(l *layer) {
	n := l.get("remove")
	if n == nil {
		return
	}
	for _, item := range r.items(n, "remove") {
		text := r.text(item, "remove")
		if text == "" {
			continue
		}
		if g, ok := r.groups[wiring.Fold(text)]; ok {
			r.removeGroup(l, g, item.Span)
			continue
		}
		for _, name := range r.expand(item) {
			r.removeName(l, l.name(name), item.Span, false)
		}
	}
}

func (r *reading) removeGroup(l *layer, g *group, at diag.Span) {
	for _, member := range g.items {
		for _, name := range r.expand(member) {
			r.removeName(l, g.layer.name(name), at, true)
		}
	}
}

func (r *reading) removeName(l *layer, name string, at diag.Span, inGroup bool) {
	d := r.partAt(name, l.index)
	switch {
	case d == nil:
		l.gone = append(l.gone, goneName{name, at, inGroup})
	case d.born == l.index:
		f := r.fault(at, fmt.Sprintf("%s is removed and defined in one layer", name),
			"Give the new part another number, so that the work order can tell them apart")
		f.Related = []diag.Place{{Span: d.part.At, Label: name + " is defined here"}}
	default:
		d.gone, d.goneAt = l.index, at
	}
}

// removeWires takes away the wires that a layer's `remove` names, and those that go with
// the parts that it removes.
func (r *reading) removeWires(l *layer) {
	for _, g := range l.gone {
		l.goneNames[wiring.Fold(g.text)] = g.at
		if w := r.findWire(g.text); w != nil {
			r.drop(w, l, g.at)
		} else if !g.group {
			r.nothingCalled(l, g)
		}
	}
	r.passOn(l)
	for _, w := range r.laid {
		if !w.gone && r.goesWithParts(w, l) {
			r.drop(w, l, r.goneSpan(w))
		}
	}
}

// drop takes a wire out of the harness and keeps it for the work order.
func (r *reading) drop(w *draftWire, by *layer, at diag.Span) {
	w.gone = true
	if w.wire.Number != "" {
		delete(r.wires, wiring.Fold(w.wire.Number))
	}
	for _, e := range w.end {
		if e.isLead() && r.leads[e.terminal] == w {
			delete(r.leads, e.terminal)
		}
	}
	r.dropped = append(r.dropped, droppedWire{w, by, at})
}

// goesWithParts reports whether a wire leaves together with the parts that a layer
// removes: both its ends are on parts that are gone, or it is nothing but the lead of one.
func (r *reading) goesWithParts(w *draftWire, l *layer) bool {
	if !r.goneBy(w.end[from], l) && !r.goneBy(w.end[to], l) {
		return false
	}
	for _, s := range []side{from, to} {
		near, far := w.end[s], w.end[s.other()]
		if !r.goneNow(near, l) {
			continue
		}
		if r.goneNow(far, l) || far.state == capped || far.state == absent {
			return true
		}
		if near.isLead() && !far.isLead() && !w.hasCut && len(w.extend.value) == 0 {
			return true
		}
	}
	return false
}

// goneBy reports whether an end is on a part that this very layer removes.
func (r *reading) goneBy(e draftEnd, l *layer) bool {
	d := r.partOf(e)
	return d != nil && d.gone == l.index && d.heir == nil
}

// goneNow reports whether an end is on a part that this layer or a lower one removed.
func (r *reading) goneNow(e draftEnd, l *layer) bool {
	d := r.partOf(e)
	return d != nil && d.gone <= l.index && d.heir == nil
}

// partOf is the part that an end has landed on.
func (r *reading) partOf(e draftEnd) *draftPart {
	if e.state != landed {
		return nil
	}
	return r.built[e.terminal.Part]
}

// goneSpan is where the part that a wire goes with was removed.
func (r *reading) goneSpan(w *draftWire) diag.Span {
	for _, e := range w.end {
		if d := r.partOf(e); d != nil && d.gone != still {
			return d.goneAt
		}
	}
	return diag.Span{}
}

// passOn lands the wires of parts that a layer replaced on the terminals of the same name
// of what replaced them.
func (r *reading) passOn(l *layer) {
	for _, w := range r.laid {
		for s := range w.end {
			e := &w.end[s]
			d := r.partOf(*e)
			if w.gone || d == nil || d.gone != l.index || d.heir == nil {
				continue
			}
			if t := d.heir.part.Terminal(e.terminal.Name); t != nil {
				r.unlead(w, *e)
				e.terminal = t
				r.lead(w, *e)
			}
		}
	}
	for _, p := range r.points {
		if p.terminal == nil {
			continue
		}
		if d := r.built[p.terminal.Part]; d.gone == l.index && d.heir != nil {
			if t := d.heir.part.Terminal(p.terminal.Name); t != nil {
				p.terminal = t
			}
		}
	}
}

// nothingCalled reports a name in `remove` that is neither part, wire nor group.
func (r *reading) nothingCalled(l *layer, g goneName) {
	if r.flooded() {
		r.unlisted++
		return
	}
	for i := len(r.dropped) - 1; i >= 0; i-- {
		if d := r.dropped[i]; wiring.Fold(d.wire.wire.Number) == wiring.Fold(g.text) {
			r.removedAlready(g, d.by, d.at)
			return
		}
	}
	if list := r.parts[wiring.Fold(g.text)]; len(list) > 0 && list[len(list)-1].gone < l.index {
		d := list[len(list)-1]
		r.removedAlready(g, r.layers[d.gone], d.goneAt)
		return
	}
	if r.definesWire(l, g.text) {
		return // reported there
	}
	if r.alone() {
		r.note(g.at, fmt.Sprintf("this %s removes %s, and nothing is called so here", spoken(l.Kind), g.text), "What it is used on has it; alone this is no fault")
		return
	}
	r.lost(g.at, fmt.Sprintf("nothing is called %s here%s", g.text, r.alike(g.text, func() []string { return r.removable(l) })))
}

func (r *reading) removedAlready(g goneName, by *layer, at diag.Span) {
	f := r.fault(g.at, fmt.Sprintf("%s was removed already by %s", g.text, by), "Leave it out")
	f.Related = []diag.Place{{Span: at, Label: "removed here"}}
}

// removable lists what `remove` could name.
func (r *reading) removable(l *layer) []string {
	var names []string
	for _, list := range r.parts {
		for _, d := range list {
			if d.live(l.index) && d.born < l.index {
				names = append(names, d.part.Designation)
			}
		}
	}
	for _, w := range r.wires {
		names = append(names, w.wire.Number)
	}
	for name, g := range r.groups {
		if g.layer.index < l.index {
			names = append(names, name)
		}
	}
	sort.Slice(names, func(i, j int) bool { return wiring.Less(names[i], names[j]) })
	return names
}
