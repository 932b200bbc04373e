package work

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// harness is the cart as it stands: devices that are on it, strands with both ends landed.
func (w *world) harness() *wiring.Harness {
	h := &wiring.Harness{Nodes: w.nodes, Assume: w.new.Assume, Limits: w.new.Limits}
	for _, d := range w.devices {
		if w.on[d] {
			h.Parts = append(h.Parts, w.part(d))
		}
	}
	for _, s := range w.strands {
		if at := w.at[s]; at != nil && at[0].on != nil && at[1].on != nil {
			h.Wires = append(h.Wires, w.wire(s, at))
		}
	}
	return h
}

// wire is a strand where it is now, with the pieces of the cart that has it there.
func (w *world) wire(s *Strand, at *[2]end) *wiring.Wire {
	one := &wiring.Wire{Number: s.Name, Pieces: s.Wire().Pieces}
	if s.Old != nil && at[0].on == s.Was[0].Terminal && at[1].on == s.Was[1].Terminal {
		one.Pieces = s.Old.Pieces
	}
	one.From.Terminal, one.To.Terminal = at[0].on, at[1].on
	return one
}

// part is a device with the fuses that are in it.
func (w *world) part(d *Device) *wiring.Part {
	var missing bool
	for _, e := range d.Elements {
		f, ok := e.(*wiring.Fuse)
		missing = missing || ok && w.out[f]
	}
	if !missing {
		return d.Part
	}
	p := *d.Part
	p.Elements = make([]wiring.Element, len(d.Elements))
	for i, e := range d.Elements {
		p.Elements[i] = e
		if f, ok := e.(*wiring.Fuse); ok && w.out[f] {
			open := *f
			open.Fitted = false
			p.Elements[i] = &open
		}
	}
	return &p
}

// trust says what a battery's own switch is good for.
type trust bool

const (
	asSwitched trust = true  // a battery that is switched off gives nothing
	asTouched  trust = false // its switch is no disconnect
)

// settings lists the states in which the cart may be as it stands: those of both carts, as
// far as the controls that are held allow them, each once.
func (w *world) settings(t trust) []*wiring.State {
	var all []*wiring.State
	seen := map[string]bool{}
	for _, h := range []*wiring.Harness{w.new, w.old} {
		for _, s := range append([]*wiring.State{{Name: "at rest"}}, h.States...) {
			one, key := w.setting(h, s, t)
			if !seen[key] {
				seen[key] = true
				all = append(all, one)
			}
		}
	}
	return all
}

// setting is a state of one of the carts as far as held controls allow it, and a key that
// says where every control stands.
func (w *world) setting(h *wiring.Harness, s *wiring.State, t trust) (*wiring.State, string) {
	one := &wiring.State{Name: s.Name, SOC: s.SOC, Set: map[*wiring.Control]string{}}
	var key strings.Builder
	for _, d := range w.devices {
		if !w.on[d] {
			continue
		}
		for _, c := range d.Controls {
			position := position(h, s, c)
			if held, ok := w.set[controlOf(c)]; ok {
				position = held
			}
			if t == asTouched && switchesSource(d, c) {
				position = c.Positions[0]
			}
			one.Set[c] = position
			key.WriteString(position + "\x00")
		}
	}
	return one, key.String()
}

// position is where a state of a cart sets a control that may be another cart's.
func position(h *wiring.Harness, s *wiring.State, c *wiring.Control) string {
	if p := h.Part(c.Part.Designation); p != nil {
		for _, own := range p.Controls {
			if wiring.Fold(own.Name) == wiring.Fold(c.Name) {
				return s.Position(own)
			}
		}
	}
	return c.Positions[0]
}

// switchesSource reports whether a control switches the battery that it is part of. It rests
// where the battery is on.
func switchesSource(d *Device, c *wiring.Control) bool {
	for _, s := range d.sources() {
		if waitsFor(s.When, c) {
			return true
		}
	}
	return false
}

func waitsFor(when *wiring.Condition, c *wiring.Control) bool {
	if when == nil {
		return false
	}
	for _, of := range when.Of {
		if waitsFor(of, c) {
			return true
		}
	}
	return when.Control == c
}
