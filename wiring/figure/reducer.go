package figure

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// ReducerRoom is what a reducer, or another converter, is asked for in a state, and what
// it may give besides.
//
// Continuous is the current that warms it: consumers that are on for a share of the time
// count with that share, and those that hang on a button not at all. Peak is what flows at
// worst: all that is on, with the largest of those on buttons.
type ReducerRoom struct {
	Converter  *wiring.Converter
	State      *wiring.State
	Runs       bool
	Limit      quantity.Ampere // its current limit; 0: not stated
	Input      quantity.Ampere // that it takes for all of it
	Asked      quantity.Ampere // all at once, every button held
	Continuous quantity.Ampere
	Peak       quantity.Ampere
	Consumers  []Consumer
	Inrush     *wiring.Load // the one with the largest inrush; nil: none states any
	Assumes    []Assumption
}

// Left is the continuous current that it may give besides; false if its limit is not
// stated. Below 0 it is asked for too much.
func (r ReducerRoom) Left() (quantity.Ampere, bool) { return r.Limit - r.Continuous, r.Limit > 0 }

// LeftAtPeak is what it may give besides at worst.
func (r ReducerRoom) LeftAtPeak() (quantity.Ampere, bool) { return r.Limit - r.Peak, r.Limit > 0 }

// ReducerRooms computes what is left of each converter of the cart in a state, such as
// `everything on`, at a state of charge (0: the state's own), in the order of parts. The
// errors are [Unsettled], [Unknown] for a state that is none, and that of ctx.
func (c *Cart) ReducerRooms(ctx context.Context, s *wiring.State, charge quantity.Ratio) ([]ReducerRoom, error) {
	d, err := c.demand(ctx, s, charge)
	if err != nil {
		return nil, err
	}
	var all []ReducerRoom
	for _, e := range each[*wiring.Converter](c) {
		all = append(all, d.reducer(e))
	}
	return all, nil
}

func (d *demand) reducer(e *wiring.Converter) ReducerRoom {
	own := d.variant.own[e]
	r := ReducerRoom{
		Converter: e, State: d.state, Runs: d.holds(e), Limit: e.Amps,
		Input: d.point.InputAmps(own), Assumes: d.reducerAssumptions(),
	}
	if !r.Runs {
		return r
	}
	r.Asked = d.point.ElementAmps(own)
	r.Consumers = d.consumers(e.OutA, e.OutB)
	r.Continuous, r.Peak = r.Asked, r.Asked
	largest := quantity.Ampere(0)
	for _, k := range r.Consumers {
		if k.Duty == Momentary {
			r.Continuous -= k.Amps
			r.Peak -= k.Amps
			largest = max(largest, k.Amps)
			continue
		}
		r.Continuous -= k.Amps * quantity.Ampere(1-k.Share)
	}
	r.Peak += largest
	r.Inrush = inrush(r.Consumers)
	return r
}

// inrush is the load with the largest inrush, the first of several.
func inrush(consumers []Consumer) *wiring.Load {
	var worst *wiring.Load
	for _, k := range consumers {
		load, ok := k.Element.(*wiring.Load)
		if ok && load.Inrush.Amps > 0 && (worst == nil || load.Inrush.Amps > worst.Inrush.Amps) {
			worst = load
		}
	}
	return worst
}

func (d *demand) reducerAssumptions() []Assumption {
	return []Assumption{
		{fmt.Sprintf("all that is on in the state %q is on at once", d.state.Name), "the state"},
		{"of what hangs on buttons, one is held at a time, and for too short a time to warm anything", practice},
		{"inrush is not counted: a reducer in its limit starts lamps a little later", practice},
		{"the limit holds at every temperature; a hot reducer gives less", "the rating of the reducer"},
	}
}
