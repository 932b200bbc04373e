package settle

import "slices"

// blame finds which supplies a search that came back went to and fro with: those whose
// outputs it moved, else those that limit now.
func (s *solving) blame(moved []int32) {
	s.overload = s.overload[:0]
	for _, bend := range moved {
		s.accuse(bend)
	}
	if len(s.overload) > 0 {
		return
	}
	for bend := range s.piece {
		if s.inUse[bend] && s.piece[bend] == limiting {
			s.accuse(int32(bend))
		}
	}
}

func (s *solving) accuse(bend int32) {
	b := s.network.bendings[bend]
	if !isOutput(b.bend) {
		return
	}
	if id := b.model.itself().id; !slices.Contains(s.overload, id) {
		s.overload = append(s.overload, id)
	}
}

// fed returns the nets that the positive of a supply reaches through what is closed,
// without passing through a consumer, another supply or a resistance.
func (s *solving) fed(g delivering) map[int32]bool {
	n := s.network
	ways := map[int32][]int32{}
	for _, m := range n.models {
		switch m.(type) {
		case *fuse, *switched, *contact, *driver, *diode:
			u := m.itself()
			for i := u.first; i < u.first+u.count; i++ {
				if s.laws[i].conducts() {
					a, b := n.net[n.branches[i].a], n.net[n.branches[i].b]
					ways[a] = append(ways[a], b)
					ways[b] = append(ways[b], a)
				}
			}
		}
	}
	from := n.net[n.branches[g.output()].a]
	reached := map[int32]bool{from: true}
	for queue := []int32{from}; len(queue) > 0; queue = queue[1:] {
		for _, next := range ways[queue[0]] {
			if !reached[next] {
				reached[next] = true
				queue = append(queue, next)
			}
		}
	}
	return reached
}

// hold makes resistors of the consumers with an end in these nets.
func (s *solving) hold(nets map[int32]bool) {
	n := s.network
	for i, b := range n.bendings {
		ends := n.branches[b.branch]
		if isConsumer(b.bend) && (nets[n.net[ends.a]] || nets[n.net[ends.b]]) {
			s.held[i] = true
		}
	}
}

func (s *solving) holdAll() {
	for i, b := range s.network.bendings {
		if isConsumer(b.bend) {
			s.held[i] = true
		}
	}
}

// overloaded lists the supplies, by model, that hold their current while what they feed is
// pulled below its working band.
func (s *solving) overloaded() []int32 {
	var ids []int32
	for i, b := range s.network.bendings {
		if !s.inUse[i] || !isOutput(b.bend) || s.piece[i] != limiting {
			continue
		}
		if s.starves(s.fed(b.model.(delivering))) {
			ids = append(ids, b.model.itself().id)
		}
	}
	return ids
}

// starves reports whether a consumer with an end in these nets has some voltage, and less
// than it works with.
func (s *solving) starves(nets map[int32]bool) bool {
	n := s.network
	for i, b := range n.bendings {
		consumer, ok := b.bend.(band)
		if !ok || !s.inUse[i] || s.piece[i] != lower || consumer.ohms > 0 || !s.laws[b.branch].conducts() {
			continue
		}
		ends := n.branches[b.branch]
		v := max(s.volts[b.branch], -s.volts[b.branch])
		if (nets[n.net[ends.a]] || nets[n.net[ends.b]]) && v > dead*consumer.low && v < consumer.low {
			return true
		}
	}
	return false
}

// dead is the share of its low end below which a consumer is dead rather than starved.
const dead = 1e-6
