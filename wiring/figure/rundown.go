package figure

import (
	"context"
	"errors"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// RunDown is how a capacitor, as of a controller's input, runs down after the pack has been
// switched off.
type RunDown struct {
	Transient
	Before *wiring.State // in which it was charged
	From   quantity.Volt // its voltage there
}

// packControl and packOff are the name and the position by which a pack is switched off.
const (
	packControl = "pack"
	packOff     = "off"
)

// RunDown computes how a capacitor of the cart runs down from its voltage in one state,
// when the cart is set to another and its pack switched off with it: every control `pack`
// goes to off. On a cart whose batteries have no such control all sources are taken out.
// Ask [Transient.Until] for the time to 10 V, or to the 5 V under which one may touch. The
// errors are those of [Cart.Precharge], and [Unsettled] for the state before.
func (c *Cart) RunDown(ctx context.Context, e *wiring.Capacitor, before, after *wiring.State) (RunDown, error) {
	if err := errors.Join(isState(before), isState(after)); err != nil {
		return RunDown{}, err
	}
	off, switched := switchedOff(c.harness, after)
	k := course{capacitor: e, before: before, state: off}
	if !switched {
		for _, s := range each[*wiring.Source](c) {
			k.without = append(k.without, s)
		}
	}
	t, err := c.follow(ctx, k)
	r := RunDown{Transient: t, Before: before}
	if len(t.Stages) > 0 {
		r.From = t.Stages[0].From
	}
	return r, err
}

// switchedOff is a state with every pack switched off besides; false if none has a switch.
func switchedOff(h *wiring.Harness, s *wiring.State) (*wiring.State, bool) {
	off := *s
	off.After = ""
	off.Set = make(map[*wiring.Control]string, len(s.Set)+1)
	for c, position := range s.Set {
		off.Set[c] = position
	}
	switched := false
	for _, p := range h.Parts {
		for _, control := range p.Controls {
			if control.Name == packControl && has(control, packOff) {
				off.Set[control] = packOff
				switched = true
			}
		}
	}
	return &off, switched
}

func has(c *wiring.Control, position string) bool {
	for _, p := range c.Positions {
		if p == position {
			return true
		}
	}
	return false
}
