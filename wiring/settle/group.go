package settle

// group finds what branches that conduct hold together, and fixes the voltage of one bus
// in each such group: the reference, else the negative of a supply, else any.
func (s *solving) group() {
	if !s.regroup {
		return
	}
	s.regroup = false
	n := s.network
	s.joined.reset()
	for i := len(n.wireLaws); i < len(n.branches); i++ {
		if s.laws[i].conducts() {
			s.joined.join(n.net[n.branches[i].a], n.net[n.branches[i].b])
		}
	}
	for i := range s.ground {
		s.ground[i] = -1
	}
	clear(s.fixed)
	if n.reference >= 0 {
		s.fix(n.reference)
	}
	for _, g := range n.supplies {
		if g.supplying(s) {
			s.fix(n.branches[g.output()].b)
		}
	}
	for bus := range n.buses {
		s.fix(bus)
	}
}

// fix counts the voltages of a bus's group from that bus, unless they have a ground.
func (s *solving) fix(bus int32) {
	root := s.root(bus)
	if s.ground[root] < 0 {
		s.ground[root] = bus
		s.fixed[bus] = true
	}
}

// root names the group of a bus.
func (s *solving) root(bus int32) int32 { return s.joined.find(s.network.net[bus]) }

// closed reports whether a branch's two ends are held together, so that there is a way
// back for any current through it.
func (s *solving) closed(b branch) bool { return s.root(b.a) == s.root(b.b) }

// unstrand moves each bend whose constant current has no way back to a piece that needs
// none, until there is none. A load behind an open switch thus becomes a resistor, and
// its far end takes the voltage of the near one, as on a cart. Consumers give way before
// supplies do.
func (s *solving) unstrand() {
	for s.unstrandAll(isConsumer) || s.unstrandAll(isOutput) {
	}
}

// unstrandAll moves the stranded bends of a sort and reports whether there were any.
func (s *solving) unstrandAll(sort func(bend) bool) bool {
	s.group()
	any := false
	for i := range s.network.bendings {
		b := &s.network.bendings[i]
		if !s.inUse[i] || !sort(b.bend) || !s.laws[b.branch].demands() || s.closed(s.network.branches[b.branch]) {
			continue
		}
		if to := b.stranded(s.piece[i]); to != s.piece[i] {
			s.move(int32(i), to)
			any = true
		}
	}
	return any
}
