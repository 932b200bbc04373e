package position

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// CheckOptions changes how a property is checked. The zero CheckOptions are the usual ones.
type CheckOptions struct {
	Options
	Full  bool // sweep the product of all controls, whatever could be left out
	First bool // stop at the first position that breaks the property
}

// Verdict says how a check ended.
type Verdict uint8

// Verdicts.
const (
	Holds    Verdict = iota + 1 // proved of every position
	Broken                      // Result.Counterexamples has the positions
	Unproved                    // Result.Why says what stands in the way of a proof
	Idle                        // the property does not speak of this cart; Result.Why says why
)

// String is the verdict in a word or two.
func (v Verdict) String() string {
	switch v {
	case Holds:
		return "holds"
	case Broken:
		return "broken"
	case Unproved:
		return "not proved"
	case Idle:
		return "does not apply"
	}
	return "not checked yet"
}

// Result is the outcome of a check.
type Result struct {
	Property *Property
	Verdict  Verdict
	Why      string // of Unproved and Idle: a sentence
	Pruned   string // why fewer positions than the product were enough; empty if they were not
	Product  int64  // positions that the property speaks of: the full product
	Looked   int64  // positions that were looked at for this verdict
	Settled  int64  // points that were settled for it

	// Counterexamples has for each thing that breaks the property a position with the
	// fewest controls away from rest, in the order of positions.
	Counterexamples []Counterexample

	Unsettled Doubt // positions without an operating point
	Races     Doubt // positions whose outcome depends on which of several elements acts first
}

// Counterexample is a position that breaks a property. No position in which fewer controls
// are away from rest breaks it in this way.
type Counterexample struct {
	State  *wiring.State // its Name lists the controls that are not at rest
	Charge quantity.Ratio
	Point  *settle.Point
	Violation
	Ways []Way // what explains it, the most direct one first
}

// Doubt counts positions of which a property says nothing.
type Doubt struct {
	Count int64         // points
	First *wiring.State // one of those with the fewest controls away from rest; nil: none
	Why   string        // of First
}

// Check proves a property of all positions of a cart, or finds positions that break it. The
// error is that of ctx; a space beyond the limit is the verdict Unproved.
func Check(ctx context.Context, c *Cart, p *Property, o CheckOptions) (Result, error) {
	q := newQuest(c, p, o)
	if q.result.Verdict == Idle {
		return q.result, nil
	}
	if err := tooMany(q.spaces, o.Options); err != nil {
		q.result.Verdict, q.result.Why = Unproved, err.Error()
		return q.result, nil
	}
	q.total = settlings(q.spaces, o.Options)
	for _, s := range q.spaces {
		if err := q.sweep(ctx, s); err != nil {
			return q.result, err
		}
	}
	q.conclude()
	return q.result, nil
}

// quest is a check at work.
type quest struct {
	cart     *Cart
	property *Property
	options  CheckOptions
	network  *settle.Network
	spaces   []*Space
	done     int64
	total    int64
	found    map[string]Counterexample // by subject
	result   Result
}

func newQuest(c *Cart, p *Property, o CheckOptions) *quest {
	q := &quest{cart: c, property: p, options: o, network: c.Network, found: map[string]Counterexample{}}
	q.result.Property = p
	if p.Network != nil {
		q.network = p.Network(c)
	}
	whole := All(c.Harness)
	q.spaces = []*Space{whole}
	if p.Premise != nil {
		q.spaces, q.result.Why = p.Premise(c, whole)
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
	return q
}

// prune leaves out what the property allows to be left out.
func (q *quest) prune() {
	var spaces []*Space
	before, after := q.result.Product, int64(0)
	for _, s := range q.spaces {
		parts := []*Space{s.Distinct()}
		if q.property.Prune != nil {
			parts, q.result.Pruned = q.property.Prune(q.cart, parts[0])
		}
		spaces = append(spaces, parts...)
		for _, part := range parts {
			after = add(after, part.Count())
		}
	}
	q.spaces = spaces
	if after < before && q.result.Pruned == "" {
		q.result.Pruned = "controls that nothing reads stay at rest, and positions that read alike count once"
	}
}

// look is what was found in one position at one charge.
type look struct {
	state      *wiring.State
	charge     quantity.Ratio
	point      *settle.Point // nil: it could not break the property, and was not settled
	violations []Violation
}

func (q *quest) look(ctx context.Context, s *Space, i int64) (look, error) {
	charges := q.options.charges()
	l := look{state: s.At(i / int64(len(charges))), charge: charges[i%int64(len(charges))]}
	if may := q.property.May; may != nil && !q.options.Full && !may(q.cart, l.state) {
		return l, nil
	}
	var err error
	l.point, err = q.network.Settle(ctx, l.state, settle.Options{SOC: l.charge})
	if err == nil && (l.point.Outcome == settle.Settled || q.property.Unsettled) {
		l.violations = q.property.Judge(q.cart, l.point)
	}
	return l, err
}

// sweep looks at the positions of one space.
func (q *quest) sweep(ctx context.Context, s *Space) error {
	count := times(s.Count(), int64(len(q.options.charges())))
	each := func(ctx context.Context, i int64) (look, error) { return q.look(ctx, s, i) }
	at := int64(-1)
	charges := int64(len(q.options.charges()))
	return inOrder(ctx, count, each, func(i int64, l look) bool {
		if i/charges != at {
			at = i / charges
			q.result.Looked++
		}
		q.take(l)
		q.done++
		q.options.progress(q.done, q.total)
		return !q.options.First || len(l.violations) == 0
	})
}

// take notes what was found in one position.
func (q *quest) take(l look) {
	if l.point == nil {
		return
	}
	q.result.Settled++
	if l.point.Outcome != settle.Settled && !q.property.Unsettled {
		q.result.Unsettled.take(l)
		return
	}
	if l.point.OrderMatters {
		q.result.Races.take(l)
	}
	for _, v := range l.violations {
		before, ok := q.found[v.Subject]
		if !ok || q.compare(l.state, before.State) < 0 {
			q.found[v.Subject] = Counterexample{State: l.state, Charge: l.charge, Point: l.point, Violation: v}
		}
	}
}

func (d *Doubt) take(l look) {
	if d.Count == 0 {
		d.First, d.Why = l.state, l.point.Why
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
	case r.Unsettled.Count > 0:
		r.Verdict = Unproved
		r.Why = fmt.Sprintf("of %d points there is no operating point; the first is with %s: %s",
			r.Unsettled.Count, r.Unsettled.First.Name, r.Unsettled.Why)
	case r.Races.Count > 0:
		r.Verdict = Unproved
		r.Why = fmt.Sprintf("%d points depend on which element acts first; the first is with %s: %s",
			r.Races.Count, r.Races.First.Name, r.Races.Why)
	default:
		r.Verdict = Holds
	}
}
