// Package settle finds the operating point of a harness in a state: what every node reads
// and every wire carries, which contacts have closed and what is running.
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

// Options changes how a state is settled. The zero Options are the usual ones.
type Options struct {
	SOC   quantity.Ratio // state of charge of every source instead of the state's; 0: the state's
	After *Point         // begin with the memory of this point; nil: from cold, or as the state says
}

// State settles a harness in one of its states. It returns an error only when ctx ends;
// everything that can go wrong with a circuit is an Outcome.
func State(ctx context.Context, h *wiring.Harness, s *wiring.State, o Options) (*Point, error) {
	return settleState(ctx, h, s, o)
}
