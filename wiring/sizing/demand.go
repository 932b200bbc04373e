package sizing

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// small is a resistance that is part of the way, as of a shunt or a motor's field.
const small = quantity.Ohm(0.1)

// demand is what flows on a cart when every consumer and sense is on at once, buttons held, at the
// lowest voltage of its supply, where constant power draws most. No operating point is
// solved: a consumer's current is counted on the shortest way to it and back.
type demand struct {
	tables *handbook.Tables
	graph  *path.Graph
	wires  map[*wiring.Wire]quantity.Ampere
	fuses  map[*wiring.Fuse]quantity.Ampere
	bursts map[*wiring.Fuse][]burst
	before map[*wiring.Wire][]*wiring.Fuse // the first fuses behind wires that no fuse stands before
	circle []circle
}

// circle is one consumer with its way there and back.
type circle struct {
	amps        quantity.Ampere
	volts       quantity.Volt // nominal, of its supply
	critical    bool
	plus        wiring.NodeID
	there, home leg
}

// leg is a way: its wires, and the ohms of what else it passes.
type leg struct {
	wires []*wiring.Wire
	ohms  quantity.Ohm
}

func newLeg(p path.Path) leg {
	l := leg{wires: p.Wires()}
	for _, e := range p.Elements(path.Conducting &^ path.Conductors) {
		l.ohms += ohmsOf(e)
	}
	return l
}

func ohmsOf(e wiring.Element) quantity.Ohm {
	switch e := e.(type) {
	case *wiring.Fuse:
		return e.Ohms
	case *wiring.Switch:
		return e.Ohms
	case *wiring.Contact:
		return e.Ohms
	case *wiring.Driver:
		return e.Ohms
	}
	return 0
}

// burst is what a consumer takes for a time above what it takes for long.
type burst struct {
	above quantity.Ampere
	lasts quantity.Second
}

func newDemand(h *wiring.Harness, t *handbook.Tables) *demand {
	d := &demand{tables: t, graph: path.New(h), wires: map[*wiring.Wire]quantity.Ampere{}, fuses: map[*wiring.Fuse]quantity.Ampere{}, bursts: map[*wiring.Fuse][]burst{}, before: map[*wiring.Wire][]*wiring.Fuse{}}
	supplies := d.graph.Supplies(d.cell)
	for _, s := range supplies {
		if _, charges := s.Element.(*wiring.Charger); charges {
			d.charge(s, supplies)
			continue
		}
		d.feed(s)
	}
	return d
}

// cell looks up the voltages of one cell. The middle of a charge is taken at half.
func (d *demand) cell(chemistry string) (path.Volts, bool) {
	pack, err := d.tables.Pack(chemistry, 1)
	if err != nil {
		return path.Volts{}, false
	}
	return path.Volts{Floor: pack.Floor(), Middle: pack.RestVolts(0.5), Rested: pack.RestedFull(), Full: pack.Full()}, true
}

func conducting() path.Through {
	return path.Through{Sorts: path.Conducting | path.Resistor, Ohms: small}
}

// feed counts the consumers that a battery or a converter feeds.
func (d *demand) feed(s *path.Supply) {
	back := conducting()
	back.Against = true
	minus := d.graph.From(back, s.Minus)
	plus := d.graph.From(conducting().Until(func(n wiring.NodeID) bool { return d.graph.SameCopper(n, s.Minus) }), s.Plus)
	for _, e := range d.graph.Edges() {
		if e.Sort&(path.Consumers|path.Sense) == 0 {
			continue
		}
		for _, ends := range [][2]wiring.NodeID{{e.A, e.B}, {e.B, e.A}} {
			there, ok := plus.To(ends[0])
			home, back := minus.To(ends[1])
			if ok && back && !d.graph.SameCopper(ends[0], s.Minus) {
				d.count(circle{amps: amps(e.Element, s), volts: s.Own.Middle, critical: e.Part().Critical, plus: ends[0]}, bursts(e.Element), there, home)
				break
			}
		}
	}
}

// count puts a consumer's current on its way.
func (d *demand) count(c circle, peaks []wiring.Burst, there, home path.Path) {
	for _, e := range append(there.Elements(path.Fuse), home.Elements(path.Fuse)...) {
		fuse := e.(*wiring.Fuse)
		d.fuses[fuse] += c.amps
		for _, p := range peaks {
			d.bursts[fuse] = append(d.bursts[fuse], burst{p.Amps - c.amps, p.For})
		}
	}
	d.first(there)
	c.there, c.home = newLeg(there), newLeg(home)
	for _, w := range append(there.Wires(), home.Wires()...) {
		d.wires[w] += c.amps
	}
	d.circle = append(d.circle, c)
}

// first notes the first fuse of a way at the wires in front of it.
func (d *demand) first(way path.Path) {
	var wires []*wiring.Wire
	for _, s := range way.Steps {
		if fuse, ok := s.Edge.Element.(*wiring.Fuse); ok {
			for _, w := range wires {
				if !slices.Contains(d.before[w], fuse) {
					d.before[w] = append(d.before[w], fuse)
				}
			}
			return
		}
		if s.Edge.Wire != nil {
			wires = append(wires, s.Edge.Wire)
		}
	}
}

// bursts are what a load takes at switch-on and at its peak, where it says so.
func bursts(e wiring.Element) []wiring.Burst {
	l, ok := e.(*wiring.Load)
	if !ok {
		return nil
	}
	var all []wiring.Burst
	for _, b := range []wiring.Burst{l.Inrush, l.Peak} {
		if b.Amps > 0 {
			all = append(all, b)
		}
	}
	return all
}

// charge counts the current of a charger on its way to the nearest battery.
func (d *demand) charge(s *path.Supply, all []*path.Supply) {
	for _, b := range all {
		if !b.Battery() {
			continue
		}
		there, ok := d.graph.From(conducting(), s.Plus).To(b.Plus)
		home, back := d.graph.From(conducting(), s.Minus).To(b.Minus)
		if ok && back {
			d.count(circle{amps: s.Limit, volts: b.Own.Middle, plus: b.Plus}, nil, there, home)
			return
		}
	}
}

// amps is the most that a consumer takes of a supply for as long as it is on. A converter
// counts with its full output.
func amps(e wiring.Element, s *path.Supply) quantity.Ampere {
	switch e := e.(type) {
	case *wiring.Load:
		return loadAmps(e, s)
	case *wiring.Coil:
		if e.Ohms > 0 {
			return quantity.Ampere(float64(s.Own.Full) / float64(e.Ohms))
		}
	case *wiring.Sense:
		if e.Ohms > 0 {
			return quantity.Ampere(float64(s.Own.Full) / float64(e.Ohms))
		}
	case *wiring.Converter:
		low := max(s.Own.Floor, e.Works.Low)
		if low > 0 && e.Efficiency > 0 {
			return e.Idle + handbook.ConverterInput(e.Volts, e.Amps, e.Efficiency, low)
		}
	}
	return 0
}

func loadAmps(l *wiring.Load, s *path.Supply) quantity.Ampere {
	low := max(s.Own.Floor, l.Works.Low)
	switch {
	case l.Law == wiring.ConstantCurrent:
		return l.Amps
	case l.Law == wiring.Resistive && l.Ohms > 0:
		return quantity.Ampere(float64(s.Own.Full) / float64(l.Ohms))
	case l.Law == wiring.ConstantPower && low > 0:
		return handbook.InputCurrent(l.Watts, low)
	}
	return 0
}
