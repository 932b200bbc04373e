package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func leadEnded() *rule.Rule {
	return &rule.Rule{
		ID:    "lead-ended",
		Title: "every lead and every wire is landed or capped at both ends",
		Level: diag.Error,
		Why: "A loose end that is live finds the frame, a post or another lead sooner or later: 12 V from a reducer's memory lead is 1 A of sparks, " +
			"pack voltage is an arc. A loose end that is dead is the ground or the feed that somebody forgot when the batteries it hung on were " +
			"taken out. A new reducer alone brings 5 leads, of which most carts use 4.",
		Do: "Land it, or cap it: insulate the end, tie it back, and write `to: capped`, so that it stands on the drawing. A wire that is not " +
			"needed any more comes out: `remove: [W45]`.",
		Source: "Common practice, no published source; live studs and ends: 33 CFR 183.445(b).",
		Wrong: `remove: [W63]               # and nothing is said about T2.memory any more
`,
		Right: `remove: [W63]
wires:
  T2.memory: {to: capped}
`,
		Run: runLeadEnded,
	}
}

// An end that was written as a point which no layer gives is not loose: the layer that
// wants the point is looked at alone, and says so itself.
func runLeadEnded(p *rule.Pass) {
	live := liveNodes(p)
	for _, w := range p.Harness.Wires {
		for i, e := range w.Ends() {
			if e.Terminal == nil && !e.Capped && e.Point == "" {
				looseEnd(p, w, e, w.Ends()[1-i], live)
			}
		}
	}
	for _, part := range p.Harness.Parts {
		for _, t := range part.Terminals {
			if t.Form.Type == wiring.Lead && len(t.Wires) == 0 {
				untold(p, t, live)
			}
		}
	}
}

// liveNodes is every node at which a meter, or a finger, finds the voltage of a supply in
// some position: what a supply reaches through anything that lets current pass, before the
// negative side.
func liveNodes(p *rule.Pass) *path.Reach {
	through := path.Through{Sorts: path.Conducting | path.Resistor | path.Load | path.Coil | path.Diode}.Until(p.Negative)
	var plus []wiring.NodeID
	for _, s := range p.Supplies() {
		if !p.Negative(s.Plus) {
			plus = append(plus, s.Plus)
		}
	}
	return p.Graph.From(through, plus...)
}

func looseEnd(p *rule.Pass, w *wiring.Wire, e, other *wiring.End, live *path.Reach) {
	f := diag.Finding{
		Level:    diag.Warning,
		Message:  fmt.Sprintf("%s has an end that is neither landed nor capped", w.Name()),
		Advice:   fmt.Sprintf("Move, cap or remove %s.", w.Name()),
		At:       endSpan(w, e),
		Related:  defined(w.Name(), w.At),
		Subjects: subjects([]string{w.Name(), e.Loose}),
	}
	if e.Loose != "" {
		f.Message = fmt.Sprintf("%s is left on nothing: %s was taken out", w.Name(), e.Loose)
	}
	f.Detail = "Its other end is loose too."
	if t := other.Terminal; t != nil {
		f.Detail = fmt.Sprintf("Its other end is on %s, which is dead.", t.Ref())
		if live.Has(t.Node) {
			f.Level = diag.Error
			f.Detail = fmt.Sprintf("Its other end is on %s, and can be live.", t.Ref())
		}
		f.Subjects = append(f.Subjects, t.Ref(), t.Part.Designation)
	} else if other.Capped {
		f.Detail = "Its other end is capped."
	}
	if w.For != "" {
		f.Detail = fmt.Sprintf("It is the wire for: %s. %s", w.For, f.Detail)
	}
	p.Report(f)
}

// untold reports a lead about which no file says anything.
func untold(p *rule.Pass, t *wiring.Terminal, live *path.Reach) {
	f := diag.Finding{
		Level:    diag.Warning,
		Message:  fmt.Sprintf("nothing is said about the lead %s", t.Ref()),
		Detail:   "It is dead as long as nothing is joined to it.",
		Advice:   fmt.Sprintf("Land it, or write %s: {to: capped}.", t.Ref()),
		At:       t.Part.At,
		Subjects: []string{t.Ref(), t.Part.Designation},
	}
	if t.Spoken != "" {
		f.Message += fmt.Sprintf(" (%s)", t.Spoken)
	}
	if live.Has(t.Node) && !p.Negative(t.Node) {
		f.Level = diag.Error
		f.Detail = "It can be live."
	}
	p.Report(f)
}
