package meter

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Sheet is a cart in one operating state, with a meter at hand.
type Sheet struct {
	State *wiring.State
	Point *settle.Point

	bench *Bench
	feeds []*path.Reach // by supply: the least obstructed ways from its positive
	back  *path.Reach   // closed ways to the bottom of a supply, found from there
	stiff *path.Reach   // what a running supply holds through closed metal alone
	mains *path.Reach   // what is joined to mains that is plugged in
	sleep *path.Reach   // what wires and fuses join to a battery that is off
}

// sheet makes the searches once, so that a sheet never changes afterwards.
func (b *Bench) sheet(p *settle.Point) *Sheet {
	s := &Sheet{State: p.State, Point: p, bench: b}
	var live, off []wiring.NodeID
	for _, supply := range b.supplies {
		s.feeds = append(s.feeds, b.graph.Least(s.anyWay(), s.cost, supply.Plus))
		if p.Holds(supply.Element) {
			live = append(live, supply.Plus)
		} else if supply.Battery() {
			off = append(off, supply.Plus)
		}
	}
	closed := path.Through{Sorts: path.Conducting, Setting: s.closed}
	s.stiff = b.graph.From(closed.Until(b.isReturn), live...)
	s.sleep = b.graph.From(path.Through{Sorts: path.Conductors | path.Fuse}.Until(b.isReturn), off...)
	s.mains = b.graph.From(closed, s.mainsPoles()...)
	var bottoms []wiring.NodeID
	for _, supply := range b.supplies {
		bottoms = append(bottoms, supply.Bottom)
	}
	closed.Against = true
	s.back = b.graph.From(closed, bottoms...)
	return s
}

// mainsPoles lists the poles at which alternating current is present.
func (s *Sheet) mainsPoles() []wiring.NodeID {
	var poles []wiring.NodeID
	for _, p := range s.bench.Harness.Parts {
		for _, e := range p.Elements {
			if m, ok := e.(*wiring.Mains); ok && s.Point.Holds(m) {
				poles = append(poles, m.L, m.N)
			}
		}
	}
	return poles
}

// closed is the setting of the sheet's state.
func (s *Sheet) closed(e *path.Edge) bool {
	return path.InState(s.State, s.Point.Holds)(e)
}

// What it costs a way to pass an edge. A way through few open things is nearer to what the
// designer meant than a short one through many, one through metal nearer than one through a
// resistor, and that nearer than one through a consumer.
const (
	costMetal    = 1
	costResistor = 1e3
	costConsumer = 1e5
	costOpen     = 1e9
	costCharger  = 1e8 // a battery is rather meant to feed a thing than a charger that is off
)

// anyWay passes all that can bring voltage to a terminal, open or closed, but never goes on
// from the bottom of a supply.
func (s *Sheet) anyWay() path.Through {
	sorts := path.Conducting | path.Resistor | path.Coil | path.Load
	return path.Through{Sorts: sorts}.Until(s.bench.isReturn)
}

func (s *Sheet) cost(e *path.Edge) float64 {
	switch {
	case s.open(e):
		return costOpen
	case e.Sort == path.Resistor:
		return costResistor
	case e.Sort&path.Consumers != 0:
		return costConsumer
	}
	return costMetal
}

// open reports whether an edge carries nothing in this state.
func (s *Sheet) open(e *path.Edge) bool {
	switch e.Sort {
	case path.Switch, path.Contact, path.Driver:
		return !s.closed(e)
	case path.Fuse:
		return !s.Point.Holds(e.Element)
	}
	return false
}
