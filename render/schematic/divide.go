package schematic

import "sort"

// mostWires is how many wires a cluster may have before it is divided: about as many as an
// A4 shows in 2.5 mm lettering beside the references to other sheets.
const mostWires = 48

// divide gives the parts of a cluster that is too large for a sheet clusters of their own:
// circuits that meet on rails alone can stand on different sheets. It returns how many
// clusters there are then.
func (c *circuit) divide(clusters int) int {
	c.parent = make([]int, clusters)
	for k := range c.parent {
		c.parent[k] = k
	}
	for k := range clusters {
		total := c.weigh(k)
		if total <= mostWires {
			continue
		}
		sheets := (total + mostWires - 1) / mostWires
		c.share(k, c.islands(k), total/sheets+1)
	}
	return len(c.parent)
}

// islands lists what of a cluster hangs together without its rails, in the order of the
// channels of a fuse block, then of the harness.
func (c *circuit) islands(cluster int) [][]spot {
	var all [][]spot
	seen := map[spot]bool{}
	for _, s := range c.spots() {
		if s.cluster() != cluster || seen[s] || c.isCommon(s) {
			continue
		}
		var island []spot
		queue := []spot{s}
		seen[s] = true
		for len(queue) > 0 {
			at := queue[0]
			queue = queue[1:]
			island = append(island, at)
			for _, l := range at.lines() {
				o := l.other(at.device, at.bar).spot()
				if (o.device != nil || o.bar != nil) && o.cluster() == cluster && !seen[o] && !c.isCommon(o) {
					seen[o] = true
					queue = append(queue, o)
				}
			}
		}
		all = append(all, island)
	}
	sort.SliceStable(all, func(i, j int) bool { return channelOf(all[i]) < channelOf(all[j]) })
	return all
}

// isCommon reports whether something is a rail that several sheets may show.
func (c *circuit) isCommon(s spot) bool {
	return s.bar != nil && (s.common() || s.bar.thick)
}

func (s spot) lines() []*line {
	if s.device != nil {
		return s.device.lines
	}
	return s.bar.lines
}

// channelOf is the lowest channel of a fuse block in an island, or a number above all.
func channelOf(island []spot) int {
	least := 1 << 30
	for _, s := range island {
		if s.device != nil && s.device.channel > 0 {
			least = min(least, s.device.channel)
		}
	}
	return least
}

// share fills clusters with islands, one after the other, up to about a weight; the first
// of them stays what it was.
func (c *circuit) share(cluster int, islands [][]spot, most int) {
	into, filled := cluster, 0
	for _, island := range islands {
		n := 0
		for _, s := range island {
			n += len(s.lines())
		}
		n = (n + 1) / 2
		if filled > 0 && filled+n > most {
			into, filled = len(c.parent), 0
			c.parent = append(c.parent, cluster)
		}
		filled += n
		for _, s := range island {
			s.setCluster(into)
		}
	}
}
