package work

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
	"github.com/lugwright/lugwright/wiring/handbook"
)

// Device is one thing that one could hold in one's hands: a part of the old cart, of the new
// one, or of both. Where a designation stands for another kind of device, or one of other
// ratings, on the new cart, that is two devices.
type Device struct {
	*wiring.Part // of the new cart where it is in both, with its nodes among those of the bench
	Old, New     bool
	Was          *wiring.Part // as the old cart has it; nil if New alone
}

// Stays reports whether the device is on both carts.
func (d *Device) Stays() bool { return d.Old && d.New }

// imaginary reports whether the device is nothing but a place where wires are joined: it is
// there once they are.
func (d *Device) imaginary() bool {
	return !slices.ContainsFunc(d.Terminals, func(t *wiring.Terminal) bool { return t.Form.Type != wiring.Joint })
}

// sources lists the batteries in the device.
func (d *Device) sources() []*wiring.Source {
	var all []*wiring.Source
	for _, e := range d.Elements {
		if s, ok := e.(*wiring.Source); ok {
			all = append(all, s)
		}
	}
	return all
}

// battery reports whether the device is a source of current by itself.
func (d *Device) battery() bool { return len(d.sources()) > 0 }

// bench is both carts as one set of things, with one numbering of nodes.
type bench struct {
	old, new *wiring.Harness
	changed  difference.Difference
	tables   *handbook.Tables
	nodes    []wiring.Node
	devices  []*Device // in the order of designations, old before new
	strands  []*Strand // in the order of numbers, old before new

	olds, news map[string]*Device // by folded designation
	own        map[*wiring.Part]*Device
	strandOf   map[*wiring.Wire]*Strand
}

func newBench(old, new *wiring.Harness) *bench {
	b := &bench{
		old: old, new: new, changed: difference.Between(old, new), tables: handbook.Default(),
		olds: map[string]*Device{}, news: map[string]*Device{}, own: map[*wiring.Part]*Device{},
		strandOf: map[*wiring.Wire]*Strand{},
	}
	b.nodes = append(b.nodes, new.Nodes...)
	b.nodes = append(b.nodes, old.Nodes[1:]...)
	b.gatherDevices()
	b.gatherStrands()
	return b
}

// gatherDevices makes one device of what is the same on both carts.
func (b *bench) gatherDevices() {
	other := b.otherDevices()
	for _, p := range b.new.Parts {
		d := &Device{Part: p, New: true}
		b.news[wiring.Fold(p.Designation)] = d
		b.devices = append(b.devices, d)
	}
	for _, p := range b.old.Parts {
		name := wiring.Fold(p.Designation)
		d := b.news[name]
		if d == nil || other[name] {
			d = &Device{Part: graft(p, wiring.NodeID(len(b.new.Nodes)-1))}
			b.devices = append(b.devices, d)
		}
		d.Old, d.Was = true, p
		b.olds[name] = d
	}
	slices.SortStableFunc(b.devices, func(x, y *Device) int {
		switch {
		case wiring.Less(x.Designation, y.Designation):
			return -1
		case wiring.Less(y.Designation, x.Designation):
			return 1
		}
		return before(x.Old, y.Old)
	})
	for _, d := range b.devices {
		b.own[d.Part] = d
	}
}

// before sorts what is true before what is not.
func before(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return -1
	}
	return 1
}

// otherDevices lists the designations that stand for another device on the new cart.
func (b *bench) otherDevices() map[string]bool {
	other := map[string]bool{}
	for _, c := range b.changed.Changes {
		rated := c.Class == difference.Rerated && strings.HasPrefix(c.Key, "rating ")
		if c.What == difference.APart && (c.Class == difference.Replaced || rated) {
			other[wiring.Fold(c.Name)] = true
		}
	}
	return other
}

// spot finds a terminal of one of the carts on the bench.
func (b *bench) spot(t *wiring.Terminal, of map[string]*Device) *wiring.Terminal {
	if t == nil {
		return nil
	}
	d := of[wiring.Fold(t.Part.Designation)]
	for i, mine := range t.Part.Terminals {
		if mine == t && i < len(d.Terminals) {
			return d.Terminals[i]
		}
	}
	return nil
}

// device is whose terminal it is.
func (b *bench) device(t *wiring.Terminal) *Device { return b.own[t.Part] }

// isPole reports whether a terminal is a post of a battery.
func (b *bench) isPole(t *wiring.Terminal) bool {
	if t == nil || t.Node <= wiring.FrameNode {
		return false
	}
	for _, s := range b.device(t).sources() {
		if s.A == t.Node || s.B == t.Node {
			return true
		}
	}
	return false
}
