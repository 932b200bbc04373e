// Package headroom says what is left on a cart: on the reducer, on each channel of the fuse
// blocks, on the negative screws, on the pack; and for how long it lasts standing, with
// everything switched on, and on the charger.
//
// All figures are those of package figure; this package only chooses the states to ask in,
// and says what could not be had and why.
package headroom

import (
	"context"
	"errors"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Room is what is left on a cart.
type Room struct {
	Harness   *wiring.Harness
	State     *wiring.State        // in which it is asked for all at once; nil: the cart has no such state
	Reducers  []figure.ReducerRoom // those that feed something outside their part
	Blocks    []figure.BlockRoom
	Negatives []Landing
	Packs     []figure.PackRoom
	Lights    *figure.Lasting // everything switched on, standing
	Parked    *figure.Lasting // key off
	Charge    *figure.ChargeTime
	Unknown   []string // what could not be had, and why
}

// Landing is a terminal of a fuse block for negatives, and what it holds.
type Landing struct {
	Terminal *wiring.Terminal
	Wires    int
}

// Free is how many more wires it takes.
func (l Landing) Free() int { return max(0, l.Terminal.Holds-l.Wires) }

// The charges between which lights burn and from which the charger begins. Our own choice,
// as one speaks of a cart that has done most of its day.
const (
	lightsFrom = quantity.Ratio(0.8)
	lightsTo   = quantity.Ratio(0)
	chargeFrom = quantity.Ratio(0.2)
)

// allOn is the state in which a cart is asked for everything.
const allOn = "everything on"

// Of works out what is left. The error is that of ctx.
func Of(ctx context.Context, h *wiring.Harness) (*Room, error) {
	a := &asking{room: &Room{Harness: h, State: h.State(allOn)}, cart: figure.New(h, nil)}
	if a.room.State != nil {
		a.rooms(ctx)
	} else {
		a.unknown("what is left", errors.New("the cart has no state "+allOn))
	}
	a.times(ctx)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return a.room, nil
}

type asking struct {
	room *Room
	cart *figure.Cart
}

func (a *asking) unknown(what string, err error) {
	if err != nil {
		a.room.Unknown = append(a.room.Unknown, what+": "+err.Error())
	}
}

func (a *asking) rooms(ctx context.Context) {
	reducers, err := a.cart.ReducerRooms(ctx, a.room.State, 0)
	a.unknown("reducers", err)
	for _, r := range reducers {
		if outside(a.room.Harness, r.Converter.OutA) {
			a.room.Reducers = append(a.room.Reducers, r)
		}
	}
	a.room.Blocks, err = a.cart.BlockRooms(ctx, a.room.State, 0)
	a.unknown("fuse blocks", err)
	for _, b := range a.room.Blocks {
		a.room.Negatives = append(a.room.Negatives, negatives(b)...)
	}
	a.room.Packs, err = a.cart.PackRooms(ctx, a.room.State, 0)
	a.unknown("packs", err)
}

// outside reports whether a node can be wired by hand: a terminal that is no pin of a
// connector, no pole of a cord.
func outside(h *wiring.Harness, n wiring.NodeID) bool {
	if n < 0 || int(n) >= len(h.Nodes) {
		return false
	}
	t := h.Nodes[n].Terminal
	return t != nil && t.Form.Type != wiring.Port && t.Form.Type != wiring.Pin
}

// negatives are the terminals of a block that take several wires and are no channel.
func negatives(b figure.BlockRoom) []Landing {
	channel := map[*wiring.Terminal]bool{}
	for _, k := range b.Channels {
		channel[k.Terminal] = true
	}
	var all []Landing
	for _, t := range b.Part.Terminals {
		if t.Form.Type == wiring.Screw && t.Holds > 1 && !channel[t] {
			all = append(all, Landing{Terminal: t, Wires: len(t.Wires)})
		}
	}
	return all
}

func (a *asking) times(ctx context.Context) {
	h := a.room.Harness
	if s := Standing(h); s != nil {
		l, err := a.cart.Lasting(ctx, s, lightsFrom, lightsTo)
		a.unknown("hours of lights", err)
		if err == nil {
			a.room.Lights = &l
		}
	}
	parked, err := a.cart.Parked(ctx)
	a.unknown("days parked", err)
	if err == nil {
		a.room.Parked = &parked
	}
	if s := h.State("charging"); s != nil {
		c, err := a.cart.ChargeTime(ctx, s, chargeFrom)
		a.unknown("charge", err)
		if err == nil {
			a.room.Charge = &c
		}
	}
}

// Standing is the state of a cart that stands with everything switched on: key on, every
// switch on, no button held. It is nil if the cart cannot be switched on at all.
func Standing(h *wiring.Harness) *wiring.State {
	ready := h.State("ready")
	if ready == nil {
		return nil
	}
	s := &wiring.State{Name: "standing with everything on", Set: map[*wiring.Control]string{}, SOC: ready.SOC}
	for c, p := range ready.Set {
		s.Set[c] = p
	}
	for _, p := range h.Parts {
		for _, c := range p.Controls {
			if c.Name == "switch" && len(c.Positions) > 1 {
				s.Set[c] = c.Positions[1]
			}
		}
	}
	return s
}
