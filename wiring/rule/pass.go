package rule

import (
	"context"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/meter"
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

// Blamed reports whether a rule before this one has found an error that names one of some
// parts, wires or terminals: what follows from it need not be told again.
func (p *Pass) Blamed(names ...string) bool {
	for _, f := range p.desk.findings {
		for _, subject := range f.Subjects {
			if f.Level == diag.Error && f.Rule != p.rule.ID && slices.Contains(names, subject) {
				return true
			}
		}
	}
	return false
}

// Reported reports whether a rule before this one has a finding that names one of some parts,
// wires or terminals.
func (p *Pass) Reported(rule string, names ...string) bool {
	return slices.ContainsFunc(p.desk.findings, func(f diag.Finding) bool {
		return f.Rule == rule && slices.ContainsFunc(f.Subjects, func(s string) bool { return slices.Contains(names, s) })
	})
}

// Bench takes readings and says what feeds a terminal, or where the way to it is cut.
func (p *Pass) Bench() *meter.Bench {
	if p.desk.bench == nil {
		p.desk.bench = meter.New(p.desk.harness)
	}
	return p.desk.bench
}

// Context ends when whoever runs the rules no longer wants the answer. Rules that loop for
// long ask it.
func (p *Pass) Context() context.Context { return p.desk.ctx }
