package meter

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Bench is a harness made ready for measuring.
type Bench struct {
	Harness *wiring.Harness

	network  *settle.Network
	graph    *path.Graph
	supplies []*path.Supply
	returns  map[int]bool // groups of copper that are the bottom of a supply, or the frame's
	mains    []Main
}

// New makes a harness ready for measuring.
func New(h *wiring.Harness) *Bench {
	b := &Bench{Harness: h, network: settle.Compile(h), graph: path.New(h), returns: map[int]bool{}}
	// Which voltage a cell gives is the business of settling: here only what stands on what counts.
	b.supplies = b.graph.Supplies(func(string) (path.Volts, bool) { return path.Volts{}, false })
	for _, s := range b.supplies {
		b.returns[b.graph.Copper(s.Bottom)] = true
	}
	b.mains = b.mainContacts()
	return b
}

// Name is a node as a person writes it: "G1.+", or "X5" where a part has one terminal.
func (b *Bench) Name(n wiring.NodeID) string { return b.graph.Name(n) }

// isReturn reports whether copper alone joins a node to the bottom of a supply.
func (b *Bench) isReturn(n wiring.NodeID) bool { return b.returns[b.graph.Copper(n)] }

// Unsettled says that a state has no operating point that could be measured.
type Unsettled struct {
	State   string
	Outcome settle.Outcome
	Why     string
}

// Error returns "driving has no readings: it chatters: ...".
func (u *Unsettled) Error() string {
	return fmt.Sprintf("%s has no readings: %v: %s", u.State, u.Outcome, u.Why)
}

// Settle settles a state, which need not be one of the harness's own, from cold. The error
// is that of a context that ends, or an [*Unsettled].
func (b *Bench) Settle(ctx context.Context, s *wiring.State) (*Sheet, error) {
	p, err := b.network.Settle(ctx, s, settle.Options{})
	if err != nil {
		return nil, err
	}
	if p.Outcome != settle.Settled {
		return nil, &Unsettled{State: s.Name, Outcome: p.Outcome, Why: p.Why}
	}
	return b.sheet(p), nil
}

// Charge is the state of charge at which a state is settled.
func (b *Bench) Charge(s *wiring.State) quantity.Ratio {
	if s.SOC != 0 {
		return s.SOC
	}
	return b.Harness.Assume.SOC
}
