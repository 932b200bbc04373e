package fault

import (
	"context"
	"maps"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Cart is a harness made ready for faults. It does not change and may be used by many
// goroutines at once.
type Cart struct {
	Harness *wiring.Harness
	Network *settle.Network // without faults
	Graph   *path.Graph

	ground wiring.NodeID   // the bottom of the battery, or NoNode
	black  []wiring.NodeID // by node: where the black probe sits
	spots  []Spot
	mains  []*wiring.Coil
	fed    []Fed
}

// NewCart makes a harness ready.
func NewCart(h *wiring.Harness) *Cart {
	c := &Cart{Harness: h, Network: settle.Compile(h), Graph: path.New(h), ground: wiring.NoNode}
	supplies := c.Graph.Supplies(func(string) (path.Volts, bool) { return path.Volts{}, false })
	for _, s := range supplies {
		if s.Battery() {
			c.ground = s.Bottom
			break
		}
	}
	c.black = c.probes(supplies)
	c.spots = c.findSpots()
	c.mains = mainCoils(h)
	c.fed = c.findFed()
	return c
}

// Faults lists the faults of some modes. Their names are unique.
func (c *Cart) Faults(modes []*Mode) []Fault {
	var all []Fault
	named := map[string]bool{}
	for _, m := range modes {
		for _, f := range m.Find(c) {
			if named[f.Name] {
				continue // two modes that mean one thing: the first one has it
			}
			named[f.Name] = true
			f.Mode = m
			all = append(all, f)
		}
	}
	return all
}

// Settle settles a state with faults. A control that is stuck stands where it is stuck. The
// error is that of a context that ends.
func (c *Cart) Settle(ctx context.Context, s *wiring.State, faults ...Fault) (*settle.Point, error) {
	return c.with(faults).Settle(ctx, held(s, faults), settle.Options{})
}

// with is the network with faults.
func (c *Cart) with(faults []Fault) *settle.Network {
	var defects []settle.Defect
	for _, f := range faults {
		defects = append(defects, f.Defects...)
	}
	if len(defects) == 0 {
		return c.Network
	}
	return c.Network.With(defects...)
}

// held is a state as the controls stand that do not follow.
func held(s *wiring.State, faults []Fault) *wiring.State {
	stuck := false
	for _, f := range faults {
		stuck = stuck || len(f.Stuck) > 0
	}
	if !stuck {
		return s
	}
	own := *s
	own.Set = maps.Clone(s.Set)
	if own.Set == nil {
		own.Set = map[*wiring.Control]string{}
	}
	for _, f := range faults {
		maps.Copy(own.Set, f.Stuck)
	}
	return &own
}

// relanded is the fault of wires whose ends are elsewhere: each is taken away, and a bridge
// of its resistance stands where it lands now.
func (c *Cart) relanded(name string, part *wiring.Part, landings ...landing) Fault {
	f := Fault{Name: name, Part: part}
	for _, l := range landings {
		f.Wires = append(f.Wires, l.wire)
		f.Defects = append(f.Defects, settle.OpenWire(l.wire), settle.Bridge(l.from, l.to, c.wireOhms(l.wire)))
	}
	return f
}

// strayOhms is the resistance of a wire whose size or length is not stated.
const strayOhms quantity.Ohm = 0.01

// wireOhms is the resistance of a wire, of which a network knows only with a point.
func (c *Cart) wireOhms(w *wiring.Wire) quantity.Ohm {
	if ohms, known := c.Network.WireOhms(w); known {
		return max(ohms, 1e-5)
	}
	return strayOhms
}

// elements lists the elements of a type in the order of parts.
func elements[T wiring.Element](h *wiring.Harness) []T {
	var all []T
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if t, ok := e.(T); ok {
				all = append(all, t)
			}
		}
	}
	return all
}

// each makes a fault of every element of a type for which make returns true.
func each[T wiring.Element](c *Cart, make func(T, *Fault) bool) []Fault {
	var all []Fault
	for _, e := range elements[T](c.Harness) {
		f := Fault{Part: e.Base().Part}
		if make(e, &f) {
			all = append(all, f)
		}
	}
	return all
}

// called is an element as a person calls it: the part, and the element where the part has
// several of its type.
func called(e wiring.Element) string {
	b := e.Base()
	same := 0
	for _, o := range b.Part.Elements {
		if o.Type() == e.Type() {
			same++
		}
	}
	if same == 1 {
		return b.Part.Designation
	}
	return b.Ref()
}

// single lists the wires that are conductors and land at both ends, cords left out.
func (c *Cart) single() []*wiring.Wire {
	return slices.DeleteFunc(slices.Clone(c.Harness.Wires), func(w *wiring.Wire) bool {
		return w.Cord() || len(w.Joins()) != 1
	})
}
