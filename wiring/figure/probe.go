package figure

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// probeOhms is the resistance behind which a probe holds its voltage, a hundredth of that
// of a good contact. What it drops is known, since the voltage that results is read back.
const probeOhms = 1e-6

// probe holds two nodes of a variant of a harness at a voltage and tells what current
// that takes.
type probe struct {
	variant *variant
	source  *wiring.Source
	network *settle.Network
	state   *wiring.State
	options settle.Options
	volts   func(*wiring.Source) quantity.Volt // of the sources as drawn; nil: their curves
}

// sample is one voltage that a probe held.
type sample struct {
	emf   float64 // what the probe was set to
	volts float64 // of the first node against the second
	amps  float64 // into the probe
	point *settle.Point
	in    *variant
}

// newProbe puts a probe between two nodes of a harness that is changed as [vary] says.
func newProbe(h *wiring.Harness, a, b wiring.NodeID, f change) *probe {
	p := &probe{source: &wiring.Source{A: a, B: b, Ohms: probeOhms}}
	p.source.Name = "probe"
	p.variant = vary(h, f, p.source)
	p.network = settle.Compile(p.variant.harness)
	return p
}

// hold holds a voltage, beginning with the memory of a point; nil: from cold.
func (p *probe) hold(ctx context.Context, emf float64, after *settle.Point) (sample, error) {
	o := p.options
	o.After = after
	o.OpenCircuit = func(s *wiring.Source) quantity.Volt {
		if s == p.source {
			return quantity.Volt(emf)
		}
		return p.curve(s)
	}
	point, err := p.network.Settle(ctx, p.state, o)
	if err != nil {
		return sample{}, err
	}
	return sample{
		emf:   emf,
		volts: float64(point.Across(p.source.A, p.source.B)),
		amps:  float64(point.ElementAmps(p.source)),
		point: point,
		in:    p.variant,
	}, nil
}

// exactly is hold but for what the probe's own microhm drops, which is made up for.
func (p *probe) exactly(ctx context.Context, volts float64, after *settle.Point) (sample, error) {
	s, err := p.hold(ctx, volts, after)
	if err != nil || !s.settled() {
		return s, err
	}
	return p.hold(ctx, volts-(s.volts-volts), after)
}

// curve is the voltage of a source that stands for one as drawn; 0 for its own curve.
func (p *probe) curve(own *wiring.Source) quantity.Volt {
	if drawn, ok := p.variant.drawn[own].(*wiring.Source); ok && p.volts != nil {
		return p.volts(drawn)
	}
	return 0
}

// settled reports whether the network came to rest around the probe.
func (s sample) settled() bool { return s.point.Outcome == settle.Settled }

// through is the current of an element as drawn.
func (s sample) through(drawn wiring.Element) float64 {
	return float64(s.point.ElementAmps(s.in.own[drawn]))
}
