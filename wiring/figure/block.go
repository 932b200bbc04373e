package figure

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// BlockRoom is what a fuse block carries in a state, and what it has free.
type BlockRoom struct {
	Part     *wiring.Part
	State    *wiring.State
	Ambient  quantity.Celsius
	Channels []Channel // by number
	Feeds    []Feed    // the studs that feed them, in the order of the channels
	Assumes  []Assumption
}

// Channel is one fused way of a block.
type Channel struct {
	Number   int
	Fuse     *wiring.Fuse
	Terminal *wiring.Terminal // that it leads to; nil: to a node inside
	Wires    int              // that land there
	Amps     quantity.Ampere  // that it carries
	Lasting  quantity.Ampere  // that its fuse should carry for ever: 80 % of its rating, 72 % where it is hot
}

// Free reports whether nothing lands on the channel.
func (k Channel) Free() bool { return k.Wires == 0 }

// Left is what the fuse may carry besides; false without one, or if it is not rated.
func (k Channel) Left() (quantity.Ampere, bool) { return k.Lasting - k.Amps, k.Lasting > 0 }

// Feed is a stud of a block, and what it carries.
type Feed struct {
	Terminal *wiring.Terminal
	Amps     quantity.Ampere // all channels together
	Limit    quantity.Ampere // that the terminal may carry; 0: not stated
}

// Left is what the feed may carry besides; false if its limit is not stated.
func (f Feed) Left() (quantity.Ampere, bool) { return f.Limit - f.Amps, f.Limit > 0 }

// Free lists the channels on which nothing lands.
func (b BlockRoom) Free() []Channel {
	var all []Channel
	for _, k := range b.Channels {
		if k.Free() {
			all = append(all, k)
		}
	}
	return all
}

// BlockRooms computes what is left of each fuse block of the cart in a state, such as
// `everything on`, at a state of charge (0: the state's own), in the order of parts. The
// errors are [Unsettled], [Unknown] for a state that is none, and that of ctx.
func (c *Cart) BlockRooms(ctx context.Context, s *wiring.State, charge quantity.Ratio) ([]BlockRoom, error) {
	d, err := c.demand(ctx, s, charge)
	if err != nil {
		return nil, err
	}
	var all []BlockRoom
	for _, p := range c.harness.Parts {
		b := BlockRoom{Part: p, State: s, Ambient: c.ambient(p)}
		for _, e := range p.Elements {
			if f, ok := e.(*wiring.Fuse); ok && f.Channel > 0 {
				b.add(d, f)
			}
		}
		if len(b.Channels) > 0 {
			b.Assumes = blockAssumptions(s, b.Ambient)
			all = append(all, b)
		}
	}
	return all, nil
}

func (b *BlockRoom) add(d *demand, f *wiring.Fuse) {
	k := Channel{Number: f.Channel, Fuse: f, Terminal: d.cart.terminalAt(f.B), Amps: quantity.Ampere(d.amps(f))}
	if k.Terminal != nil {
		k.Wires = len(k.Terminal.Wires)
	}
	if f.Fitted {
		k.Lasting = d.cart.tables.LargestContinuous(f.Rating, b.Ambient)
	}
	b.Channels = append(b.Channels, k)
	b.feed(d.cart.terminalAt(f.A), k.Amps)
}

// feed adds the current of a channel to that of its stud.
func (b *BlockRoom) feed(t *wiring.Terminal, amps quantity.Ampere) {
	if t == nil {
		return
	}
	for i := range b.Feeds {
		if b.Feeds[i].Terminal == t {
			b.Feeds[i].Amps += amps
			return
		}
	}
	b.Feeds = append(b.Feeds, Feed{Terminal: t, Amps: amps, Limit: t.Rated})
}

// ambient is the temperature where a part sits.
func (c *Cart) ambient(p *wiring.Part) quantity.Celsius {
	if place := c.harness.Place(p.Place); place != nil && place.Ambient != 0 {
		return place.Ambient
	}
	return c.harness.Assume.Ambient
}

func blockAssumptions(s *wiring.State, ambient quantity.Celsius) []Assumption {
	return []Assumption{
		{fmt.Sprintf("all that is on in the state %q is on at once, for ever", s.Name), "the state"},
		{fmt.Sprintf("the block sits at %v", ambient), "its place, or the job's assumption"},
		{"a fuse carries 80 % of its rating for ever, 72 % where it is hot", practice},
	}
}
