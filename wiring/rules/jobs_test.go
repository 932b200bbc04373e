package rules_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rule/ruletest"
	"github.com/lugwright/lugwright/wiring/rules"
)

const jobs = "../../testdata/rules"

// TestJobs runs all rules over the jobs of each rule. Those that break it break nothing
// else; those that hold are the nearest carts that do not.
func TestJobs(t *testing.T) {
	files, err := filepath.Glob(jobs + "/*/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no jobs: %v", err)
	}
	for _, file := range files {
		id, name := filepath.Base(filepath.Dir(file)), filepath.Base(file)
		if id == "kits" {
			continue
		}
		t.Run(id+"/"+name, func(t *testing.T) {
			file := filepath.ToSlash(file)
			result := ruletest.Job(t, file, rules.All())
			checkOnly(t, id, strings.HasPrefix(name, "breaks"), result)
		})
	}
}

// checkOnly holds a job to what its name says.
func checkOnly(t *testing.T, id string, breaks bool, result rule.Result) {
	t.Helper()
	found := false
	for _, f := range result.Open(diag.Note) {
		if !f.At.Known() || f.Advice == "" || len(f.Subjects) == 0 {
			t.Errorf("a finding without a place, an advice or a subject: %+v", f)
		}
		if f.Rule == id && strings.Contains(f.At.File, "/"+id+"/") {
			found = true
		}
		if f.Level == diag.Error && f.Rule != id {
			t.Errorf("it breaks %s too", f.Rule)
		}
	}
	if found != breaks {
		t.Errorf("breaks %s: %v", id, found)
	}
}

// TestEachRuleHasJobs asks for a job that breaks each rule and one that does not.
func TestEachRuleHasJobs(t *testing.T) {
	for _, r := range rules.All() {
		for _, name := range []string{"breaks.yaml", "holds.yaml"} {
			if files, _ := filepath.Glob(filepath.Join(jobs, r.ID, name)); len(files) == 0 {
				t.Errorf("%s has no %s", r.ID, name)
			}
		}
	}
}
