package arrange

// Tinker proposes small changes of a layout for someone who judges them by better means
// than a first sight.
type Tinker struct {
	d     *Diagram
	rng   random
	reach int
}

// NewTinker makes a source of changes that move things at most reach units.
func NewTinker(d *Diagram, reach int, seed uint64) *Tinker {
	return &Tinker{d: d, rng: newRandom(seed), reach: reach}
}

// tinkerHeat is how much dearer, in units of wire, a proposal may look at first sight: much
// of what really helps does not look it.
const (
	tinkerHeat  = 12
	tinkerTries = 40
)

// Change returns a changed copy of a layout; items are those from which to pick what moves,
// nil for all. The second result is false if nothing plausible was found.
func (t *Tinker) Change(l *Layout, items []int) (*Layout, bool) {
	p := newPlan(t.d, l.Clone())
	p.rng = t.rng
	p.hold(nil)
	if len(items) > 0 {
		p.loose = items
	}
	var c change
	changed := false
	for range tinkerTries {
		if _, ok := p.try(&c, t.reach, tinkerHeat); ok {
			changed = true
			break
		}
	}
	t.rng = p.rng
	return p.l, changed
}

// Chance returns a number from 0 to below 1.
func (t *Tinker) Chance() float64 { return t.rng.unit() }
