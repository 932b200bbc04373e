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
	if _, output := b.bend.(regulator); !output {
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
		if _, consumer := b.bend.(band); consumer && (nets[n.net[ends.a]] || nets[n.net[ends.b]]) {
			s.held[i] = true
		}
	}
}

func (s *solving) holdAll() {
	for i, b := range s.network.bendings {
		if _, consumer := b.bend.(band); consumer {
			s.held[i] = true
		}
	}
}
