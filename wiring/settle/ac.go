package settle

// acWay is a branch through which alternating current can go: a wire, or a fuse, switch
// or contact, which model says whether it is closed.
type acWay struct {
	a, b   int32 // buses
	branch int32
}

// alternating says where alternating current is present.
type alternating struct {
	joined disjoint // buses that closed ways join
	live   [][2]int32
}

// findAC lists the ways that alternating current can take: those that could ever be joined
// to a mains. A cart without mains has none.
func (c *compiler) findAC() {
	if len(c.mains) == 0 {
		return
	}
	ways := c.allWays()
	joined := newDisjoint(int(c.buses))
	for _, w := range ways {
		joined.join(w.a, w.b)
	}
	poles := map[int32]bool{}
	for _, m := range c.mains {
		poles[joined.find(m.l)], poles[joined.find(m.n)] = true, true
	}
	for _, w := range ways {
		if poles[joined.find(w.a)] {
			c.acWays = append(c.acWays, w)
		}
	}
}

// allWays lists wires, bridges, fuses, switches and contacts, open or closed.
func (c *compiler) allWays() []acWay {
	var ways []acWay
	add := func(i int32) {
		b := c.branches[i]
		ways = append(ways, acWay{b.a, b.b, i})
	}
	for i := range c.wireLaws {
		add(int32(i))
	}
	for _, m := range c.models {
		switch m.(type) {
		case *fuse, *switched, *contact:
			u := m.itself()
			for i := range u.count {
				add(u.first + i)
			}
		}
	}
	for i := len(c.branches) - len(c.bridges); i < len(c.branches); i++ {
		add(int32(i))
	}
	return ways
}

// find sets where alternating current is, with the laws as they are.
func (a *alternating) find(s *solving) {
	a.live = a.live[:0]
	n := s.network
	for _, m := range n.mains {
		if m.holds(s) {
			a.live = append(a.live, [2]int32{m.l, m.n})
		}
	}
	if len(a.live) == 0 {
		return
	}
	if a.joined == nil {
		a.joined = newDisjoint(int(n.buses))
	}
	a.joined.reset()
	for _, way := range n.acWays {
		if s.laws[way.branch].conducts() {
			a.joined.join(way.a, way.b)
		}
	}
}

// present reports whether two buses are joined each to a different pole of one live mains.
// A mains whose poles are joined to each other is a short and feeds nothing.
func (a *alternating) present(x, y int32) bool {
	for _, poles := range a.live {
		l, n := a.joined.find(poles[0]), a.joined.find(poles[1])
		p, q := a.joined.find(x), a.joined.find(y)
		if l != n && (p == l && q == n || p == n && q == l) {
			return true
		}
	}
	return false
}
