package meter

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Break is the first thing on a way, from its beginning, that carries nothing.
type Break struct {
	// Element is the open switch, contact, driver or fuse, or the supply that gives nothing.
	Element wiring.Element
	Supply  bool          // it is a supply
	Before  wiring.NodeID // the side that the way comes from; of a supply its positive
	After   wiring.NodeID // the other side; of a supply its positive
	Reads   Reading       // at Before

	Control *wiring.Control // of a hand switch
	Stands  string          // its position
	Needs   []string        // the positions that close it
	Wants   []Want          // what a contact, driver or supply waits for
}

// Want is one condition that is not as something needs it.
type Want struct {
	Name string        // "U1.interlock", "S1.key"; of a coil the element
	Must bool          // it ought to hold, the control to stand at Needs; else it ought not
	Sees quantity.Volt // what an element that watches a voltage sees
	Threshold
	At      wiring.NodeID   // where it watches; NoNode for what does not
	Element wiring.Element  // nil for a control
	Control *wiring.Control // nil for an element
	Stands  string          // Control: its position
	Needs   string          // Control: the position that is needed, or to be left
	Break   *Break          // where the way to At is cut; nil: it is not
	Return  *Break          // of a coil: where the way back from it is cut; nil: it is not
}

// Threshold is the voltage from which, or up to which, something acts; both 0: it does not
// watch a voltage.
type Threshold struct{ Above, Below quantity.Volt }

// firstOpen is the index of the first step of a way that carries nothing, -1 if none.
func (s *Sheet) firstOpen(way path.Path) int {
	for i, step := range way.Steps {
		if s.open(step.Edge) {
			return i
		}
	}
	return -1
}

// told is the elements that an explanation has explained: each is explained once, so that
// one that waits for itself ends, and nothing is said twice.
type told map[wiring.Element]bool

// cut is where a way from a supply is cut; nil if it is not.
func (s *Sheet) cut(way path.Path, supply *path.Supply, done told) *Break {
	if !s.Point.Holds(supply.Element) {
		b := &Break{Element: supply.Element, Supply: true, Before: supply.Plus, After: supply.Plus, Reads: s.ReadAt(supply.Plus)}
		b.Wants = s.wants(supply.Element, done)
		return b
	}
	i := s.firstOpen(way)
	if i < 0 {
		return nil
	}
	return s.openStep(way.Steps[i], done)
}

func (s *Sheet) openStep(step path.Step, done told) *Break {
	e := step.Edge
	b := &Break{Element: e.Element, Before: step.From, After: step.To, Reads: s.ReadAt(step.From)}
	if c := e.Control(); c != nil {
		b.Control, b.Stands = c, s.Point.Position(c)
		for _, position := range c.Positions {
			if e.ClosedIn(position) {
				b.Needs = append(b.Needs, position)
			}
		}
		return b
	}
	if contact, ok := e.Element.(*wiring.Contact); ok {
		if contact.Coil != nil && !contact.RestClosed {
			b.Wants = s.wants(contact.Coil, done)
		}
		return b
	}
	b.Wants = s.wants(e.Element, done)
	return b
}

// wants lists what keeps an element from holding, with the cause of each.
func (s *Sheet) wants(e wiring.Element, done told) []Want {
	if done[e] {
		return nil
	}
	done[e] = true
	if c, ok := e.(*wiring.Coil); ok {
		return s.coilWants(c, done)
	}
	var all []Want
	for _, u := range s.Point.Waits(e) {
		all = append(all, s.want(u, done)...)
	}
	if c, ok := e.(*wiring.Converter); ok && all == nil {
		all = append(all, s.watching(Want{Name: c.Ref(), Must: true, Element: c, At: c.InA,
			Sees: s.Point.ElementVolts(c), Threshold: Threshold{Above: max(c.Works.Low, c.Starts)}}, done))
	}
	return all
}

// want turns one unmet leaf into what it is waiting for. A driver or coil that something
// waits for stands for what it waits for itself.
func (s *Sheet) want(u settle.Unmet, done told) []Want {
	w := Want{Name: u.Name, Must: u.Want, Element: u.Element, Control: u.Control, Needs: u.Needs, Sees: u.Volts, At: wiring.NoNode}
	switch e := u.Element.(type) {
	case *wiring.Sense:
		if e.AC {
			return []Want{w}
		}
		w.At, w.Threshold = e.At, Threshold{Above: e.Above, Below: e.Below}
		return []Want{s.watching(w, done)}
	case *wiring.Driver, *wiring.Coil, *wiring.Converter, *wiring.Charger:
		if u.Want {
			if deeper := s.wants(e, done); len(deeper) > 0 {
				return deeper
			}
		}
	}
	if u.Control != nil {
		w.Stands = s.Point.Position(u.Control)
	}
	return []Want{w}
}

// watching adds where the way to a watched node is cut. What ought not to see a voltage, or
// acts on a low one, is not helped by a feed.
func (s *Sheet) watching(w Want, done told) Want {
	if !w.Must || w.Above == 0 {
		return w
	}
	if way, supply, ok := s.wayAround(w.At, done); ok {
		w.Break = s.cut(way, supply, done)
	}
	return w
}

// wayAround is the way by which a node is meant to be fed while the coils that are being
// explained have not pulled in: a capacitor is charged past a contact before it closes, so
// the contact is no reason for its own coil to wait.
func (s *Sheet) wayAround(n wiring.NodeID, done told) (path.Path, *path.Supply, bool) {
	way, supply, ok := s.way(n)
	waiting := func(e *path.Edge) bool {
		c, is := e.Element.(*wiring.Contact)
		return is && s.open(e) && done[c.Coil]
	}
	if i := s.firstOpen(way); i < 0 || !waiting(way.Steps[i].Edge) {
		return way, supply, ok
	}
	around := s.anyWay().Only(func(e *path.Edge) bool { return !waiting(e) })
	reach := s.bench.graph.Least(around, s.cost, supply.Plus)
	if other, found := reach.To(n); found && !other.Passes(path.Coil|path.Load) {
		way = other
	}
	return way, supply, ok
}

// coilWants says on which side of a coil the way is cut, followed by what the driver on its
// return waits for.
func (s *Sheet) coilWants(c *wiring.Coil, done told) []Want {
	w := Want{Name: c.Ref(), Must: true, Element: c, At: c.A, Sees: s.Point.ElementVolts(c), Threshold: Threshold{Above: c.PullIn}}
	w = s.watching(w, done)
	w.Return = s.cutReturn(c.B, done)
	return []Want{w}
}

// cutReturn is where the way from a node back to a supply is cut; nil if it is not, or there
// is no such way.
func (s *Sheet) cutReturn(n wiring.NodeID, done told) *Break {
	if s.back.Has(n) {
		return nil
	}
	t := path.Through{Sorts: path.Conducting}.Until(s.bench.isReturn)
	reach := s.bench.graph.Least(t, s.cost, n)
	end, ok := reach.First(s.bench.isReturn)
	if !ok {
		return nil
	}
	way, _ := reach.To(end)
	if i := s.firstOpen(way); i >= 0 {
		return s.openStep(way.Steps[i], done)
	}
	return nil
}
