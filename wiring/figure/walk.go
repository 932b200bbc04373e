package figure

import (
	"context"
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// How finely a capacitor's way is followed.
const (
	looks       = 24    // voltages looked at between here and the far end, for something that acts
	stageWidth  = 1e-3  // V: how exactly the voltage is found at which something acts
	straight    = 1e-3  // of the current: more bend than this, and a stage is divided
	leastStage  = 0.05  // V: no stage is divided further
	restCurrent = 1e-6  // of the first current: less is rest
	restWidth   = 1e-6  // V: how exactly rest is found
	narrowing   = 80    // steps in which it is looked for
	mostStages  = 400   // then it is taken for going on for ever
	quickTau    = 10e-3 // s: in less no contact moves; from memory
	localChange = 0.02  // V: over which a time constant is looked at
)

// walk follows a capacitor's voltage.
type walk struct {
	*probe
	farads quantity.Farad
	hard   *thevenin // the state as it settles without the capacitor; nil: it does not
	far    float64   // V: no supply reaches further, either way
	stages []Stage
	seen   map[string]int // by where a stage began: its number
	ahead  *regime        // where the regime of the last stage ends, if that did not
}

// thevenin is a voltage behind a resistance.
type thevenin struct {
	final quantity.Volt
	ohms  quantity.Ohm
}

// regime is a range of voltages in which nothing acts: last is the last sample in it, and
// next the first beyond; nil if there is none.
type regime struct {
	name string
	last sample
	next *sample
}

// run follows the voltage from one, beginning with the memory of a point; nil: from cold.
func (w *walk) run(ctx context.Context, from quantity.Volt, after *settle.Point) (Transient, error) {
	t := Transient{State: w.state}
	a, err := w.exactly(ctx, float64(from), after)
	for err == nil && t.Ending == 0 {
		a, err = w.step(ctx, a, &t)
	}
	t.Stages = w.stages
	return t, err
}

// step adds a stage that begins at a sample, or ends the transient. It returns where the
// next one begins.
func (w *walk) step(ctx context.Context, a sample, t *Transient) (sample, error) {
	if a.settled() && math.Abs(a.amps) < negligible {
		t.Ending, t.Final = Rests, clean(quantity.Volt(a.volts))
		return a, nil
	}
	quick, err := w.isQuick(ctx, a)
	switch {
	case err != nil:
		return a, err
	case quick:
		w.rush(a, t)
		return a, nil
	case !a.settled():
		return w.quieten(ctx, a, t)
	case w.returned(a, t):
		return a, nil
	}
	return w.advance(ctx, a, t)
}

// quieten goes on from a voltage at which something goes to and fro faster than anyone can
// follow: that is taken as off from here on. Without anything to take it ends.
func (w *walk) quieten(ctx context.Context, a sample, t *Transient) (sample, error) {
	var off []settle.Defect
	for _, e := range a.point.Cycle {
		off = append(off, settle.Stuck(e, false))
		t.Restless = append(t.Restless, w.variant.drawn[e])
	}
	if len(off) == 0 {
		t.Ending, t.Why = Undecided, a.point.Why
		return a, nil
	}
	w.network = w.network.With(off...)
	return w.hold(ctx, a.emf, a.point)
}

// advance finds the end of the stage that begins at a sample, and adds it.
func (w *walk) advance(ctx context.Context, a sample, t *Transient) (sample, error) {
	r, err := w.regimeFrom(ctx, a)
	if err != nil {
		return a, err
	}
	b, err := w.straighten(ctx, a, r.last)
	if err != nil {
		return a, err
	}
	if a.amps*b.amps <= 0 {
		if b, err = w.narrow(ctx, a, b); err != nil {
			return a, err
		}
	}
	s := newStage(a, b, w.farads)
	switch {
	case a.amps*b.amps <= 0:
		s.To, s.Last = clean(s.Final()), 0
		s.Lasts = quantity.Second(math.Inf(1))
		t.Ending, t.Final = Rests, s.To
	case b.emf != r.last.emf:
		w.ahead = r
		w.add(s)
		return b, nil
	case r.next == nil:
		t.Ending, t.Why = Undecided, "the voltage leaves all bounds"
	default:
		s = s.onto(quantity.Volt(r.next.volts))
		s.Acts = w.acted(b, *r.next)
		w.add(s)
		return *r.next, nil
	}
	w.add(s)
	return a, nil
}

// clean makes a volt that is nothing but rounding nothing.
func clean(v quantity.Volt) quantity.Volt {
	if math.Abs(float64(v)) < negligible {
		return 0
	}
	return v
}

// add appends a stage, in one with the last where both lie on one line: what acted between
// them changed nothing that the capacitor sees.
func (w *walk) add(s Stage) {
	if n := len(w.stages); n > 0 && s.follows(w.stages[n-1]) {
		before := &w.stages[n-1]
		before.Lasts += s.Lasts
		before.To, before.Last, before.Acts, before.end = s.To, s.Last, s.Acts, s.end
		return
	}
	w.stages = append(w.stages, s)
}

// isQuick reports whether the capacitor is charged here through what is closed at last,
// within so little time that nothing acts.
func (w *walk) isQuick(ctx context.Context, a sample) (bool, error) {
	if w.hard == nil || float64(w.hard.ohms)*float64(w.farads) >= quickTau {
		return false, nil
	}
	if !a.settled() {
		return true, nil
	}
	b, err := w.hold(ctx, a.emf+math.Copysign(localChange, a.amps), a.point)
	if err != nil || b.amps == a.amps {
		return false, err
	}
	if !b.settled() {
		return true, nil
	}
	tau := -float64(w.farads) * (b.volts - a.volts) / (b.amps - a.amps)
	return tau > 0 && tau < quickTau, nil
}

// rush is the last stage, through what is closed at last.
func (w *walk) rush(a sample, t *Transient) {
	from, final := quantity.Volt(a.volts), w.hard.final
	w.stages = append(w.stages, Stage{
		From: from, To: final, First: quantity.Ampere(float64(final-from) / float64(w.hard.ohms)),
		Lasts: quantity.Second(math.Inf(1)), Farads: w.farads, Quick: true,
	})
	t.Ending, t.Final = Rests, final
}

// returned reports whether the way repeats itself, or takes too long to end.
func (w *walk) returned(a sample, t *Transient) bool {
	key := fmt.Sprintf("%s %v %.2f", w.name(a.point), a.amps > 0, a.volts)
	first, seen := w.seen[key]
	switch {
	case seen:
		t.Ending, t.Low, t.High = Hiccups, quantity.Volt(a.volts), quantity.Volt(a.volts)
		for _, s := range w.stages[first:] {
			t.Low, t.High = min(t.Low, s.From, s.To), max(t.High, s.From, s.To)
		}
	case len(w.stages) >= mostStages:
		t.Ending, t.Why = Undecided, fmt.Sprintf("no rest after %d stages", mostStages)
	default:
		w.seen[key] = len(w.stages)
		return false
	}
	return true
}

// regimeFrom looks from a sample onwards for the first voltage at which something acts.
func (w *walk) regimeFrom(ctx context.Context, a sample) (*regime, error) {
	if w.ahead != nil {
		r := w.ahead
		w.ahead = nil
		return r, nil
	}
	r := &regime{name: w.name(a.point), last: a}
	bound := math.Copysign(w.far, a.amps)
	for i := 1; i <= looks && r.next == nil; i++ {
		if err := w.look(ctx, a, r, a.emf+(bound-a.emf)*float64(i)/looks); err != nil {
			return nil, err
		}
	}
	for r.next != nil && math.Abs(r.next.emf-r.last.emf) > stageWidth {
		if err := w.look(ctx, a, r, (r.last.emf+r.next.emf)/2); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// look finds out on which side of the end of a regime a voltage is.
func (w *walk) look(ctx context.Context, a sample, r *regime, emf float64) error {
	b, err := w.hold(ctx, emf, a.point)
	if err != nil {
		return err
	}
	if b.settled() && w.name(b.point) == r.name {
		r.last = b
	} else {
		r.next = &b
	}
	return nil
}

// straighten returns the end of a stage that begins at a and along which the current is a
// straight line: b, or something nearer.
func (w *walk) straighten(ctx context.Context, a, b sample) (sample, error) {
	for math.Abs(b.emf-a.emf) > leastStage {
		middle, bent, err := w.bent(ctx, a, b)
		if err != nil || !bent {
			return b, err
		}
		b = middle
	}
	return b, nil
}

// bent looks at three voltages between two samples whether the current there is off the
// line between them. It returns what is half way.
func (w *walk) bent(ctx context.Context, a, b sample) (middle sample, bent bool, err error) {
	most := straight * max(math.Abs(a.amps), math.Abs(b.amps))
	for _, part := range []float64{0.5, 0.25, 0.75} {
		m, err := w.hold(ctx, a.emf+(b.emf-a.emf)*part, a.point)
		if err != nil {
			return m, false, err
		}
		if part == 0.5 {
			middle = m
		}
		if math.Abs(m.amps-a.amps-(b.amps-a.amps)*part) > most {
			return middle, true, nil
		}
	}
	return middle, false, nil
}

// narrow looks between two samples, of which the second lies beyond it, for the voltage at
// which the capacitor rests, by turns where the line between them has no current and half
// way. A single line would miss it where the current bends off just there, as with a supply
// that takes none back.
func (w *walk) narrow(ctx context.Context, a, b sample) (sample, error) {
	near, far := a, b
	for i := 0; i < narrowing && math.Abs(far.emf-near.emf) > restWidth; i++ {
		emf := (near.emf + far.emf) / 2
		if i%2 == 0 {
			emf = near.emf + (far.emf-near.emf)*near.amps/(near.amps-far.amps)
		}
		rest, err := w.hold(ctx, emf, a.point)
		switch {
		case err != nil:
			return b, err
		case math.Abs(rest.amps) <= restCurrent*math.Abs(a.amps):
			rest.amps = 0
			return rest, nil
		case rest.amps*a.amps > 0:
			near = rest
		default:
			far = rest
		}
	}
	return far, nil
}

// name is how everything stands: one digit an element, and what limits.
func (w *walk) name(p *settle.Point) string {
	var b []byte
	for _, part := range w.variant.harness.Parts {
		for _, e := range part.Elements {
			if p.Holds(e) {
				b = append(b, '1')
			} else {
				b = append(b, '0')
			}
		}
	}
	for _, e := range p.Limiting() {
		b = append(append(b, ' '), e.Base().Ref()...)
	}
	return string(b)
}

// acted lists what stands otherwise in the second sample, as drawn.
func (w *walk) acted(a, b sample) []wiring.Element {
	var all []wiring.Element
	for _, part := range w.variant.harness.Parts {
		for _, e := range part.Elements {
			if drawn := w.variant.drawn[e]; drawn != nil && a.point.Holds(e) != b.point.Holds(e) {
				all = append(all, drawn)
			}
		}
	}
	return all
}
