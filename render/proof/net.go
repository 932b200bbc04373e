package proof

import (
	"fmt"
	"slices"
	"sort"

	"github.com/lugwright/lugwright/render/ink"
)

// Net is what the lines on the paper join.
type Net struct {
	Pins  []string // "K1.in", and bars by their name alone; sorted
	Wires []string // sorted
}

// Nets reads the netlist from the geometry: a line is joined to the pin or bar on which it
// ends, and to another line on which it ends or which it crosses, if there is a dot. What
// looks joined and has no dot is a fault, and is left apart.
func (d *Drawing) Nets() ([]Net, []Fault) {
	n := newNetter(d)
	n.joinPins()
	n.joinBars()
	n.joinWires()
	return n.nets(), n.faults
}

// netter numbers pins, bars and lines in one row and joins them.
type netter struct {
	d      *Drawing
	lines  []*Wire // wires and metal
	parent []int
	faults []Fault
}

func newNetter(d *Drawing) *netter {
	n := &netter{d: d}
	for i := range d.Wires {
		n.lines = append(n.lines, &d.Wires[i])
	}
	for i := range d.Metal {
		n.lines = append(n.lines, &d.Metal[i])
	}
	n.parent = make([]int, len(d.Pins)+len(d.Bars)+len(n.lines))
	for i := range n.parent {
		n.parent[i] = i
	}
	return n
}

func (n *netter) bar(i int) int  { return len(n.d.Pins) + i }
func (n *netter) line(i int) int { return len(n.d.Pins) + len(n.d.Bars) + i }

func (n *netter) find(i int) int {
	for n.parent[i] != i {
		n.parent[i] = n.parent[n.parent[i]]
		i = n.parent[i]
	}
	return i
}

func (n *netter) join(i, j int) {
	i, j = n.find(i), n.find(j)
	n.parent[max(i, j)] = min(i, j)
}

func (n *netter) joinPins() {
	for p := range n.d.Pins {
		at := n.d.Pins[p].At
		for l, w := range n.lines {
			switch {
			case w.endsAt(at):
				n.join(p, n.line(l))
			case w.holds(at):
				n.join(p, n.line(l))
				n.fault("over-pin", at, "%s runs over the pin %s", w.Name, n.d.Pins[p].Ref())
			}
		}
	}
}

func (n *netter) joinBars() {
	for b := range n.d.Bars {
		bar := &n.d.Bars[b]
		for l, w := range n.lines {
			for _, e := range w.Ends {
				if !bar.holds(e) {
					continue
				}
				if !n.dotAt(e) {
					n.fault("no-dot", e, "%s ends on %s without a dot", w.Name, bar.Name)
				}
				n.join(n.bar(b), n.line(l))
			}
		}
	}
}

func (n *netter) joinWires() {
	for i, a := range n.lines {
		for j, b := range n.lines {
			if i == j {
				continue
			}
			for _, e := range a.Ends {
				if !b.holds(e) || n.onBar(e) {
					continue
				}
				if n.dotAt(e) {
					n.join(n.line(i), n.line(j))
				} else if !n.onPin(e) || !b.endsAt(e) {
					n.fault("no-dot", e, "%s ends on %s without a dot", a.Name, b.Name)
				}
			}
		}
	}
	for _, dot := range n.d.Dots {
		n.joinAt(dot)
	}
}

// joinAt joins all lines through a dot, and finds dots that join nothing.
func (n *netter) joinAt(dot ink.Point) {
	first := -1
	branches := 0
	for l, w := range n.lines {
		if !w.holds(dot) {
			continue
		}
		branches++
		if first >= 0 {
			n.join(first, n.line(l))
		}
		first = n.line(l)
	}
	if branches == 0 || branches == 1 && !n.onBar(dot) {
		n.fault("idle-dot", dot, "a dot joins nothing")
	}
}

func (n *netter) dotAt(p ink.Point) bool {
	return slices.ContainsFunc(n.d.Dots, func(q ink.Point) bool { return near(p, q) })
}

func (n *netter) onBar(p ink.Point) bool {
	return slices.ContainsFunc(n.d.Bars, func(b Wire) bool { return b.holds(p) })
}

func (n *netter) onPin(p ink.Point) bool {
	return slices.ContainsFunc(n.d.Pins, func(q Pin) bool { return near(p, q.At) })
}

func (n *netter) fault(kind string, at ink.Point, format string, args ...any) {
	n.faults = append(n.faults, Fault{Kind: kind, At: at, Text: fmt.Sprintf(format, args...)})
}

// nets lists what was joined, in the order of their first pins.
func (n *netter) nets() []Net {
	byRoot := map[int]*Net{}
	get := func(i int) *Net {
		root := n.find(i)
		if byRoot[root] == nil {
			byRoot[root] = &Net{}
		}
		return byRoot[root]
	}
	for i := range n.d.Pins {
		net := get(i)
		net.Pins = append(net.Pins, n.d.Pins[i].Ref())
	}
	for i := range n.d.Bars {
		net := get(n.bar(i))
		net.Pins = append(net.Pins, n.d.Bars[i].Name)
	}
	for i := range n.d.Wires {
		net := get(n.line(i))
		net.Wires = append(net.Wires, n.d.Wires[i].Name)
	}
	var all []Net
	for _, net := range byRoot {
		sort.Strings(net.Pins)
		sort.Strings(net.Wires)
		all = append(all, *net)
	}
	sort.Slice(all, func(i, j int) bool {
		return slices.Compare(append(all[i].Pins, all[i].Wires...), append(all[j].Pins, all[j].Wires...)) < 0
	})
	return all
}
