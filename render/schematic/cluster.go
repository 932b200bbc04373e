package schematic

import (
	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/wiring"
)

// The clusters, in the order of their sheets. Each converter that feeds others has one of
// its own, from lowVoltage on.
const (
	traction = iota
	supply
	lowVoltage
)

// cluster gives every device and bar the cluster to which it has fewest hops, counting
// from the motor, from what charges and converts, and from what a converter feeds. Rails
// are common to all and lead from nowhere to nowhere.
func (c *circuit) cluster() int {
	for _, d := range c.devices {
		d.cluster = -1
	}
	for _, b := range c.bars {
		b.cluster = -1
	}
	clusters := c.seed()
	c.spread()
	c.adopt()
	return c.divide(clusters)
}

// seed gives the first devices their clusters and returns how many clusters there are.
func (c *circuit) seed() int {
	next := lowVoltage
	for _, d := range c.devices {
		switch {
		case d.part.Kind.Traction:
			d.cluster = traction
		case charges(d.part):
			d.cluster = supply
		}
		outs := outputs(d.part)
		if len(outs) == 0 {
			continue
		}
		d.cluster = supply
		if c.seedFed(outs, next) {
			next++
		}
	}
	return next
}

// seedFed gives what the outputs of a converter are wired to a cluster.
func (c *circuit) seedFed(outs []*wiring.Terminal, cluster int) bool {
	any := false
	for _, t := range outs {
		for _, w := range t.Wires {
			o := w.Other(t).Terminal
			if o == nil {
				continue
			}
			s := c.on[o]
			switch {
			case s.bar != nil && s.bar.cluster < 0 && !s.bar.railLike:
				s.bar.cluster, any = cluster, true
			case s.device != nil && s.device.cluster < 0:
				s.device.cluster, any = cluster, true
			}
		}
	}
	return any
}

// charges reports whether a part charges a source, or has the mains.
func charges(p *wiring.Part) bool {
	for _, e := range p.Elements {
		switch e.(type) {
		case *wiring.Charger, *wiring.Mains:
			return true
		}
	}
	return false
}

// leastOutput is the current from which on a converter feeds others, in amperes: below it
// supplies a sensor or a display.
const leastOutput = 1

// outputs lists the positive outputs of a part's converters.
func outputs(p *wiring.Part) []*wiring.Terminal {
	var ts []*wiring.Terminal
	for _, e := range p.Elements {
		v, ok := e.(*wiring.Converter)
		if !ok || v.Amps < leastOutput {
			continue
		}
		for _, t := range p.Terminals {
			if t.Form.Type != wiring.Port && t.Node == v.OutA {
				ts = append(ts, t)
			}
		}
	}
	return ts
}

// hop is how far a wire is: what carries much current belongs together most.
func hop(l *line) int {
	if l.wire == nil {
		return 0
	}
	switch weightOf(l.wire) {
	case heavyWeight:
		return 1
	case powerWeight:
		return 2
	}
	return 3
}

// spread hands the clusters on to the nearest neighbours that have none, wire by wire.
func (c *circuit) spread() {
	far := map[spot]int{}
	for _, s := range c.spots() {
		if s.cluster() >= 0 {
			far[s] = 0
		}
	}
	// a few dozen things: going over all lines until nothing changes is quick enough
	for changed := true; changed; {
		changed = false
		for _, l := range c.lines {
			for i := range l.ends {
				from, to := l.ends[i].spot(), l.ends[1-i].spot()
				d, ok := far[from]
				if !ok || from.common() || !c.takes(to) {
					continue
				}
				if was, ok := far[to]; !ok || d+hop(l) < was || d+hop(l) == was && from.cluster() < to.cluster() {
					far[to] = d + hop(l)
					to.setCluster(from.cluster())
					changed = true
				}
			}
		}
	}
}

func (e *lineEnd) spot() spot { return spot{device: e.device, bar: e.bar} }

// spots lists all devices and bars.
func (c *circuit) spots() []spot {
	var all []spot
	for _, d := range c.devices {
		all = append(all, spot{device: d})
	}
	for _, b := range c.bars {
		all = append(all, spot{bar: b})
	}
	return all
}

// common reports whether a bar is part of no circuit alone.
func (s spot) common() bool {
	return s.bar != nil && (s.bar.owner != nil || s.bar.railLike)
}

// takes reports whether something can be handed a cluster.
func (c *circuit) takes(s spot) bool {
	switch {
	case s.device != nil:
		return !c.isSource(s.device)
	case s.bar != nil:
		return s.bar.row == arrange.Free && !s.bar.railLike
	}
	return false
}

func (s spot) setCluster(k int) {
	if s.device != nil {
		s.device.cluster = k
	} else {
		s.bar.cluster = k
	}
}

func (s spot) cluster() int {
	if s.device != nil {
		return s.device.cluster
	}
	return s.bar.cluster
}

func (c *circuit) isSource(d *device) bool {
	for _, e := range d.part.Elements {
		if _, ok := e.(*wiring.Source); ok {
			return true
		}
	}
	return false
}

// adopt gives the sources, what hangs on them alone, and the rails a cluster: sources the
// first, each rail that of most of its wires.
func (c *circuit) adopt() {
	for _, d := range c.devices {
		if d.cluster < 0 && c.isSource(d) {
			d.cluster = traction
		}
	}
	for _, b := range c.bars {
		if b.owner != nil {
			b.cluster = b.owner.cluster
		}
	}
	for range len(c.devices) + len(c.bars) {
		for _, b := range c.bars {
			if b.cluster < 0 {
				b.cluster = majority(b.lines, nil, b)
			}
		}
		for _, d := range c.devices {
			if d.cluster < 0 {
				d.cluster = majority(d.lines, d, nil)
			}
		}
	}
	for _, d := range c.devices {
		d.cluster = max(d.cluster, traction)
	}
	for _, b := range c.bars {
		b.cluster = max(b.cluster, traction)
	}
}

// majority returns the cluster of most neighbours, the lowest of equals, or -1.
func majority(lines []*line, d *device, b *bar) int {
	count := map[int]int{}
	best := -1
	for _, l := range lines {
		o := l.other(d, b)
		cluster := -1
		switch {
		case o.device != nil:
			cluster = o.device.cluster
		case o.bar != nil:
			cluster = o.bar.cluster
		}
		if cluster < 0 {
			continue
		}
		count[cluster]++
		if best < 0 || count[cluster] > count[best] || count[cluster] == count[best] && cluster < best {
			best = cluster
		}
	}
	return best
}

// weigh returns how many wires end on the devices of a cluster, each end as a half.
func (c *circuit) weigh(cluster int) int {
	n := 0
	for _, d := range c.devices {
		if d.cluster == cluster {
			n += len(d.lines)
		}
	}
	return (n + 1) / 2
}

// nameOf says what a cluster of what a converter feeds is.
func (c *circuit) nameOf(cluster int) string {
	for _, b := range c.bars {
		if b.cluster == cluster && b.row == arrange.TopRow {
			return "fed from " + b.part.Designation
		}
	}
	return "low voltage"
}

// nameOfTraction says what the first cluster is: without a motor it is the pack alone.
func (c *circuit) nameOfTraction() string {
	for _, d := range c.devices {
		if d.part.Kind.Traction {
			return "traction and control"
		}
	}
	return "pack"
}
