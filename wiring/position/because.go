package position

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// anyOhms lets current come through any resistor.
var anyOhms = quantity.Ohm(math.Inf(1))

// because explains why something is on: how current comes to it, then, for every contact,
// driver and supply on that way, how current comes to the coil or to the senses that let
// it, and so on down. Each thing is explained once.
func (c *Cart) because(p *settle.Point, e wiring.Element) []Way {
	b := reasons{cart: c, point: p, told: map[wiring.Element]bool{}}
	b.tell(e)
	for len(b.open) > 0 {
		e := b.open[0]
		b.open = b.open[1:]
		b.tell(e)
	}
	if len(b.ways) > 0 {
		b.ways[0].What = ""
	}
	return b.ways
}

// reasons is an explanation in the making.
type reasons struct {
	cart  *Cart
	point *settle.Point
	told  map[wiring.Element]bool
	open  []wiring.Element // still to be told
	ways  []Way
}

func (b *reasons) tell(e wiring.Element) {
	if b.told[e] {
		return
	}
	b.told[e] = true
	w, ok := b.way(e)
	if !ok {
		return
	}
	w.What = e.Base().Ref()
	b.ways = append(b.ways, w)
	b.let(settle.WaitsFor(e))
	for _, half := range []path.Path{w.Feed, w.Back} {
		for _, s := range half.Steps {
			b.closes(s.Edge.Element)
		}
	}
	b.supply(w.Feed.Begin)
}

// way is how current comes to something; to a sense that is true while it sees little, what
// joins its two ends.
func (b *reasons) way(e wiring.Element) (Way, bool) {
	high, low, ok := highAndLow(b.point, e)
	if !ok {
		return Way{}, false
	}
	if s, sense := e.(*wiring.Sense); sense && s.Below != 0 {
		t := path.Through{Sorts: path.Conducting, Setting: path.InState(b.point.State, b.point.Holds)}
		joined, ok := b.cart.Graph.From(t, s.To).To(s.At)
		return Way{Feed: joined, Back: b.cart.path(s.At, nil)}, ok
	}
	if w, ok := b.cart.feed(b.point, e, anyOhms); ok {
		return w, true
	}
	return b.cart.circuit(low, high, flows(b.point, e))
}

// closes asks for the reasons of something that is closed.
func (b *reasons) closes(e wiring.Element) {
	switch e := e.(type) {
	case *wiring.Contact:
		if !e.RestClosed && e.Coil != nil {
			b.open = append(b.open, e.Coil)
		}
	case *wiring.Driver:
		b.let(e.When)
	}
}

// supply asks for the reasons of the converter whose positive a feed begins at.
func (b *reasons) supply(plus wiring.NodeID) {
	for _, s := range b.cart.Supplies {
		if v, ok := s.Element.(*wiring.Converter); ok && s.Plus == plus && b.point.Holds(v) {
			b.open = append(b.open, v)
		}
	}
}

// let asks for the reasons of what a condition needs: of elements that hold, how current
// comes to them. What a condition wants not to hold needs no current.
func (b *reasons) let(c *wiring.Condition) {
	if c == nil || c.Op == wiring.Not {
		return
	}
	if d, ok := c.Element.(*wiring.Driver); ok && c.Op == wiring.Holds && b.point.Holds(d) && !b.told[d] {
		b.told[d] = true
		b.let(d.When)
	} else if c.Op == wiring.Holds && c.Element != nil && b.point.Holds(c.Element) {
		b.open = append(b.open, c.Element)
	}
	for _, of := range c.Of {
		b.let(of)
	}
}
