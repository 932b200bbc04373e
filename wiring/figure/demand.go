package figure

import (
	"context"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// demand is a state of a cart whose supplies give whatever is asked of them: no current
// limit, no fuse and no protection stands in the way, so that each consumer shows what it
// wants.
type demand struct {
	cart    *Cart
	state   *wiring.State
	variant *variant
	point   *settle.Point
	pressed *settle.Point // the same with every button let go
}

// buttonControl is the name of controls that a hand holds and that return by themselves.
const buttonControl = "button"

func (c *Cart) demand(ctx context.Context, s *wiring.State, charge quantity.Ratio) (*demand, error) {
	d := &demand{cart: c, state: s, variant: vary(c.harness, unlimited)}
	n := settle.Compile(d.variant.harness)
	var err error
	if d.point, err = settled(ctx, n, s, settle.Options{SOC: charge}); err != nil {
		return nil, err
	}
	d.pressed, err = settled(ctx, n, letGo(c.harness, s), settle.Options{SOC: charge})
	return d, err
}

// unlimited takes the limits off.
func unlimited(_, own wiring.Element) bool {
	switch e := own.(type) {
	case *wiring.Converter:
		e.Amps = 0
	case *wiring.Fuse:
		e.Opens = never
	case *wiring.Source:
		e.Trips = 0
	}
	return true
}

// letGo is a state with every button at rest.
func letGo(h *wiring.Harness, s *wiring.State) *wiring.State {
	off := *s
	off.Set = make(map[*wiring.Control]string, len(s.Set))
	for control, position := range s.Set {
		if control.Name != buttonControl {
			off.Set[control] = position
		}
	}
	return &off
}

// holds reports how an element as drawn stands.
func (d *demand) holds(drawn wiring.Element) bool { return d.point.Holds(d.variant.own[drawn]) }

// amps is the current of an element as drawn: of a converter, what it takes.
func (d *demand) amps(drawn wiring.Element) float64 { return taken(d.point, d.variant.own[drawn]) }

// taken is the magnitude of what a consumer takes.
func taken(p *settle.Point, e wiring.Element) float64 {
	if _, ok := e.(*wiring.Converter); ok {
		return math.Abs(float64(p.InputAmps(e)))
	}
	return math.Abs(float64(p.ElementAmps(e)))
}

// Duty is for how long a consumer takes its current.
type Duty uint8

// The duties.
const (
	Continuous   Duty = iota + 1 // for as long as it is on
	Intermittent                 // a share of the time
	Momentary                    // while a button is held
)

// String is the duty in a word.
func (d Duty) String() string {
	switch d {
	case Continuous:
		return "continuous"
	case Intermittent:
		return "intermittent"
	case Momentary:
		return "momentary"
	}
	return "not known"
}

// Consumer is what one consumer takes.
type Consumer struct {
	Element wiring.Element // a load, a coil, or a converter
	Amps    quantity.Ampere
	Duty    Duty
	Share   quantity.Ratio // of the time
}

// consumers lists what hangs on a positive, in the order of parts, and takes current.
func (d *demand) consumers(plus, minus wiring.NodeID) []Consumer {
	g := d.cart.graph
	reach := g.From(path.Through{
		Sorts:   path.Conducting | path.Resistor,
		Setting: path.InState(d.state, d.holds),
		Stop:    func(n wiring.NodeID) bool { return g.SameCopper(n, minus) },
	}, plus)
	var all []Consumer
	d.cart.elements(func(e wiring.Element) {
		n, ok := fed(e, func(n wiring.NodeID) bool { return reach.Has(n) && !g.SameCopper(n, minus) })
		if amps := d.amps(e); ok && amps >= negligible {
			way, _ := reach.To(n)
			all = append(all, d.consumer(e, amps, way))
		}
	})
	return all
}

// fed returns the end of a consumer that is on a positive.
func fed(e wiring.Element, on func(wiring.NodeID) bool) (wiring.NodeID, bool) {
	a, b := wiring.NoNode, wiring.NoNode
	switch e := e.(type) {
	case *wiring.Load:
		a, b = e.A, e.B
	case *wiring.Coil:
		a, b = e.A, e.B
	case *wiring.Converter:
		a, b = e.InA, e.InB
	}
	if a != wiring.NoNode && on(a) {
		return a, true
	}
	return b, b != wiring.NoNode && on(b)
}

// half is how far a consumer's current must fall, when the buttons are let go, to count as
// held by one.
const half = 0.5

func (d *demand) consumer(e wiring.Element, amps float64, way path.Path) Consumer {
	k := Consumer{Element: e, Amps: quantity.Ampere(amps), Duty: Continuous, Share: 1}
	if load, ok := e.(*wiring.Load); ok && load.Duty > 0 {
		k.Share = min(load.Duty, 1)
	}
	for _, x := range way.Elements(path.Driver) {
		if driver := x.(*wiring.Driver); driver.Duty > 0 {
			k.Share *= min(driver.Duty, 1)
		}
	}
	switch {
	case taken(d.pressed, d.variant.own[e]) < half*amps:
		k.Duty = Momentary
	case k.Share < 1:
		k.Duty = Intermittent
	}
	return k
}
