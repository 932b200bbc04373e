package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// draftState is a state while layers are being merged.
type draftState struct {
	name   string
	at     diag.Span
	stock  bool // built in
	like   *source.Node
	after  *source.Node
	soc    quantity.Ratio
	set    settings // of its controls
	expect settings
	busy   bool // its settings are being worked out: it is like itself
	done   *wiring.State
}

// states merges the states of all layers and works out the position of every control.
func (r *reading) states() {
	r.controls()
	r.stateOf = map[string]*draftState{}
	for _, l := range r.layers {
		r.eachNamed(l, "states", r.readState)
	}
	for _, d := range r.stateOrder {
		s := r.state(d)
		if s != nil && !(d.stock && !r.concerns(d)) {
			r.h.States = append(r.h.States, s)
		}
	}
	r.checkAfter()
}

func (r *reading) readState(l *layer, e source.Entry) {
	key := wiring.Fold(e.Key.Text)
	d := r.stateOf[key]
	if d == nil {
		d = &draftState{name: e.Key.Text, at: e.Key.Span, stock: l.Kind == wiring.CatalogLayer && l.path == ""}
		r.stateOf[key] = d
		r.stateOrder = append(r.stateOrder, d)
	}
	f, rest := r.split(e.Value, stateKeys, "in state "+d.name)
	if v, ok := f["like"]; ok && r.text(v.Value, "like") != "" {
		d.like = v.Value
	}
	if v, ok := f["after"]; ok && r.text(v.Value, "after") != "" {
		d.after = v.Value
	}
	put(r, f, "soc", quantity.Share, &d.soc)
	r.settings(&d.set, rest, l)
	if v, ok := f["expect"]; ok {
		r.settings(&d.expect, r.entries(v.Value, "expect"), l)
	}
}

// state works a draft out, after the state that it is like. It returns nil for one
// that is being worked out already.
func (r *reading) state(d *draftState) *wiring.State {
	if d.done != nil || d.busy {
		return d.done
	}
	d.busy = true
	defer func() { d.busy = false }()
	s := &wiring.State{Name: d.name, Stock: d.stock, At: d.at, Set: map[*wiring.Control]string{}}
	if base := r.base(d); base != nil {
		s.SOC, s.After = base.SOC, base.After
		s.Expect = append(s.Expect, base.Expect...)
		for c, p := range base.Set {
			s.Set[c] = p
		}
	}
	if d.soc != 0 {
		s.SOC = d.soc
	}
	if d.after != nil {
		s.After = strings.TrimSpace(d.after.Text)
	}
	r.apply(d, s)
	r.expectations(d, s)
	d.done = s
	return s
}

// base is the state that another is like; nil if it is like none.
func (r *reading) base(d *draftState) *wiring.State {
	if d.like == nil {
		return nil
	}
	name := strings.TrimSpace(d.like.Text)
	other := r.stateOf[wiring.Fold(name)]
	switch {
	case other == nil:
		r.lost(d.like.Span, fmt.Sprintf("state %s: no state %s%s", d.name, name, r.meant(name, r.stateNames)))
		return nil
	case other.busy:
		r.fault(d.like.Span, fmt.Sprintf("state %s is like itself", d.name))
		return nil
	}
	return r.state(other)
}

func (r *reading) stateNames() []string {
	names := make([]string, 0, len(r.stateOrder))
	for _, d := range r.stateOrder {
		names = append(names, d.name)
	}
	return names
}

// checkAfter finds the states that others begin from.
func (r *reading) checkAfter() {
	kept := make(map[string]*wiring.State, len(r.h.States))
	for _, s := range r.h.States {
		kept[wiring.Fold(s.Name)] = s
	}
	for _, s := range r.h.States {
		if s.After == "" {
			continue
		}
		after := r.stateOf[wiring.Fold(s.Name)].after // nil: taken from the state that this one is like
		other := r.stateOf[wiring.Fold(s.After)]
		switch {
		case other == nil && after != nil:
			r.lost(after.Span, fmt.Sprintf("state %s: no state %s%s", s.Name, s.After, r.meant(s.After, r.stateNames)))
		case other == nil, kept[wiring.Fold(other.name)] == nil:
			s.After = "" // a built-in state that this cart does not have
		default:
			s.After = other.name
		}
	}
	r.checkCircles(kept)
}

// checkCircles reports states each of which begins after the other.
func (r *reading) checkCircles(kept map[string]*wiring.State) {
	done := map[*wiring.State]bool{}
	for _, s := range r.h.States {
		way := map[*wiring.State]bool{}
		next := s
		for next != nil && !done[next] && !way[next] {
			way[next] = true
			next = kept[wiring.Fold(next.After)]
		}
		if next != nil && way[next] {
			at := next.At
			if after := r.stateOf[wiring.Fold(next.Name)].after; after != nil {
				at = after.Span
			}
			r.fault(at, fmt.Sprintf("state %s comes after itself", next.Name))
		}
		for s := range way {
			done[s] = true
		}
	}
}
