package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

// brokenReturn is a group of nodes from which current does not get back.
type brokenReturn struct {
	group  *path.Reach
	minus  wiring.NodeID // negative of the first consumer
	part   *wiring.Part  // the first consumer's
	supply *path.Supply  // that feeds it
	lost   []string
}

// lose notes what has no return, together with what else hangs on the same nodes.
func (r *returns) lose(name string, part *wiring.Part, minus wiring.NodeID, s *path.Supply) {
	for i := range r.broken {
		if r.broken[i].group.Has(minus) && r.broken[i].supply == s {
			r.broken[i].lost = append(r.broken[i].lost, name)
			return
		}
	}
	group := r.pass.Graph.From(carrying(), minus)
	r.broken = append(r.broken, brokenReturn{group: group, minus: minus, part: part, supply: s, lost: []string{name}})
}

func (r *returns) report() {
	for _, b := range r.broken {
		lost := natural(b.lost)
		g, target := r.pass.Graph, r.target(b.supply)
		source := b.supply.Element.Base().Part.Designation
		f := diag.Finding{
			Message:  fmt.Sprintf("%s %s no return", list(lost), hasOrHave(lost)),
			Detail:   fmt.Sprintf("Fed by %s; from %s no way leads back to %s.", source, g.Name(b.minus), g.Name(b.supply.Minus)),
			Advice:   fmt.Sprintf("Lay a wire from %s to %s.", g.Name(b.minus), target),
			At:       r.place(b),
			Related:  defined(b.part.Designation, b.part.At),
			Subjects: subjects(wiresAt(r.pass, b.minus), lost, []string{b.part.Designation, source}),
		}
		if w, end, said := r.culprit(b); w != nil {
			f.Detail += " " + said
			f.Advice = fmt.Sprintf("Land %s on %s.", w.Name(), target)
			f.At = endSpan(w, end)
			f.Subjects = subjects([]string{w.Name()}, f.Subjects)
		}
		r.pass.Report(f)
	}
}

func hasOrHave(names []string) string {
	if len(names) == 1 {
		return "has"
	}
	return "have"
}

// culprit is the wire that ought to be the return: one that ends nowhere and begins in the
// group, or one that a layer took off the group and let end nowhere.
func (r *returns) culprit(b brokenReturn) (w *wiring.Wire, end *wiring.End, said string) {
	for _, w := range r.pass.Harness.Wires {
		for i, e := range w.Ends() {
			other := w.Ends()[1-i]
			if e.Terminal != nil || other.Terminal == nil {
				continue
			}
			if b.group.Has(other.Terminal.Node) {
				return w, e, fmt.Sprintf("%s ends %v.", w.Name(), e)
			}
			if was := lastMove(w, i == 1); was != "" && r.inGroup(b, was) {
				return w, e, fmt.Sprintf("%s was on %s and is %v now.", w.Name(), was, e)
			}
		}
	}
	return nil, nil, ""
}

// lastMove is the terminal that an end of a wire was on before it was last moved.
func lastMove(w *wiring.Wire, to bool) string {
	was := ""
	for _, m := range w.Moved {
		if m.To == to {
			was = m.Was
		}
	}
	return was
}

func (r *returns) inGroup(b brokenReturn, ref string) bool {
	t := r.pass.Harness.Terminal(ref)
	return t != nil && b.group.Has(t.Node)
}

// place is the line that a finding about a broken return points at, where no wire is to
// blame: the negative wire of the consumer.
func (r *returns) place(b brokenReturn) diag.Span {
	for _, e := range r.pass.Graph.At(b.minus) {
		if e.Wire != nil {
			return landing(e.Wire, e.Other(b.minus))
		}
	}
	return b.part.At
}

// wiresAt names the wires that land on a node, those with a far end that lands nowhere
// among them.
func wiresAt(p *rule.Pass, n wiring.NodeID) []string {
	if n < 0 || p.Harness.Nodes[n].Terminal == nil {
		return nil
	}
	return wireNames(p.Harness.Nodes[n].Terminal.Wires)
}

// target is the terminal on which a supply's returns belong: the point that a layer names
// for them where it is on that supply's negative, else the negative itself.
func (r *returns) target(s *path.Supply) string {
	points := []string{"negative-12v", "pack-"}
	if s.Battery() {
		points = []string{"pack-"}
	}
	for _, name := range points {
		if t, ok := pointTerminal(r.pass.Harness, name); ok && r.pass.Graph.SameCopper(t.Node, s.Minus) {
			return t.Ref()
		}
	}
	return r.pass.Graph.Name(s.Minus)
}
