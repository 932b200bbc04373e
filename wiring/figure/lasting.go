package figure

import (
	"context"
	"errors"
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Lasting is how long a cart stays in a state on what is in its pack: days parked with
// the key off, hours of lights.
//
// The time is the integral of capacity over current from one state of charge to another,
// the state being settled at seventeen charges on the way, so that loads of constant power
// take more as the pack falls.
type Lasting struct {
	State     *wiring.State
	Pack      *wiring.Source
	From, To  quantity.Ratio      // states of charge; To is where it ends
	Amps      quantity.Ampere     // out of the pack at From, with what its own electronics take
	Used      quantity.AmpereHour // between the two
	Lasts     quantity.Second     // +Inf: nothing is taken
	Draws     []Draw              // which parts take it at From, the most first
	StoppedBy []*wiring.Part      // what was on and goes out before the charge is used; none: it is used
	Assumes   []Assumption
}

// Hours is Lasts in hours.
func (l Lasting) Hours() float64 { return float64(l.Lasts) / 3600 }

// Days is Lasts in days.
func (l Lasting) Days() float64 { return l.Hours() / 24 }

// Parking, by common practice: from 80 % to the floor with the key off; no published
// source.
const (
	parkedFrom  quantity.Ratio = 0.8
	parkedState                = "key off"
)

// Parked computes how long the cart may stand with the key off, from 80 % to the floor.
// The errors are those of [Cart.Lasting].
func (c *Cart) Parked(ctx context.Context) (Lasting, error) {
	return c.Lasting(ctx, c.harness.State(parkedState), parkedFrom, 0)
}

// Lasting computes how long the cart stays in a state, from one state of charge down to
// another. It ends sooner where a part that was on goes out. The error is [Unknown] if no
// pack states its capacity or the charges make no sense, [Unsettled] if the state does not
// settle at the first of them, or that of ctx.
func (c *Cart) Lasting(ctx context.Context, s *wiring.State, from, to quantity.Ratio) (Lasting, error) {
	if err := isState(s); err != nil {
		return Lasting{}, err
	}
	if !(0 <= to && to < from && from <= 1) {
		return Lasting{}, &Unknown{What: s.Name, Why: fmt.Sprintf("from %v down to %v is no way", from, to)}
	}
	pack, err := c.packWithCapacity()
	if err != nil {
		return Lasting{}, err
	}
	p, err := c.point(ctx, s, from)
	if err != nil {
		return Lasting{}, err
	}
	d := &drain{cart: c, state: s, pack: pack, on: c.on(p)}
	l := Lasting{
		State: s, Pack: pack, From: from, Amps: -p.ElementAmps(pack),
		Draws: c.draws(p, pack), Assumes: c.drainAssumptions(pack),
	}
	l.To, l.Lasts, err = d.run(ctx, from, to)
	l.Used = pack.Capacity * quantity.AmpereHour(from-l.To)
	l.StoppedBy = d.out
	return l, err
}

func (c *Cart) packWithCapacity() (*wiring.Source, error) {
	pack := c.pack()
	if pack == nil {
		return nil, &Unknown{What: "pack", Why: "the cart has no source"}
	}
	if !(pack.Capacity > 0) {
		return nil, &Unknown{What: pack.Part.Designation, Why: "no capacity is stated"}
	}
	return pack, nil
}

func (c *Cart) drainAssumptions(pack *wiring.Source) []Assumption {
	return []Assumption{
		{fmt.Sprintf("%s holds its %v, whatever its age, its temperature and the current", pack.Part.Designation, pack.Capacity), "the rating of the pack"},
		{"the pack's voltage is the rested one of each state of charge, behind its resistance", "the voltage curves of the handbook"},
		{"nothing leaks but what the parts say", practice},
		conductors(c.harness),
	}
}

// on lists the parts that are on.
func (c *Cart) on(p *settle.Point) []*wiring.Part {
	var all []*wiring.Part
	for _, part := range c.harness.Parts {
		if p.On(part) {
			all = append(all, part)
		}
	}
	return all
}

// drain is a pack that empties in a state.
type drain struct {
	cart  *Cart
	state *wiring.State
	pack  *wiring.Source
	on    []*wiring.Part // from the beginning
	out   []*wiring.Part // those of them that went out at the end
}

// How finely an emptying pack is followed: that many equal steps of charge, and the last
// one halved that often to find where something goes out.
const (
	drainSteps = 16
	drainHalve = 10
)

// run empties the pack from one state of charge to another, or to where something goes
// out.
func (d *drain) run(ctx context.Context, from, to quantity.Ratio) (end quantity.Ratio, lasts quantity.Second, err error) {
	before, ok, err := d.current(ctx, from)
	if err != nil || !ok {
		return from, 0, err
	}
	end = from
	for i := 1; i <= drainSteps; i++ {
		next := from + (to-from)*quantity.Ratio(i)/drainSteps
		amps, ok, err := d.current(ctx, next)
		if err != nil {
			return end, lasts, err
		}
		if !ok {
			last, err := d.edge(ctx, end, next)
			return last, lasts + d.time(before, before, end-last), err
		}
		lasts += d.time(before, amps, end-next)
		end, before = next, amps
	}
	return end, lasts, nil
}

// time is how long a share of the charge lasts between two currents: its mean time per
// ampere-hour by the trapezoidal rule.
func (d *drain) time(first, last float64, share quantity.Ratio) quantity.Second {
	if share == 0 {
		return 0
	}
	if first < negligible || last < negligible {
		return quantity.Second(math.Inf(1))
	}
	coulombs := 3600 * float64(d.pack.Capacity) * float64(share)
	return quantity.Second(coulombs * (1/first + 1/last) / 2)
}

// edge is the lowest state of charge at which everything is still on, between one where it
// is and one where it is not.
func (d *drain) edge(ctx context.Context, on, off quantity.Ratio) (quantity.Ratio, error) {
	for range drainHalve {
		middle := (on + off) / 2
		_, ok, err := d.current(ctx, middle)
		if err != nil {
			return on, err
		}
		if ok {
			on = middle
		} else {
			off = middle
		}
	}
	_, _, err := d.current(ctx, off) // says what went out
	return on, err
}

// emptied stands for a state of charge of nothing, which package settle takes for "as the
// state says".
const emptied quantity.Ratio = 1e-9

// current is what the pack gives at a state of charge; false if something has gone out.
func (d *drain) current(ctx context.Context, charge quantity.Ratio) (amps float64, ok bool, err error) {
	d.out = nil
	p, err := d.cart.point(ctx, d.state, max(charge, emptied))
	var unsettled *Unsettled
	if errors.As(err, &unsettled) {
		d.out = d.on
		return 0, false, nil
	}
	if err != nil {
		return 0, false, err
	}
	for _, part := range d.on {
		if !p.On(part) {
			d.out = append(d.out, part)
		}
	}
	return -float64(p.ElementAmps(d.pack)), len(d.out) == 0, nil
}
