package fault

import "github.com/lugwright/lugwright/wiring"

func wrongTerminal() *Mode {
	return &Mode{
		ID: "wrong-terminal", Title: "on the neighbouring terminal", Class: Rare, Assembly: true,
		Why: "two like terminals side by side, in bad light",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, w := range c.single() {
				for i, e := range w.Ends() {
					for _, t := range c.neighbours(e.Terminal) {
						l := landed(w)
						*l.end(i) = t.Node
						all = append(all, c.relanded(w.Name()+" on "+t.Ref()+" instead of "+e.Terminal.Ref(), t.Part, l))
					}
				}
			}
			return all
		},
	}
}

// landing is a wire with the nodes that its ends are on.
type landing struct {
	wire     *wiring.Wire
	from, to wiring.NodeID
}

// landed is a wire where it is drawn.
func landed(w *wiring.Wire) landing {
	return landing{wire: w, from: w.From.Terminal.Node, to: w.To.Terminal.Node}
}

func (l *landing) end(i int) *wiring.NodeID {
	if i == 0 {
		return &l.from
	}
	return &l.to
}

// neighbours lists the terminals beside one on its device, that take the same lug and are
// not joined to it by copper: landing there would change nothing.
func (c *Cart) neighbours(t *wiring.Terminal) []*wiring.Terminal {
	like := c.row(t)
	var all []*wiring.Terminal
	for i, o := range like {
		if o != t {
			continue
		}
		for _, j := range []int{i - 1, i + 1} {
			if j >= 0 && j < len(like) && !c.Graph.SameCopper(t.Node, like[j].Node) {
				all = append(all, like[j])
			}
		}
	}
	return all
}

// row lists the terminals of a device that take the lug of one of them, in the order in
// which they sit there. A lead is no terminal to land on by mistake.
func (c *Cart) row(t *wiring.Terminal) []*wiring.Terminal {
	if t.Form.Type == wiring.Lead || t.Form.Type == wiring.Port {
		return nil
	}
	var like []*wiring.Terminal
	for _, o := range t.Part.Terminals {
		if o.Form.Type == t.Form.Type && o.Node != wiring.NoNode {
			like = append(like, o)
		}
	}
	return like
}

func swapped() *Mode {
	return &Mode{
		ID: "swapped", Title: "two wires swapped", Class: Rare, Assembly: true,
		Why: "two wires taken off together and put back crosswise",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, p := range c.Harness.Parts {
				if _, ok := c.twoPoles(p); ok && len(p.Terminals) == 2 {
					continue // that is the wrong way round
				}
				for _, t := range p.Terminals {
					for _, o := range c.neighbours(t) {
						if a, b := c.firstAt(t), c.firstAt(o); wiring.Less(t.Name, o.Name) && a != nil && b != nil && a != b {
							all = append(all, c.swap(a.Name()+" and "+b.Name()+" swapped at "+p.Designation, p, t, o, a, b))
						}
					}
				}
			}
			return all
		},
	}
}

// firstAt is the first single wire on a terminal; nil if there is none.
func (c *Cart) firstAt(t *wiring.Terminal) *wiring.Wire {
	for _, w := range t.Wires {
		if !w.Cord() && len(w.Joins()) == 1 {
			return w
		}
	}
	return nil
}

// swap puts wires of one terminal on another and the other way about.
func (c *Cart) swap(name string, p *wiring.Part, a, b *wiring.Terminal, wires ...*wiring.Wire) Fault {
	var landings []landing
	for _, w := range wires {
		l := landed(w)
		for i, e := range w.Ends() {
			switch e.Terminal {
			case a:
				*l.end(i) = b.Node
			case b:
				*l.end(i) = a.Node
			}
		}
		landings = append(landings, l)
	}
	return c.relanded(name, p, landings...)
}

func wrongWayRound() *Mode {
	return &Mode{
		ID: "wrong-way-round", Title: "wrong way round", Class: Rare, Assembly: true,
		Why: "plus and minus taken for each other: red is not always plus",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, p := range c.Harness.Parts {
				pair, ok := c.twoPoles(p)
				if !ok {
					continue
				}
				var wires []*wiring.Wire
				for _, t := range pair {
					for _, w := range t.Wires {
						if !w.Cord() && len(w.Joins()) == 1 {
							wires = append(wires, w)
						}
					}
				}
				all = append(all, c.swap(p.Designation+" wrong way round", p, pair[0], pair[1], wires...))
			}
			return all
		},
	}
}

// twoPoles finds the two terminals between which everything in a part is that cares which
// way round it is: diode, polarised load or coil, input of a converter, battery, charger.
func (c *Cart) twoPoles(p *wiring.Part) (pair [2]*wiring.Terminal, ok bool) {
	for _, e := range p.Elements {
		a, b, polar := poles(e)
		if !polar {
			continue
		}
		ta, tb := c.terminalAt(p, a), c.terminalAt(p, b)
		if ta == nil || tb == nil || ta == tb {
			continue
		}
		return [2]*wiring.Terminal{ta, tb}, len(ta.Wires) > 0 && len(tb.Wires) > 0
	}
	return pair, false
}

// terminalAt is the terminal of a part that copper joins to a node inside it.
func (c *Cart) terminalAt(p *wiring.Part, n wiring.NodeID) *wiring.Terminal {
	for _, t := range p.Terminals {
		if t.Node != wiring.NoNode && (t.Node == n || c.Graph.SameCopper(t.Node, n)) {
			return t
		}
	}
	return nil
}

// poles are the nodes of an element that minds which way round it is.
func poles(e wiring.Element) (plus, minus wiring.NodeID, polar bool) {
	switch e := e.(type) {
	case *wiring.Diode:
		return e.A, e.B, true
	case *wiring.Load:
		return e.A, e.B, e.Polarised
	case *wiring.Coil:
		return e.A, e.B, e.Polarised
	case *wiring.Converter:
		return e.InA, e.InB, true
	case *wiring.Charger:
		return e.A, e.B, true
	case *wiring.Source:
		return e.A, e.B, true
	}
	return 0, 0, false
}
