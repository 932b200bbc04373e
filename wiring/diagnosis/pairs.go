package diagnosis

import (
	"context"
	"errors"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Pairs makes two faults at once candidates, too: those pairs that fit all that was seen and
// read, and of which each thing that a healthy cart does not show is shown by one of the two
// alone. Two faults that only together show it are not found: there are a hundred thousand
// pairs. The error is that of a context that ends.
func (c *Case) Pairs(ctx context.Context) error {
	pairs := c.likelyPairs()
	states := c.observed()
	found := make([]*Candidate, len(pairs))
	var next atomic.Int64
	workers := min(runtime.GOMAXPROCS(0), len(pairs))
	errs := make([]error, workers)
	var all sync.WaitGroup
	for k := range workers {
		all.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(pairs) && errs[k] == nil; i = next.Add(1) - 1 {
				found[i], errs[k] = c.pair(ctx, pairs[i], states)
			}
		})
	}
	all.Wait()
	c.extra = slices.DeleteFunc(found, func(k *Candidate) bool { return k == nil })
	return errors.Join(errs...)
}

// likelyPairs lists the pairs that between them explain everything, each once.
func (c *Case) likelyPairs() [][2]fault.Fault {
	singles := c.Table.Candidates[1:]
	explained := make([][]bool, len(singles))
	for i, k := range singles {
		explained[i] = c.explained(k)
	}
	var pairs [][2]fault.Fault
	for i, a := range explained {
		for j := i + 1; j < len(explained); j++ {
			if coversAll(a, explained[j]) {
				pairs = append(pairs, [2]fault.Fault{singles[i].Faults[0], singles[j].Faults[0]})
			}
		}
	}
	return pairs
}

// explained says of each thing that was seen, and of each reading that a healthy cart does
// not give, whether a candidate shows it alone.
func (c *Case) explained(k *Candidate) []bool {
	var all []bool
	for _, s := range c.Saw {
		all = append(all, shows(k, s))
	}
	for _, r := range c.Readings {
		if !r.Agrees(c.Table.Healthy(r.Measurement), r.Volts) {
			all = append(all, r.Agrees(c.Table.Expected(k, r.Measurement), r.Volts))
		}
	}
	return all
}

func coversAll(a, b []bool) bool {
	for i := range a {
		if !a[i] && !b[i] {
			return false
		}
	}
	return true
}

// observed lists the places of the states in which something was read.
func (c *Case) observed() []int {
	var all []int
	for _, r := range c.Readings {
		if !slices.Contains(all, r.state) {
			all = append(all, r.state)
		}
	}
	slices.Sort(all)
	return all
}

// pair settles two faults at once: first where something was read, and everywhere only if
// that fits. It returns nil if it does not.
func (c *Case) pair(ctx context.Context, faults [2]fault.Fault, observed []int) (*Candidate, error) {
	var states []*wiring.State
	for _, i := range observed {
		states = append(states, c.Table.States[i])
	}
	some, err := c.Table.Cart.Look(ctx, states, faults[:]...)
	if err != nil {
		return nil, err
	}
	seen := make([]fault.Seen, len(c.Table.States))
	for k, i := range observed {
		seen[i] = some[k]
	}
	k := &Candidate{Faults: faults[:], seen: seen, weight: c.Table.options.weigh(faults[:])}
	for _, r := range c.Readings {
		if !r.Agrees(c.Table.Expected(k, r.Measurement), r.Volts) {
			return nil, nil
		}
	}
	if k.seen, err = c.Table.Cart.Look(ctx, c.Table.States, faults[:]...); err != nil {
		return nil, err
	}
	k.Complaints = symptom.Complaints(&symptom.View{Cart: c.Table.Cart, Healthy: c.Table.healthy, Now: k.seen})
	if !c.fits(k, -1) {
		return nil, nil
	}
	return k, nil
}
