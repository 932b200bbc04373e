package figure

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// course is what a transient begins with.
type course struct {
	capacitor *wiring.Capacitor
	before    *wiring.State  // whose voltage and memory it begins with; nil: empty, from cold
	state     *wiring.State  // that is set then
	charge    quantity.Ratio // of the sources; 0: the state's own
	full      bool           // sources stand at their end-of-charge voltage instead
	without   []wiring.Element
}

// follow follows a capacitor's voltage along a course.
func (c *Cart) follow(ctx context.Context, k course) (Transient, error) {
	w, err := c.walk(ctx, k)
	if err != nil {
		return Transient{}, err
	}
	from, after, err := w.begin(ctx, k)
	if err != nil {
		return Transient{}, err
	}
	if err := w.drop(ctx, k); err != nil {
		return Transient{}, err
	}
	t, err := w.run(ctx, from, after)
	t.Capacitor = k.capacitor
	t.Assumes = c.courseAssumptions(k)
	return t, err
}

// walk makes a course ready to be followed.
func (c *Cart) walk(ctx context.Context, k course) (*walk, error) {
	if err := isState(k.state); err != nil {
		return nil, err
	}
	if !(k.capacitor.Farads > 0) {
		return nil, &Unknown{What: k.capacitor.Ref(), Why: "no capacitance is stated"}
	}
	p := newProbe(c.harness, k.capacitor.A, k.capacitor.B, patient)
	p.state, p.options.SOC = k.state, k.charge
	if k.full {
		p.volts = c.fullVolts
	}
	return &walk{probe: p, farads: k.capacitor.Farads, far: c.reach(), seen: map[string]int{}}, ctx.Err()
}

// begin is the voltage and the memory with which the course begins.
func (w *walk) begin(ctx context.Context, k course) (quantity.Volt, *settle.Point, error) {
	if k.before == nil {
		return 0, nil, nil
	}
	p, err := settled(ctx, w.bare(), k.before, w.options)
	if err != nil {
		return 0, nil, err
	}
	return p.Across(k.capacitor.A, k.capacitor.B), p, nil
}

// drop takes out what the course goes without, and finds where it leads to.
func (w *walk) drop(ctx context.Context, k course) error {
	var gone []settle.Defect
	for _, e := range k.without {
		gone = append(gone, settle.OpenElement(w.variant.own[e]))
	}
	if len(gone) > 0 {
		w.network = w.network.With(gone...)
	}
	o := w.options
	o.OpenCircuit = w.curve
	end, err := w.bare().Settle(ctx, k.state, o)
	if err != nil || end.Outcome != settle.Settled {
		return err
	}
	if ohms, ok := end.Thevenin(k.capacitor.A, k.capacitor.B); ok {
		w.hard = &thevenin{end.Across(k.capacitor.A, k.capacitor.B), ohms}
	}
	return nil
}

// bare is the network without the probe.
func (p *probe) bare() *settle.Network { return p.network.With(settle.OpenElement(p.source)) }

// patient makes fuses and protections that never open, for they do not in the short time
// that a capacitor takes.
func patient(_, own wiring.Element) bool {
	switch e := own.(type) {
	case *wiring.Fuse:
		e.Opens = never
	case *wiring.Source:
		e.Trips = 0
	}
	return true
}

// fullVolts is the voltage of a source at the end of its charge; 0 where only its own
// curve is known.
func (c *Cart) fullVolts(s *wiring.Source) quantity.Volt {
	if s.Volts != 0 {
		return 0
	}
	pack, err := c.tables.Pack(s.Chemistry, s.Cells)
	if err != nil {
		return 0
	}
	return pack.Full()
}

// reach is a voltage that no supplies together come to.
func (c *Cart) reach() float64 {
	sum := 1.0
	c.elements(func(e wiring.Element) {
		switch e := e.(type) {
		case *wiring.Source:
			sum += float64(max(c.fullVolts(e), settle.OpenCircuit(e, 1)))
		case *wiring.Charger:
			sum += float64(e.End)
		case *wiring.Converter:
			sum += float64(e.Volts)
		}
	})
	return sum
}
