package position

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Joining is what counts as joining two nodes: a way through edges of some sorts, of which
// the resistors add up to no more than a limit. A fuse counts as whole.
type Joining struct {
	Sorts path.Sort
	Most  quantity.Ohm
	Ends  func(wiring.NodeID) bool // nodes that a way may reach and not go on from; nil: none
}

// Pair is two nodes that should stay apart. Where diodes matter, current goes From, To.
type Pair struct{ From, To wiring.NodeID }

// Way is the way of least resistance that joins a pair, if one does, with switches,
// contacts and drivers as closed says. A nil closed closes them all.
func (j Joining) Way(c *Cart, pair Pair, closed path.Setting) (way path.Path, ohms quantity.Ohm, ok bool) {
	t := path.Through{Sorts: j.Sorts, Ohms: j.Most, Setting: closed, Stop: j.Ends}
	reach := c.Graph.Least(t, resistorOhms, pair.From)
	ohms = quantity.Ohm(reach.Cost(pair.To))
	if ohms > j.Most {
		return path.Path{}, 0, false
	}
	way, ok = reach.To(pair.To)
	return way, ohms, ok
}

func resistorOhms(e *path.Edge) float64 {
	if r, ok := e.Element.(*wiring.Resistor); ok {
		return float64(r.Ohms)
	}
	return 0
}

// ever says which edges a way between a pair could ever take.
func (j Joining) ever(pair Pair) func(*path.Edge) bool {
	ends := func(n wiring.NodeID) bool { return j.Ends != nil && n != pair.From && n != pair.To && j.Ends(n) }
	return func(e *path.Edge) bool {
		return e.Sort&j.Sorts != 0 && resistorOhms(e) <= float64(j.Most) && !ends(e.A) && !ends(e.B)
	}
}

// moving is what coils and senses move, and so everything.
const moving = path.Contact | path.Driver

// Independent replaces a space by smaller ones that join one of the pairs if and only if
// the space does, as the package comment proves. None: nothing can join them.
func (c *Cart) Independent(j Joining, pairs []Pair, s *Space) []*Space {
	var spaces []*Space
	for _, pair := range pairs {
		if c.Graph.SameCopper(pair.From, pair.To) {
			spaces = append(spaces, s.Only(nil))
			continue
		}
		for _, component := range between(c.Graph, j.ever(pair), pair.From, pair.To) {
			controls, moves := movedBy(component)
			if moves {
				return []*Space{s}
			}
			spaces = append(spaces, s.Only(controls))
		}
	}
	return largest(spaces)
}

// movedBy lists the controls of the switches among edges, and says whether there is
// anything else among them that opens and closes.
func movedBy(edges []*path.Edge) (controls []*wiring.Control, moves bool) {
	for _, e := range edges {
		if e.Sort&moving != 0 {
			return nil, true
		}
		if control := e.Control(); control != nil && !slices.Contains(controls, control) {
			controls = append(controls, control)
		}
	}
	return controls, false
}

// largest leaves out the spaces that lie inside of others.
func largest(spaces []*Space) []*Space {
	var kept []*Space
	for i, s := range spaces {
		covers := func(k int, o *Space) bool { return k != i && s.inside(o) && (k < i || !o.inside(s)) }
		covered := false
		for k, o := range spaces {
			covered = covered || covers(k, o)
		}
		if !covered {
			kept = append(kept, s)
		}
	}
	return kept
}

// at is the setting of a point: closed is what is closed in it, and what opens and closes
// without end.
func at(p *settle.Point) path.Setting {
	return path.InState(p.State, func(e wiring.Element) bool { return p.Holds(e) || alternates(p, e) })
}

// alternates reports whether a contact or a driver takes part in a cycle.
func alternates(p *settle.Point, e wiring.Element) bool {
	if contact, ok := e.(*wiring.Contact); ok && contact.Coil != nil {
		e = contact.Coil
	}
	return slices.Contains(p.Cycle, e)
}

// mightBe is the setting of a position before it is settled: every contact and every
// driver closed.
func mightBe(s *wiring.State) path.Setting {
	return path.InState(s, func(wiring.Element) bool { return true })
}
