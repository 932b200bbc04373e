package rule

import (
	"context"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
)

// Options changes how rules are run. The zero Options are the usual ones.
type Options struct {
	// Known lists the ids of all rules there are, where only some of them are run: a
	// waiver of a rule that exists but does not run is left in peace.
	Known []string

	// Handbook is the tables that rules look things up in; nil: those that the program
	// brings with it.
	Handbook *handbook.Tables

	// Positions is how many positions of the hand switches are looked at for each property
	// that a rule proves; 0: a thousand. With more positions than that, those with the fewest
	// switches away from rest are looked at.
	Positions int64
}

// Result is what a run of rules has to say.
type Result struct {
	Findings   []diag.Finding // sorted; those that the job waives are among them, with Waived set
	NotChecked []NotChecked   // sorted by rule and place
}

// NotChecked is one thing that a rule could not judge.
type NotChecked struct {
	Rule string    // id of the rule
	What string    // what was not judged: "W73"
	Why  string    // "it has no length"
	At   diag.Span // zero: no place
}

// String is the line as lists print it: "W73: it has no length".
func (n NotChecked) String() string { return n.What + ": " + n.Why }

// Open lists the findings that are not waived, at or above a level.
func (r Result) Open(least diag.Level) []diag.Finding {
	var open []diag.Finding
	for _, f := range r.Findings {
		if f.Waived == nil && f.Level >= least {
			open = append(open, f)
		}
	}
	return open
}

// Waived lists the findings that the job lives with.
func (r Result) Waived() []diag.Finding {
	var waived []diag.Finding
	for _, f := range r.Findings {
		if f.Waived != nil {
			waived = append(waived, f)
		}
	}
	return waived
}

// Run runs rules over a harness, one after the other. It returns an error only when ctx
// ends; the result then holds what was found so far, without judgement on waivers.
func Run(ctx context.Context, h *wiring.Harness, rules []*Rule, o Options) (Result, error) {
	d := newDesk(ctx, h, rules, o)
	for _, r := range rules {
		if err := ctx.Err(); err != nil {
			return d.result(), err
		}
		r.Run(&Pass{Harness: h, Graph: d.graph, Handbook: d.handbook, rule: r, desk: d})
	}
	if err := ctx.Err(); err != nil {
		return d.result(), err
	}
	d.findings = once(d.findings)
	asFound(h, d.findings)
	unused := waive(h, d.findings)
	d.findings = append(d.findings, unusedWaivers(unused, d.findings, rules, o)...)
	return d.result(), nil
}

func (d *desk) result() Result {
	diag.Sort(d.findings)
	return Result{Findings: d.findings, NotChecked: onceNotChecked(d.notChecked)}
}

// once drops findings that say the same of the same place, which happens where two ways
// lead a rule to one fault.
func once(fs []diag.Finding) []diag.Finding {
	type key struct {
		rule, message string
		at            diag.Span
	}
	seen := map[key]bool{}
	var kept []diag.Finding
	for _, f := range fs {
		k := key{f.Rule, f.Message, f.At}
		if !seen[k] {
			seen[k] = true
			kept = append(kept, f)
		}
	}
	return kept
}

func onceNotChecked(ns []NotChecked) []NotChecked {
	sort.SliceStable(ns, func(i, j int) bool {
		a, b := ns[i], ns[j]
		switch {
		case a.Rule != b.Rule:
			return a.Rule < b.Rule
		case a.At != b.At:
			return a.At.Before(b.At)
		case a.What != b.What:
			return wiring.Less(a.What, b.What)
		}
		return a.Why < b.Why
	})
	var kept []NotChecked
	for i, n := range ns {
		if i == 0 || n != ns[i-1] {
			kept = append(kept, n)
		}
	}
	return kept
}
