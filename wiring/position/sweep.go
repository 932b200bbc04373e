package position

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// MostPositions is how many positions a sweep settles unless it is told otherwise: a
// million, a few minutes of work on two processors for a cart.
const MostPositions = 1 << 20

// Options changes how positions are swept. The zero Options are the usual ones.
type Options struct {
	// Charges are the states of charge at which each position is settled, in this order;
	// 0 stands for the one that the harness assumes. None: that one alone.
	Charges []quantity.Ratio
	// Most is the limit of settlings; 0: MostPositions.
	Most int64
	// Progress is told now and then how many settlings of how many are done, always by the
	// goroutine that called, and at the end of a sweep that was not stopped with done and
	// total equal; nil: nobody asks.
	Progress func(done, total int64)
}

func (o Options) charges() []quantity.Ratio {
	if len(o.Charges) == 0 {
		return []quantity.Ratio{0}
	}
	return o.Charges
}

func (o Options) most() int64 {
	if o.Most <= 0 {
		return MostPositions
	}
	return o.Most
}

// TooMany is the error of a sweep that would have to settle more positions than its limit.
type TooMany struct {
	Count int64 // math.MaxInt64 stands for as many or more
	Most  int64
}

func (e *TooMany) Error() string {
	if e.Count == many {
		return fmt.Sprintf("there are more positions than can be counted, and the limit is %d", e.Most)
	}
	return fmt.Sprintf("there are %d positions to settle, and the limit is %d", e.Count, e.Most)
}

// Seen is one position of a sweep.
type Seen struct {
	Index  int64          // number of the position in its space
	State  *wiring.State  // the position
	Charge quantity.Ratio // as in Options.Charges
	Point  *settle.Point
}

// Sweep settles all positions of a space from cold, as many at a time as there are
// processors, and calls visit with them in the order of the space, in the goroutine that
// called, each position at its charges one after another. It ends when visit returns
// false. The error is *TooMany if the space is larger than the limit, before anything is
// settled, or that of ctx.
//
// The network must have been compiled from the harness of the space, with or without
// defects. A few dozen points are held at a time, whatever the size of the space.
func Sweep(ctx context.Context, net *settle.Network, space *Space, o Options, visit func(Seen) bool) error {
	if err := tooMany([]*Space{space}, o); err != nil {
		return err
	}
	charges := o.charges()
	p := &progress{tell: o.Progress, total: settlings([]*Space{space}, o)}
	look := func(ctx context.Context, i int64) (Seen, error) {
		at, charge := i/int64(len(charges)), charges[i%int64(len(charges))]
		seen := Seen{Index: at, State: space.At(at), Charge: charge}
		var err error
		seen.Point, err = net.Settle(ctx, seen.State, settle.Options{SOC: charge})
		return seen, err
	}
	return inOrder(ctx, p.total, look, func(_ int64, seen Seen) bool {
		p.step()
		return visit(seen)
	})
}

// tooMany is the error of spaces that are together larger than the limit.
func tooMany(spaces []*Space, o Options) error {
	if count := settlings(spaces, o); count > o.most() {
		return &TooMany{Count: count, Most: o.most()}
	}
	return nil
}

// settlings counts how often spaces ask for a point.
func settlings(spaces []*Space, o Options) int64 {
	sum := int64(0)
	for _, s := range spaces {
		sum = add(sum, times(s.Count(), int64(len(o.charges()))))
	}
	return sum
}

// within is how many positions of one of some spaces the limit has room for.
func (o Options) within(s *Space, spaces int) int64 {
	return min(s.Count(), max(1, o.most()/int64(len(o.charges())*spaces)))
}

// progress counts settlings and tells how far they have come, once a batch and at the end.
type progress struct {
	tell        func(done, total int64)
	done, total int64
}

func (p *progress) step() {
	p.done++
	if p.tell != nil && (p.done%batch == 0 || p.done == p.total) {
		p.tell(p.done, p.total)
	}
}
