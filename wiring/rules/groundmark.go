package rules

import (
	"fmt"
	"regexp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// groundWords are how people mark what is a ground.
var groundWords = regexp.MustCompile(`(?i)\b(ground|negative)\b`)

// marked judges what is marked as a ground, though no consumer on it may be modelled: a
// wire by what it is for, a splice or bus bar by its title, a terminal with wires on it by
// its spoken name.
func (r *returns) marked() {
	for _, w := range r.pass.Harness.Wires {
		if groundWords.MatchString(w.For) && len(w.Joins()) > 0 && !r.grounded(w.Joins()[0][0]) {
			r.ungrounded(w.Name(), w.At, w.For, w.Joins()[0][0])
		}
	}
	for _, part := range r.pass.Harness.Parts {
		if onlyCopper(part) && groundWords.MatchString(part.Title) && len(part.Terminals) > 0 {
			if n := part.Terminals[0].Node; n >= 0 && !r.grounded(n) {
				r.ungrounded(part.Designation, part.At, part.Title, n)
			}
			continue
		}
		for _, t := range part.Terminals {
			if groundWords.MatchString(t.Spoken) && t.Node >= 0 && len(t.Wires) > 0 && !r.grounded(t.Node) {
				r.ungrounded(t.Ref(), part.At, t.Spoken, t.Node)
			}
		}
	}
}

// onlyCopper reports whether a part only joins wires: a splice, a bus bar.
func onlyCopper(p *wiring.Part) bool {
	for _, el := range p.Elements {
		if _, ok := el.(*wiring.Link); !ok {
			return false
		}
	}
	return true
}

func (r *returns) grounded(n wiring.NodeID) bool {
	for _, back := range r.back {
		if back.Has(n) {
			return true
		}
	}
	return len(r.back) == 0
}

func (r *returns) ungrounded(name string, at diag.Span, mark string, n wiring.NodeID) {
	for _, b := range r.broken {
		if b.group.Has(n) {
			return
		}
	}
	target := "the negative of its source"
	if t, ok := pointTerminal(r.pass.Harness, "pack-"); ok {
		target = t.Ref()
	}
	r.pass.Report(diag.Finding{
		Message:  fmt.Sprintf("%s is marked %q and reaches no negative", name, mark),
		Detail:   fmt.Sprintf("From %s no way leads to the negative of any source.", r.pass.Graph.Name(n)),
		Advice:   fmt.Sprintf("Land it on %s.", target),
		At:       at,
		Subjects: subjects([]string{name}, wiresAt(r.pass, n)),
	})
}
