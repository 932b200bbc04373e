package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fuseNearSource() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-near-source",
		Title: "the conductor from a battery to its fuse is short",
		Level: diag.Warning,
		Why: "What lies between the post and the fuse is protected by nothing. Seven inches of lead can be looked over in one glance; 30 in of it run along a frame, chafe " +
			"through in some years, and then carry 5 kA until they have burnt away. For the lead of a charger the pack is the source: its fuse belongs at the pack's end.",
		Do:     "Put the fuse within 7 in of the post along the conductor; within 40 in where the conductor lies in a sheath or a loom tube all the way.",
		Source: "33 CFR 183.455(b): 7 in, 40 in where sheathed or enclosed. Boat law: a yardstick for a cart; a warning, since posts and seats often forbid it. Limits can be set in a job.",
		Wrong: `wires:
  W51: {length: 30 in}      # from the post to the main fuse
`,
		Right: `wires:
  W51: {length: 7 in}
`,
		Run: runFuseNearSource,
	}
}

func runFuseNearSource(p *rule.Pass) {
	for _, s := range p.Supplies() {
		if s.Battery() {
			n := nearness{pass: p, supply: s}
			n.look()
		}
	}
}

// nearness looks for the fuses that one battery reaches first.
type nearness struct {
	pass   *rule.Pass
	supply *path.Supply
}

// look measures to the nearer end of every fuse that copper and closed switches join to the
// battery. A post of another battery ends the way: it is a source of its own.
func (n *nearness) look() {
	p := n.pass
	through := path.Through{Sorts: path.Conductors | path.Switch | path.Contact}.Until(p.Negative).Until(n.otherPost)
	reach := p.Graph.Least(through, metres, n.supply.Plus)
	for _, f := range fittedFuses(p.Harness) {
		if f.Part == n.supply.Element.Base().Part {
			continue
		}
		for _, end := range []wiring.NodeID{f.A, f.B} {
			if way, ok := reach.To(end); ok && !p.Negative(end) && way.Agrees() {
				n.judge(f, way)
				break
			}
		}
	}
}

func (n *nearness) otherPost(node wiring.NodeID) bool {
	for _, s := range n.pass.Supplies() {
		if s != n.supply && s.Battery() && s.Plus == node {
			return true
		}
	}
	return false
}

// metres is the known length of an edge.
func metres(e *path.Edge) float64 {
	if e.Wire == nil {
		return 0
	}
	length, _, _ := e.Wire.Length()
	return float64(length)
}

// judge leaves the platform's own traction cable alone: nobody moves the factory's main fuse.
func (n *nearness) judge(f *wiring.Fuse, way path.Path) {
	p, total, sheathed, own := n.pass, quantity.Metre(0), true, true
	for _, w := range way.Wires() {
		length, _, known := w.Length()
		if !known {
			p.NotChecked(w.Name(), fmt.Sprintf("it has no length, so nobody can say how far %s is from %s", fuseName(f), p.Graph.Name(way.Begin)), w.Span("length"))
			return
		}
		total += length
		sheathed = sheathed && enclosed(p.Harness, w)
		own = own && w.Untouched()
	}
	limit := p.Harness.Limits.FuseDistance
	if sheathed && len(way.Wires()) > 0 {
		limit = max(limit, p.Handbook.FuseDistance(true))
	}
	if float64(total) > rounded*float64(limit) && !own {
		n.report(f, way, total, limit)
	}
}

// enclosed reports whether a wire lies in a cover that keeps edges off it.
func enclosed(h *wiring.Harness, w *wiring.Wire) bool {
	for _, l := range h.Looms {
		if l.Name == w.Loom && w.Loom != "" {
			return l.Cover == "split tube" || l.Cover == "sheath" || l.Cover == "braid"
		}
	}
	return false
}

func (n *nearness) report(f *wiring.Fuse, way path.Path, total, limit quantity.Metre) {
	p := n.pass
	w, at := newest(p.Harness, way)
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s is %s of unprotected conductor away from %s", fuseName(f), inches(total), p.Graph.Name(way.Begin)),
		Detail:   fmt.Sprintf("%s; the limit is %s.", way, inches(limit)),
		Advice:   fmt.Sprintf("Move %s to within %s of %s, or lay its lead in a sheath.", fuseName(f), inches(limit), p.Graph.Name(way.Begin)),
		At:       lengthSpan(w, at),
		Related:  defined(f.Part.Designation, f.Part.At),
		Subjects: subjects([]string{f.Part.Designation}, wireNames(way.Wires()), []string{p.Graph.Name(way.Begin), n.supply.Element.Base().Part.Designation}),
	})
}

// inches prints a length as the rule's source states its own.
func inches(m quantity.Metre) string { return fmt.Sprintf("%.0f in", float64(m)/0.0254) }

// lengthSpan is where the length of a wire was written, else where it lands.
func lengthSpan(w *wiring.Wire, at wiring.NodeID) diag.Span {
	if span, ok := w.Where["length"]; ok {
		return span
	}
	return landing(w, at)
}
