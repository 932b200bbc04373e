package figure

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Cart is a harness made ready for figures. It does not change, and many goroutines may
// ask it at the same time.
type Cart struct {
	harness *wiring.Harness
	network *settle.Network
	graph   *path.Graph
	tables  *handbook.Tables
}

// New makes a harness ready for figures with the tables of a handbook; nil means the
// tables that the program brings with it.
func New(h *wiring.Harness, t *handbook.Tables) *Cart {
	if t == nil {
		t = handbook.Default()
	}
	return &Cart{harness: h, network: settle.Compile(h), graph: path.New(h), tables: t}
}

// Unsettled says that a state has no operating point to take a figure from.
type Unsettled struct {
	State   string
	Outcome settle.Outcome
	Why     string
}

// Error returns "driving has no operating point: it chatters: …".
func (e *Unsettled) Error() string {
	return fmt.Sprintf("%s has no operating point: it ends as %q: %s", e.State, e.Outcome, e.Why)
}

// Unknown says that a figure cannot be had for want of something.
type Unknown struct {
	What string // "G1": a part, an element, a terminal
	Why  string // "no capacity is stated"
}

// Error returns "G1: no capacity is stated".
func (e *Unknown) Error() string { return e.What + ": " + e.Why }

// point settles a state of the cart as drawn, at a state of charge (0: the state's own).
func (c *Cart) point(ctx context.Context, s *wiring.State, charge quantity.Ratio) (*settle.Point, error) {
	return settled(ctx, c.network, s, settle.Options{SOC: charge})
}

// isState says what is wrong if a state is none, as where the cart has none of a name.
func isState(s *wiring.State) error {
	if s == nil {
		return &Unknown{What: "state", Why: "the cart has no such state"}
	}
	return nil
}

// settled settles a state and makes an error of every outcome but [settle.Settled].
func settled(ctx context.Context, n *settle.Network, s *wiring.State, o settle.Options) (*settle.Point, error) {
	if err := isState(s); err != nil {
		return nil, err
	}
	p, err := n.Settle(ctx, s, o)
	if err != nil {
		return nil, err
	}
	if p.Outcome != settle.Settled {
		return nil, &Unsettled{State: s.Name, Outcome: p.Outcome, Why: p.Why}
	}
	return p, nil
}

// elements calls f with every element of the harness, in the order of its parts.
func (c *Cart) elements(f func(wiring.Element)) {
	for _, p := range c.harness.Parts {
		for _, e := range p.Elements {
			f(e)
		}
	}
}

// each lists the elements of one type, in the order of the parts.
func each[E wiring.Element](c *Cart) []E {
	var all []E
	c.elements(func(e wiring.Element) {
		if e, ok := e.(E); ok {
			all = append(all, e)
		}
	})
	return all
}

// isNode reports whether the harness has a node.
func (c *Cart) isNode(n wiring.NodeID) bool { return n >= 0 && int(n) < len(c.harness.Nodes) }

// terminalAt is the terminal of a node; nil for a node inside a part, and for none.
func (c *Cart) terminalAt(n wiring.NodeID) *wiring.Terminal {
	if !c.isNode(n) {
		return nil
	}
	return c.harness.Nodes[n].Terminal
}
