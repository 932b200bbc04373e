package job

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// tractionWord in `expect` stands for any part that moves the cart.
const tractionWord = "traction"

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

// setting is one key of a state or of its `expect`.
type setting struct {
	key   string
	value *source.Node
	at    diag.Span
	layer *layer
}

// settings are keys with their values, in the order in which they were first written.
type settings struct {
	list []setting
	at   map[string]int // by folded key
}

// put adds a setting, or replaces the one of the same key.
func (s *settings) put(x setting) {
	key := wiring.Fold(x.key)
	if i, ok := s.at[key]; ok {
		s.list[i] = x
		return
	}
	if s.at == nil {
		s.at = map[string]int{}
	}
	s.at[key] = len(s.list)
	s.list = append(s.list, x)
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

// controls lists the cart's controls by their names.
func (r *reading) controls() {
	r.controlOf = map[string][]*wiring.Control{}
	for _, p := range r.h.Parts {
		for _, c := range p.Controls {
			key := wiring.Fold(c.Name)
			r.controlOf[key] = append(r.controlOf[key], c)
		}
	}
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

// settings puts entries, ranges written out.
func (r *reading) settings(s *settings, entries []source.Entry, l *layer) {
	for _, e := range entries {
		if e.Value.Kind == source.Null {
			continue
		}
		for _, name := range r.expand(e.Key) {
			s.put(setting{l.name(name), e.Value, e.Key.Span, l})
		}
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

// apply sets controls: by name first, then by part, then one control of one part, so that
// what is said of one device holds against what is said of all.
func (r *reading) apply(d *draftState, s *wiring.State) {
	var byRank [3][]func()
	for _, e := range d.set.list {
		rank, controls := r.aimed(d, e)
		if len(controls) > 0 {
			byRank[rank] = append(byRank[rank], func() { r.setControls(d, s, e, controls) })
		}
	}
	for _, rank := range byRank {
		for _, set := range rank {
			set()
		}
	}
}

// aimed finds the controls that a key of a state names, and how narrowly it does: 0 every
// one of that name, 1 the one of a part, 2 one of several of a part.
func (r *reading) aimed(d *draftState, e setting) (rank int, controls []*wiring.Control) {
	if list := r.controlOf[wiring.Fold(e.key)]; len(list) > 0 {
		return 0, list
	}
	name, control, dotted := strings.Cut(e.key, ".")
	p := r.h.Part(name)
	switch {
	case p == nil:
		r.noControl(d, e, name)
	case dotted:
		for _, c := range p.Controls {
			if wiring.Fold(c.Name) == wiring.Fold(control) {
				return 2, []*wiring.Control{c}
			}
		}
		r.fault(e.at, fmt.Sprintf("state %s: %s has no control %s%s", d.name, p.Designation, control, r.meant(control, func() []string { return controlNames(p) })))
	case len(p.Controls) == 1:
		return 1, p.Controls
	case len(p.Controls) == 0:
		r.fault(e.at, fmt.Sprintf("state %s: %s has no control", d.name, p.Designation))
	default:
		names := controlNames(p)
		r.fault(e.at, fmt.Sprintf("state %s: %s has several controls: write %s.%s or %s.%s", d.name, p.Designation,
			p.Designation, names[0], p.Designation, names[1]))
	}
	return 0, nil
}

func controlNames(p *wiring.Part) []string {
	names := make([]string, len(p.Controls))
	for i, c := range p.Controls {
		names[i] = c.Name
	}
	return names
}

// noControl reports a key that names nothing. A built-in state may speak of controls that
// this cart does not have, and a lower layer of a part that is gone by now.
func (r *reading) noControl(d *draftState, e setting, part string) {
	if e.layer.Kind == wiring.CatalogLayer || len(r.parts[wiring.Fold(part)]) > 0 {
		return
	}
	r.lost(e.at, fmt.Sprintf("state %s: nothing has a control or name %s%s", d.name, e.key, r.meant(e.key, r.settable)))
}

// settable lists what a state may set.
func (r *reading) settable() []string {
	names := make([]string, 0, len(r.controlOf)+len(r.h.Parts))
	for _, list := range r.controlOf {
		names = append(names, list[0].Name)
	}
	for _, p := range r.h.Parts {
		if len(p.Controls) > 0 {
			names = append(names, p.Designation)
		}
	}
	sort.Strings(names)
	return names
}

// setControls puts controls into a position. Of several controls of one name those that do
// not know it stay where they are.
func (r *reading) setControls(d *draftState, s *wiring.State, e setting, controls []*wiring.Control) {
	want := r.text(e.value, e.key)
	if want == "" {
		return
	}
	found := false
	for _, c := range controls {
		for i, p := range c.Positions {
			if wiring.Fold(p) != wiring.Fold(want) {
				continue
			}
			found = true
			if i == 0 {
				delete(s.Set, c)
			} else {
				s.Set[c] = p
			}
		}
	}
	if !found && e.layer.Kind != wiring.CatalogLayer {
		r.fault(e.value.Span, fmt.Sprintf("state %s: %s has the positions %s, not %s", d.name, e.key, strings.Join(controls[0].Positions, ", "), want))
	}
}

// concerns reports whether the cart has any of a state's own controls.
func (r *reading) concerns(d *draftState) bool {
	for _, e := range d.set.list {
		if len(r.controlOf[wiring.Fold(e.key)]) > 0 || e.layer.Kind != wiring.CatalogLayer {
			return true
		}
	}
	return len(d.set.list) == 0
}

// expectations reads what a state expects; each replaces what the state that this one is
// like expects of the same part.
func (r *reading) expectations(d *draftState, s *wiring.State) {
	of := make(map[*wiring.Part]int, len(s.Expect)) // nil: traction
	for i, x := range s.Expect {
		of[x.Part] = i
	}
	for _, e := range d.expect.list {
		x, ok := r.expectation(d, e)
		if !ok {
			continue
		}
		if i, again := of[x.Part]; again {
			s.Expect[i] = x
			continue
		}
		of[x.Part] = len(s.Expect)
		s.Expect = append(s.Expect, x)
	}
}

// expectation reads one key of `expect`.
func (r *reading) expectation(d *draftState, e setting) (wiring.Expectation, bool) {
	x := wiring.Expectation{At: e.at}
	switch r.word(e.value, "state "+d.name+": "+e.key, "on", "off") {
	case "on":
		x.On = true
	case "":
		return x, false
	}
	if strings.EqualFold(e.key, tractionWord) {
		x.Traction = true
	} else if x.Part = r.h.Part(e.key); x.Part == nil {
		if len(r.parts[wiring.Fold(e.key)]) == 0 {
			r.lost(e.at, fmt.Sprintf("state %s: no part %s%s", d.name, e.key, r.meant(e.key, func() []string { return append(r.partNames(), tractionWord) })))
		}
		return x, false
	}
	return x, true
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
