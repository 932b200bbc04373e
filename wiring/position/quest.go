package position

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// quest is the check of one property at work.
type quest struct {
	cart     *Cart
	property *Property
	options  CheckOptions
	network  *settle.Network
	spaces   []*Space
	found    map[string]Counterexample // by subject
	part     bool                      // it looks at the first positions of its spaces only
	result   Result                    // without a verdict while it is open
}

func newQuest(c *Cart, p *Property, o CheckOptions) *quest {
	q := &quest{cart: c, property: p, options: o, network: c.Network, found: map[string]Counterexample{}}
	q.result.Property = p
	q.spaces = []*Space{All(c.Harness)}
	if p.Premise != nil {
		q.spaces, q.result.Why = p.Premise(c, q.spaces[0])
		if len(q.spaces) == 0 {
			q.result.Verdict = Idle
			return q
		}
		q.result.Why = ""
	}
	for _, s := range q.spaces {
		q.result.Product = add(q.result.Product, s.Count())
	}
	if !o.Full {
		q.prune()
	}
	if err := tooMany(q.spaces, o.Options); err != nil {
		if !o.Part {
			q.result.Verdict, q.result.Why = Unproved, err.Error()
			return q
		}
		q.part = true
	}
	if p.Network != nil && len(q.spaces) > 0 {
		q.network = p.Network(c)
	}
	return q
}

// prune leaves out what the property allows to be left out.
func (q *quest) prune() {
	var spaces []*Space
	left := int64(0)
	for _, s := range q.spaces {
		parts := []*Space{s.Distinct()}
		if q.property.Prune != nil {
			parts, q.result.Pruned = q.property.Prune(q.cart, parts[0])
		}
		spaces = append(spaces, parts...)
		for _, part := range parts {
			left = add(left, part.Count())
		}
	}
	q.spaces = spaces
	if left < q.result.Product && q.result.Pruned == "" {
		q.result.Pruned = "controls that nothing reads stay at rest, and positions that read alike count once"
	}
}

// mayShare reports whether the points of this check are those of the cart as it is.
func (q *quest) mayShare() bool {
	return q.property.Network == nil && q.property.Prune == nil
}

// whole reports whether this check asks for all positions of all controls that matter.
func (q *quest) whole() bool { return len(q.spaces) == 1 && len(q.spaces[0].fixed) == 0 }

// speaksOf reports whether a position is one that the property speaks of.
func (q *quest) speaksOf(state *wiring.State) bool { return q.spaceOf(state) != nil }

// spaceOf is the first space whose premise a position meets; nil: none.
func (q *quest) spaceOf(state *wiring.State) *Space {
	for _, s := range q.spaces {
		if s.meets(state) {
			return s
		}
	}
	return nil
}

// looksAt is how many positions of a space are looked at.
func (q *quest) looksAt(s *Space) int64 {
	if !q.part {
		return s.Count()
	}
	return q.options.within(s, len(q.spaces))
}

// may reports whether a position could break the property.
func (q *quest) may(state *wiring.State) bool {
	return q.property.May == nil || q.options.Full || q.property.May(q.cart, state)
}

// enough reports whether nothing more is asked.
func (q *quest) enough() bool { return q.options.First && len(q.found) > 0 }

// take notes what was found at a point; first: it is the first of its position.
func (q *quest) take(s sight, a asked, first bool) {
	if !a.within || q.enough() {
		return
	}
	if first {
		q.result.Looked++
	}
	if !a.settled {
		return
	}
	q.result.Settled++
	if s.point.Outcome != settle.Settled && !q.property.Unsettled {
		q.result.Unsettled.take(q.named(s.state), s.point)
		return
	}
	if s.point.OrderMatters {
		q.result.Races.take(q.named(s.state), s.point)
	}
	for _, v := range a.violations {
		before, ok := q.found[v.Subject]
		if !ok || q.compare(s.state, before.State) < 0 {
			q.found[v.Subject] = Counterexample{State: q.named(s.state), Charge: s.charge, Point: s.point, Violation: v}
		}
	}
}

// named is a position under the name that it has for the property.
func (q *quest) named(state *wiring.State) *wiring.State {
	named := *state
	named.Name = q.spaceOf(state).name(state)
	return &named
}

func (d *Doubt) take(state *wiring.State, p *settle.Point) {
	if d.Count == 0 {
		d.First, d.Why = state, p.Why
	}
	d.Count++
}

// compare orders positions of any spaces of the cart as one space of all would.
func (q *quest) compare(a, b *wiring.State) int {
	if n := len(Moved(q.cart.Harness, a)) - len(Moved(q.cart.Harness, b)); n != 0 {
		return n
	}
	for _, x := range axes(q.cart.Harness) {
		i, j := slices.Index(x.Positions, a.Position(x.Control)), slices.Index(x.Positions, b.Position(x.Control))
		switch {
		case i == j:
		case i == 0:
			return 1
		case j == 0:
			return -1
		default:
			return i - j
		}
	}
	return 0
}

// conclude draws the verdict.
func (q *quest) conclude() {
	r := &q.result
	for _, x := range q.found {
		if x.Violation.Ways != nil {
			x.Ways = x.Violation.Ways()
		}
		r.Counterexamples = append(r.Counterexamples, x)
	}
	slices.SortFunc(r.Counterexamples, func(a, b Counterexample) int {
		return cmp.Or(q.compare(a.State, b.State), cmp.Compare(a.Subject, b.Subject))
	})
	switch {
	case len(r.Counterexamples) > 0:
		r.Verdict = Broken
	case q.part:
		r.Verdict, r.Why = Unproved, q.lookedAt()
	case r.Unsettled.Count > 0:
		r.Verdict = Unproved
		r.Why = fmt.Sprintf("%s no operating point; the first is with %s: %s",
			counted(r.Unsettled.Count, "point has", "points have"), r.Unsettled.First.Name, r.Unsettled.Why)
	case r.Races.Count > 0:
		r.Verdict = Unproved
		r.Why = fmt.Sprintf("%s on which element acts first; the first is with %s: %s",
			counted(r.Races.Count, "point depends", "points depend"), r.Races.First.Name, r.Races.Why)
	default:
		r.Verdict = Holds
	}
}

// lookedAt says how much of its spaces a check of a part looked at: all positions of so few
// controls away from rest as the limit has room for.
func (q *quest) lookedAt() string {
	all, moved := int64(0), -1
	for _, s := range q.spaces {
		all = add(all, s.Count())
		if whole := s.order.whole(q.options.within(s, len(q.spaces))); moved < 0 || whole < moved {
			moved = whole
		}
	}
	return fmt.Sprintf("of %d positions only those with up to %s away from rest were all looked at", all, counted(int64(moved), "control", "controls"))
}

func counted(n int64, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
