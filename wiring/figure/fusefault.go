package figure

import (
	"context"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// FuseFault is the fault that a fuse must be able to interrupt: a short circuit to pack
// negative right at its output, which is the end away from the source.
type FuseFault struct {
	Fuse    *wiring.Fuse
	Through quantity.Ampere // in the fuse itself; what it has to break
	Short   ShortCircuit    // at its output; At says which end that is
	Behind  []*wiring.Fuse  // other fuses that carry all of the same current, and back it up
}

// FuseFaults computes the fault at each fitted fuse of the cart in a state, at a state of
// charge (0: full), in the order of parts. A fuse that only converters and chargers feed
// has a current of zero and a [ShortCircuit.Limit]. The errors are those of
// [Cart.ShortCircuit].
func (c *Cart) FuseFaults(ctx context.Context, s *wiring.State, charge quantity.Ratio) ([]FuseFault, error) {
	f, err := c.fault(ctx, s, charge)
	if err != nil {
		return nil, err
	}
	var all []FuseFault
	for _, e := range each[*wiring.Fuse](c) {
		if !e.Fitted {
			continue
		}
		worst, err := f.atFuse(ctx, e)
		if err != nil {
			return nil, err
		}
		all = append(all, worst)
	}
	return all, nil
}

// atFuse computes the fault at both ends of a fuse and returns the one that puts more
// current through it; of two that put none, that at its second.
func (f *fault) atFuse(ctx context.Context, e *wiring.Fuse) (FuseFault, error) {
	b, err := f.atEnd(ctx, e, e.B)
	if err != nil {
		return FuseFault{}, err
	}
	a, err := f.atEnd(ctx, e, e.A)
	if err != nil {
		return FuseFault{}, err
	}
	if a.Through > b.Through {
		return a, nil
	}
	return b, nil
}

func (f *fault) atEnd(ctx context.Context, e *wiring.Fuse, end wiring.NodeID) (FuseFault, error) {
	sc, k, err := f.between(ctx, end, f.point.ReferenceNode())
	if err != nil {
		return FuseFault{}, err
	}
	worst := FuseFault{Fuse: e, Short: sc}
	if k.at.point == nil {
		return worst, nil
	}
	if amps := math.Abs(k.at.through(e)); amps >= negligible {
		worst.Through = quantity.Ampere(amps)
		worst.Behind = f.behind(k, e, amps)
	}
	return worst, nil
}

// behind lists the other fuses that carry at least the current of one.
func (f *fault) behind(k *carried, one *wiring.Fuse, amps float64) []*wiring.Fuse {
	var all []*wiring.Fuse
	for _, e := range each[*wiring.Fuse](f.cart) {
		if e != one && math.Abs(k.at.through(e)) >= amps*(1-1e-6) {
			all = append(all, e)
		}
	}
	return all
}
