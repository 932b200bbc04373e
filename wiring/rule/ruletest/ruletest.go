// Package ruletest tests rules on job files that say beside each line what is wrong with
// it:
//
//	W72: {from: G1.+, to: E1.+}   # want fused-consumer "leaves G1.\\+ without a fuse"
//
// A test fails on a finding that is missing and on one too many.
package ruletest

import (
	"context"
	"os"
	"testing"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
)

// Job runs rules over a job file and compares every finding with the comments of the file.
// The regular expressions are matched against "error: message | detail | advice". Notes
// count only where they point into the file itself; what the layers below have to say in
// notes is their own affair. It returns the result.
func Job(t testing.TB, file string, rules []*rule.Rule) rule.Result {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	ws, err := wants(string(text))
	if err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	result := Run(t, file, rules)
	var counted []diag.Finding
	for _, f := range result.Open(diag.Note) {
		if f.Level > diag.Note || f.At.File == file {
			counted = append(counted, f)
		}
	}
	for _, problem := range compare(file, ws, counted) {
		t.Error(problem)
	}
	return result
}

// Run loads a job file, which must have no input errors, and runs rules over it.
func Run(t testing.TB, file string, rules []*rule.Rule) rule.Result {
	t.Helper()
	h, findings, err := job.Load(file, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		for _, f := range findings {
			t.Errorf("%s:%d:%d: %v: %s", f.At.File, f.At.Line, f.At.Col, f.Level, f.Message)
		}
		t.FailNow()
	}
	result, err := rule.Run(context.Background(), h, rules, rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return result
}
