package rule

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
)

// Pass is one rule at work on one harness: all that it may read, and the one way to
// report. A Pass is not safe for concurrent use.
type Pass struct {
	Harness  *wiring.Harness
	Graph    *path.Graph      // what reaches what
	Handbook *handbook.Tables // ampacities, fuses, lugs, limits

	rule *Rule
	desk *desk
}

// Report adds a finding. Rule is filled in; Level, if zero, is the rule's own. Name the
// subjects, most important first: they are what a waiver may name, and they decide whether
// the finding lies wholly on untouched wiring.
func (p *Pass) Report(f diag.Finding) {
	f.Rule = p.rule.ID
	if f.Level == 0 {
		f.Level = p.rule.Level
	}
	p.desk.findings = append(p.desk.findings, f)
}

// NotChecked says that the rule could not judge something, and why: "W73", "it has no
// size". It is listed, so that silence never looks like a pass.
func (p *Pass) NotChecked(what, why string, at diag.Span) {
	p.desk.notChecked = append(p.desk.notChecked, NotChecked{Rule: p.rule.ID, What: what, Why: why, At: at})
}

// Context ends when whoever runs the rules no longer wants the answer. Rules that loop for
// long ask it.
func (p *Pass) Context() context.Context { return p.desk.ctx }
