package settle

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
)

// Step is a state of a cart's day, settled twice: from cold, and after the state before
// it. A cart with one answer to each state has no differences.
type Step struct {
	State   *wiring.State
	Cold    *Point
	After   *Point           // the same as Cold at the first step
	Differs []wiring.Element // what holds in one and not in the other
}

// inOrder is a day: how a cart is switched on, driven, and switched off again.
var inOrder = []string{"pack off", "tow", "key off", "ready", "driving", "ready", "key off", "tow", "pack off"}

// Day lists the states of the harness that a cart goes through from pack off to driving
// and back, those that it has.
func Day(h *wiring.Harness) []*wiring.State {
	var states []*wiring.State
	for _, name := range inOrder {
		s := h.State(name)
		if s != nil && (len(states) == 0 || states[len(states)-1] != s) {
			states = append(states, s)
		}
	}
	return states
}

// History settles states one after another, each from cold and with the memory of the one
// before, such as [Day]. It returns an error only when ctx ends.
func (n *Network) History(ctx context.Context, states []*wiring.State, o Options) ([]Step, error) {
	var steps []Step
	var before *Point
	for _, state := range states {
		cold := *state
		cold.After = ""
		o.After = nil
		step := Step{State: state}
		var err error
		if step.Cold, err = n.Settle(ctx, &cold, o); err != nil {
			return nil, err
		}
		step.After = step.Cold
		if before != nil {
			o.After = before
			if step.After, err = n.Settle(ctx, state, o); err != nil {
				return nil, err
			}
		}
		step.Differs = Differs(step.Cold, step.After)
		before = step.After
		steps = append(steps, step)
	}
	return steps, nil
}

// Differs lists the elements that hold at one of two points of a network and not at the
// other, in the order of parts.
func Differs(a, b *Point) []wiring.Element {
	var es []wiring.Element
	for _, m := range a.net.models {
		if e := m.itself().element; a.Holds(e) != b.Holds(e) {
			es = append(es, e)
		}
	}
	return es
}
