package settle

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Outcome says how settling ended.
type Outcome uint8

// Outcomes.
const (
	Settled    Outcome = iota + 1 // nothing changes any more
	Chatters                      // goes round a cycle; Point.Cycle names the elements
	NoSolution                    // Point.Why says which loop or which supply
)

// String is the outcome in a word or two.
func (o Outcome) String() string {
	switch o {
	case Settled:
		return "settled"
	case Chatters:
		return "chatters"
	case NoSolution:
		return "no solution"
	}
	return "not settled yet"
}

// Options changes how a state is settled. The zero Options are the usual ones.
type Options struct {
	SOC   quantity.Ratio // state of charge of every source instead of the state's; 0: the state's
	After *Point         // begin with the memory of this point; nil: from cold, or as the state says

	// OpenCircuit gives the open-circuit voltage of a source in place of its curve, such as
	// the voltage of a pack that has just been charged. A result of 0 leaves the curve.
	OpenCircuit func(*wiring.Source) quantity.Volt
}

// State settles a harness in one of its states. It returns an error only when ctx ends;
// everything that can go wrong with a circuit is an Outcome.
//
// It compiles the harness each time. To settle many states of one harness, [Compile] it
// once and use [Network.Settle].
func State(ctx context.Context, h *wiring.Harness, s *wiring.State, o Options) (*Point, error) {
	return Compile(h).Settle(ctx, s, o)
}
