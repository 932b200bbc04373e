package fault

import (
	"context"
	"errors"
	"runtime"
	"sync"
	"sync/atomic"

	"github.com/lugwright/lugwright/wiring"
)

// Row is one fault in every state.
type Row struct {
	Fault Fault
	Seen  []Seen // by index of Survey.States
}

// Survey is a cart with one thing wrong after another.
type Survey struct {
	Cart    *Cart
	States  []*wiring.State
	Healthy []Seen // with nothing wrong
	Rows    []Row  // in the order of the faults
}

// Survey settles every fault in every state, as many at a time as there are processors. The
// error is that of a context that ends.
func (c *Cart) Survey(ctx context.Context, faults []Fault, states []*wiring.State) (*Survey, error) {
	v := &Survey{Cart: c, States: states, Rows: make([]Row, len(faults))}
	var err error
	if v.Healthy, err = c.Look(ctx, states); err != nil {
		return nil, err
	}
	var next atomic.Int64
	workers := min(runtime.GOMAXPROCS(0), len(faults))
	errs := make([]error, workers)
	var all sync.WaitGroup
	for k := range workers {
		all.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(faults) && errs[k] == nil; i = next.Add(1) - 1 {
				v.Rows[i].Fault = faults[i]
				v.Rows[i].Seen, errs[k] = c.Look(ctx, states, faults[i])
			}
		})
	}
	all.Wait()
	return v, errors.Join(errs...)
}
