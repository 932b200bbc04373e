package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// unfused is what one supply reaches without a fuse of the harness, and what is wrong with
// that.
type unfused struct {
	pass    *rule.Pass
	supply  *path.Supply
	through path.Through
	reach   *path.Reach
	faults  []unfusedFault
}

// unfusedFault is one wire that leaves a fused point, or the supply, without a fuse.
type unfusedFault struct {
	wire  *wiring.Wire
	at    wiring.NodeID // where it leaves
	way   path.Path     // to the worst thing that it feeds
	feeds []string
	level diag.Level
	why   string
}

func newUnfused(p *rule.Pass, s *path.Supply) *unfused {
	own := s.Element.Base().Part
	through := faultThrough(p, s).Only(func(e *path.Edge) bool { return e.Sort != path.Fuse || e.Part() == own })
	u := &unfused{pass: p, supply: s, through: through, reach: p.Graph.From(through, s.Plus)}
	for _, e := range p.Graph.Edges() {
		if e.Sort&taking == 0 || e.Element == s.Element || battery(e.Part()) {
			continue
		}
		for _, n := range []wiring.NodeID{e.A, e.B} {
			if u.reach.Has(n) && !p.Negative(n) {
				u.fed(e.Part().Designation, n, nil)
			}
		}
	}
	u.capped()
	return u
}

// battery reports whether a part is a battery, whose own electronics are its own affair.
func battery(p *wiring.Part) bool {
	for _, el := range p.Elements {
		if _, ok := el.(*wiring.Source); ok {
			return true
		}
	}
	return false
}

// capped finds live wires that end insulated and have no fuse.
func (u *unfused) capped() {
	for _, w := range u.pass.Harness.Wires {
		for i, e := range w.Ends() {
			t := w.Ends()[1-i].Terminal
			if e.Capped && t != nil && u.reach.Has(t.Node) && !u.pass.Negative(t.Node) {
				u.fed("a capped end", t.Node, w)
			}
		}
	}
}

// fed notes one thing that is fed at a node; last is a wire beyond the node, if any. What
// hangs on no more wire than a pigtail is let pass.
func (u *unfused) fed(what string, n wiring.NodeID, last *wiring.Wire) {
	way, ok := u.reach.To(n)
	if !way.Agrees() {
		way, ok = u.pass.Graph.Joined(u.through, u.supply.Plus, n)
	}
	wires := way.Wires()
	if last != nil {
		wires = append(wires, last)
	}
	if !ok || len(wires) == 0 || shortEnough(wires) {
		return
	}
	level, why := u.judge(way, wires, last == nil && u.traction(n))
	if level == 0 {
		return
	}
	wire, at := u.culprit(way, last)
	for i := range u.faults {
		if f := &u.faults[i]; f.wire == wire && f.at == at {
			f.feeds = append(f.feeds, what)
			if level > f.level {
				f.level, f.why, f.way = level, why, way
			}
			return
		}
	}
	u.faults = append(u.faults, unfusedFault{wire: wire, at: at, way: way, feeds: []string{what}, level: level, why: why})
}

// traction reports whether a node belongs to what moves the cart or drives it.
func (u *unfused) traction(n wiring.NodeID) bool {
	part := u.pass.Harness.Nodes[n].Part
	return part != nil && (part.Kind.Traction || u.pass.Controller(part))
}

// shortEnough reports whether wires are together known to be no longer than a pigtail.
func shortEnough(wires []*wiring.Wire) bool {
	total := quantity.Metre(0)
	for _, w := range wires {
		length, _, known := w.Length()
		if !known {
			return false
		}
		total += length
	}
	return total <= pigtail*1.001
}

// culprit is the wire that leaves the protected way: the one behind the first point of the
// way where a fuse begins and was passed by, else the first wire of all. At a battery such
// a point counts only as near to it as a fuse may stand.
func (u *unfused) culprit(way path.Path, last *wiring.Wire) (*wiring.Wire, wiring.NodeID) {
	var first *wiring.Wire
	at, along := way.Begin, quantity.Metre(0)
	for _, s := range way.Steps {
		if s.Edge.Wire == nil {
			continue
		}
		if first == nil {
			first, at = s.Edge.Wire, s.From
		}
		near := !u.supply.Battery() || along <= u.pass.Harness.Limits.FuseDistance*1.001
		if near && fuseAt(u.pass.Graph, s.From) {
			return s.Edge.Wire, s.From
		}
		length, _, _ := s.Edge.Wire.Length()
		along += length
	}
	if first == nil || last != nil && fuseAt(u.pass.Graph, way.End) {
		return last, way.End
	}
	return first, at
}

func fuseAt(g *path.Graph, n wiring.NodeID) bool {
	for _, e := range g.At(n) {
		if e.Sort == path.Fuse {
			return true
		}
	}
	return false
}
