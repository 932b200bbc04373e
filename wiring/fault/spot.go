package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/path"
)

// Spot is somewhere to hold the red probe.
type Spot struct {
	Name     string // "K1.out"
	Terminal *wiring.Terminal
	Node     wiring.NodeID
	Black    wiring.NodeID // where the black probe sits
	Stated   bool          // a test point of the job: easily reached
}

// Spots lists the places to measure: the job's test points first, in its order, then every
// other terminal that a wire lands on. Ports are not measured at.
func (c *Cart) Spots() []Spot { return c.spots }

func (c *Cart) findSpots() []Spot {
	var all []Spot
	have := map[*wiring.Terminal]bool{}
	add := func(t *wiring.Terminal, stated bool) {
		if t.Node != wiring.NoNode && !have[t] && c.black[t.Node] != wiring.NoNode {
			have[t] = true
			all = append(all, Spot{Name: t.Ref(), Terminal: t, Node: t.Node, Black: c.black[t.Node], Stated: stated})
		}
	}
	for _, t := range c.Harness.TestPoints {
		add(t, true)
	}
	for _, p := range c.Harness.Parts {
		for _, t := range p.Terminals {
			if len(t.Wires) > 0 {
				add(t, false)
			}
		}
	}
	return all
}

// probes finds for every node where the black probe sits: on the negative of the battery,
// or, on a side that nothing joins to it, on that of the supply of that side. It does not
// depend on the state, so that readings of different states can be compared.
func (c *Cart) probes(supplies []*path.Supply) []wiring.NodeID {
	black := make([]wiring.NodeID, len(c.Harness.Nodes))
	for n := range black {
		black[n] = wiring.NoNode
	}
	from := func(bottom wiring.NodeID) {
		if bottom == wiring.NoNode || black[bottom] != wiring.NoNode {
			return
		}
		for _, n := range c.Graph.From(path.Through{Sorts: ^path.Sort(0)}, bottom).Nodes() {
			if black[n] == wiring.NoNode {
				black[n] = bottom
			}
		}
	}
	from(c.ground)
	for _, s := range supplies {
		from(s.Bottom)
	}
	return black
}

// mainCoils lists the coils of contacts without which nothing that moves the cart is fed.
func mainCoils(h *wiring.Harness) []*wiring.Coil {
	var all []*wiring.Coil
	for _, m := range meter.New(h).Mains() {
		all = append(all, m.Coil)
	}
	return all
}

// Fed is a converter, and the parts of others that it feeds as far as copper, fuses and
// switches go.
type Fed struct {
	Converter *wiring.Converter
	Parts     map[*wiring.Part]bool
}

// Fed lists the converters that feed other parts, in the order of parts.
func (c *Cart) Fed() []Fed { return c.fed }

func (c *Cart) findFed() []Fed {
	var all []Fed
	for _, e := range elements[*wiring.Converter](c.Harness) {
		f := Fed{Converter: e, Parts: map[*wiring.Part]bool{}}
		for _, n := range c.Graph.From(path.Through{Sorts: path.Metal}, e.OutA).Nodes() {
			if part := c.Harness.Nodes[n].Part; part != nil && part != e.Part {
				f.Parts[part] = true
			}
		}
		if len(f.Parts) > 0 {
			all = append(all, f)
		}
	}
	return all
}
