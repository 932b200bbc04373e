package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

// turnedInString reports two batteries that are joined positive to positive, or negative
// to negative, and not in parallel, alone or in strings: one of a string was turned round.
func turnedInString(p *rule.Pass, b *wiring.Source) {
	for _, s := range p.Supplies() {
		o, ok := s.Element.(*wiring.Source)
		if !ok || o == b || !wiring.Less(b.Ref(), o.Ref()) {
			continue
		}
		plus, minus := p.Graph.SameCopper(b.A, o.A), p.Graph.SameCopper(b.B, o.B)
		metal := path.Through{Sorts: path.Metal | path.Source}.Without(b).Without(o)
		if plus && !p.Graph.From(metal, b.B).Has(o.B) {
			reportTurned(p, b, o, b.A, o.A)
		}
		if minus && !p.Graph.From(metal, b.A).Has(o.A) && !ownBus(p, b, o) {
			reportTurned(p, b, o, b.B, o.B)
		}
	}
}

// ownBus reports whether two batteries with a common negative are two buses of their own
// and no string: each feeds something from its positive.
func ownBus(p *rule.Pass, b, o *wiring.Source) bool {
	for _, plus := range []wiring.NodeID{b.A, o.A} {
		reach := p.Graph.From(path.Through{Sorts: path.Conducting}, plus)
		_, feeds := reach.First(func(n wiring.NodeID) bool {
			for _, e := range p.Graph.At(n) {
				if e.Sort&taking != 0 && e.Part() != b.Part && e.Part() != o.Part {
					return true
				}
			}
			return false
		})
		if !feeds {
			return false
		}
	}
	return true
}

func reportTurned(p *rule.Pass, b, o *wiring.Source, at, other wiring.NodeID) {
	way, _ := p.Graph.From(path.Through{Sorts: path.Conductors}, at).To(other)
	w, n := newest(p.Harness, way)
	f := diag.Finding{
		Message:  fmt.Sprintf("%s and %s are joined at %s and %s: one of them is the wrong way round", b.Part.Designation, o.Part.Designation, p.Graph.Name(at), p.Graph.Name(other)),
		Detail:   fmt.Sprintf("By %s. In a string the positive of one goes to the negative of the next.", way),
		Advice:   "Turn the battery round whose neighbours are joined so, or change its two cables over.",
		At:       b.Part.At,
		Subjects: subjects([]string{b.Part.Designation, o.Part.Designation}, waySubjects(p.Graph, way)),
	}
	if w != nil {
		f.At = landing(w, n)
	}
	p.Report(f)
}
