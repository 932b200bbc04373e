// Package rule says what a rule is and runs rules over a harness. The rules themselves
// live in package rules, one file each.
//
// A [Rule] is a value: an identity, everything that `explain` tells about it, and a
// function that gets one [Pass], which holds all that it may read and the one way to
// report. [Run] runs a list of them and settles what stands above all rules: what lies
// wholly on wiring that the work did not touch is at most a warning, a job's waivers are
// matched to what they name, and what could not be judged is listed.
package rule

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/position"
)

// Rule is one thing that must hold on a cart, with all that can be said about it.
type Rule struct {
	ID     string     // plain words with hyphens: "fused-consumer"
	Title  string     // one line: what holds
	Level  diag.Level // of its usual finding
	Why    string     // what goes wrong on a cart that breaks it, with numbers
	Do     string     // what to do about it
	Source string     // standard and clause, regulation, or "common practice, no published source"
	Wrong  string     // job-file lines that break it
	Right  string     // the same, mended
	Run    func(*Pass)

	// Proves is what must hold in every position of the hand switches; see [Pass.Proofs].
	Proves []*position.Property
}
