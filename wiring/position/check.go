package position

import "context"

// CheckOptions changes how properties are checked. The zero CheckOptions are the usual
// ones. Options.Most is the limit of each property by itself.
type CheckOptions struct {
	Options
	Full  bool // sweep the product of all controls, whatever could be left out
	First bool // stop at the first position that breaks the property
	// Part looks at the first positions of a space that is larger than the limit, those with
	// the fewest controls away from rest, instead of at none. Such a check can find what
	// breaks a property and never proves it.
	Part bool
}

// Check proves a property of all positions of a cart, or finds positions that break it. The
// error is that of ctx; a space beyond the limit is the verdict Unproved.
func Check(ctx context.Context, c *Cart, p *Property, o CheckOptions) (Result, error) {
	results, err := CheckAll(ctx, c, []*Property{p}, o)
	return results[0], err
}

// CheckAll checks several properties like Check, and settles a position once for all of
// them that ask for it in the same network. The results are in the order of the
// properties.
func CheckAll(ctx context.Context, c *Cart, ps []*Property, o CheckOptions) ([]Result, error) {
	var quests, open []*quest
	for _, p := range ps {
		q := newQuest(c, p, o)
		quests = append(quests, q)
		if q.result.Verdict == 0 {
			open = append(open, q)
		}
	}
	tours := toursOf(open)
	p := &progress{tell: o.Progress}
	for _, t := range tours {
		p.total = add(p.total, times(t.first, int64(len(o.charges()))))
	}
	var err error
	for _, t := range tours {
		if err = t.run(ctx, p, o.Options); err != nil {
			break
		}
	}
	results := make([]Result, len(quests))
	for i, q := range quests {
		if err == nil && q.result.Verdict == 0 {
			q.conclude()
		}
		results[i] = q.result
	}
	return results, err
}
