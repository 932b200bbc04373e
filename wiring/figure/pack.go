package figure

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// pack is the source with the highest voltage of the cart, the first of several; nil if
// it has none.
func (c *Cart) pack() *wiring.Source {
	var pack *wiring.Source
	best := quantity.Volt(0)
	for _, s := range each[*wiring.Source](c) {
		if v := settle.OpenCircuit(s, 1); pack == nil || v > best {
			pack, best = s, v
		}
	}
	return pack
}

// PackRoom is what a source gives in a state, and what it may give besides.
type PackRoom struct {
	Source     *wiring.Source
	State      *wiring.State
	Amps       quantity.Ampere // that it gives; negative while it is charged
	Continuous quantity.Ampere // that it may give for ever; 0: not stated
	Peak       wiring.Burst    // that it may give for a time; zero: not stated
	Trips      quantity.Ampere // above which its protection opens; 0: never, or not stated
	Charge     quantity.Ampere // that it may take; 0: not stated
	Assumes    []Assumption
}

// Left is what it may give besides, for ever; false if its rating is not stated. Below 0
// it gives too much.
func (r PackRoom) Left() (quantity.Ampere, bool) { return r.Continuous - r.Amps, r.Continuous > 0 }

// LeftAtPeak is what it may give besides, for the time of its peak.
func (r PackRoom) LeftAtPeak() (quantity.Ampere, bool) { return r.Peak.Amps - r.Amps, r.Peak.Amps > 0 }

// LeftToCharge is how much more it may be charged with.
func (r PackRoom) LeftToCharge() (quantity.Ampere, bool) { return r.Charge + r.Amps, r.Charge > 0 }

// PackRooms computes what is left of each source in a state, at a state of charge (0: the
// state's own), in the order of parts. The errors are [Unsettled], [Unknown] for a state
// that is none, and that of ctx.
func (c *Cart) PackRooms(ctx context.Context, s *wiring.State, charge quantity.Ratio) ([]PackRoom, error) {
	p, err := c.point(ctx, s, charge)
	if err != nil {
		return nil, err
	}
	var all []PackRoom
	for _, e := range each[*wiring.Source](c) {
		all = append(all, PackRoom{
			Source: e, State: s, Amps: -p.ElementAmps(e),
			Continuous: e.Discharge, Peak: e.Peak, Trips: e.Trips, Charge: e.Charge,
			Assumes: []Assumption{
				{"the current is the settled one, without inrush and acceleration", circuits},
				{"a pack gives its rated current at every temperature and state of charge", "the rating of the pack"},
			},
		})
	}
	return all, nil
}
