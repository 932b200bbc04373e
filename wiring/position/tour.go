package position

import (
	"context"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// tour is a sweep of one space in one network, on behalf of one property or of several.
type tour struct {
	space  *Space
	first  int64 // how many of its positions are looked at
	quests []*quest
}

// toursOf plans the sweeps that properties need. If one of them asks for all positions in
// the cart's own network, the others that ask for some of these come along.
func toursOf(quests []*quest) []*tour {
	var tours []*tour
	whole := slices.IndexFunc(quests, func(q *quest) bool { return q.mayShare() && q.whole() })
	var shared *tour
	if whole >= 0 {
		q := quests[whole]
		shared = &tour{space: q.spaces[0], first: q.looksAt(q.spaces[0])}
		tours = append(tours, shared)
	}
	for _, q := range quests {
		if shared != nil && q.mayShare() && shared.serves(q) {
			shared.quests = append(shared.quests, q)
			continue
		}
		for _, s := range q.spaces {
			tours = append(tours, &tour{space: s, first: q.looksAt(s), quests: []*quest{q}})
		}
	}
	return tours
}

// serves reports whether the sweep has every position that a check asks for. One that looks
// at a part of the space serves those that look at the same part.
func (t *tour) serves(q *quest) bool {
	if t.first < t.space.Count() {
		return q.whole()
	}
	return !slices.ContainsFunc(q.spaces, func(s *Space) bool { return !t.space.covers(s) })
}

// sight is one position at one charge, and what the properties say of it.
type sight struct {
	state  *wiring.State
	charge quantity.Ratio
	point  *settle.Point // nil: nobody asked for it
	asked  []asked       // by quest
}

// asked is what one property says of a point.
type asked struct {
	within     bool // the property speaks of this position
	settled    bool // it wanted to see the point
	violations []Violation
}

// run sweeps the space.
func (t *tour) run(ctx context.Context, p *progress, o Options) error {
	charges := o.charges()
	count := times(t.first, int64(len(charges)))
	look := func(ctx context.Context, i int64) (sight, error) {
		return t.look(ctx, t.space.At(i/int64(len(charges))), charges[i%int64(len(charges))])
	}
	return inOrder(ctx, count, look, func(i int64, s sight) bool {
		p.step()
		open := false
		for k, q := range t.quests {
			q.take(s, s.asked[k], i%int64(len(charges)) == 0)
			open = open || !q.enough()
		}
		return open
	})
}

// look asks all properties about a position, and settles it if any of them wants to see
// the point.
func (t *tour) look(ctx context.Context, state *wiring.State, charge quantity.Ratio) (sight, error) {
	s := sight{state: state, charge: charge, asked: make([]asked, len(t.quests))}
	for k, q := range t.quests {
		a := &s.asked[k]
		a.within = q.speaksOf(state)
		a.settled = a.within && q.may(state)
		if !a.settled {
			continue
		}
		if s.point == nil {
			var err error
			if s.point, err = q.network.Settle(ctx, state, settle.Options{SOC: charge}); err != nil {
				return s, err
			}
		}
		if s.point.Outcome == settle.Settled || q.property.Unsettled {
			a.violations = q.property.Judge(q.cart, s.point)
		}
	}
	return s, nil
}
