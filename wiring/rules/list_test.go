package rules_test

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

func TestListIsComplete(t *testing.T) {
	if err := rule.Validate(rules.All()); err != nil {
		t.Fatal(err)
	}
	for i, id := range rules.IDs() {
		if r := rules.Find(strings.ToUpper(id)); r == nil || r.ID != id || rules.All()[i].ID != id {
			t.Errorf("%s is not found by its id", id)
		}
	}
	if rules.Find("no-such-rule") != nil {
		t.Error("a rule that does not exist is found")
	}
}

// TestExamplesOfTheText puts the wrong and the right lines of each rule into a job on the
// cart of testdata/rules: the first break the rule, the second do not.
func TestExamplesOfTheText(t *testing.T) {
	base := tree(t, jobs)
	for _, r := range rules.All() {
		t.Run(r.ID, func(t *testing.T) {
			if fs := ofRule(check(t, base, "example.yaml", "job: EX-1\nuse: [cart]\n"+r.Wrong), r); len(fs) == 0 {
				t.Error("the wrong lines do not break it")
			}
			for _, f := range ofRule(check(t, base, "example.yaml", "job: EX-2\nuse: [cart]\n"+r.Right), r) {
				t.Errorf("the right lines break it: %s:%d: %s", f.At.File, f.At.Line, f.Message)
			}
		})
	}
}

// ofRule lists the open findings of a rule at its own level or above.
func ofRule(result rule.Result, r *rule.Rule) []diag.Finding {
	var found []diag.Finding
	for _, f := range result.Open(r.Level) {
		if f.Rule == r.ID {
			found = append(found, f)
		}
	}
	return found
}

// tree reads a folder into memory.
func tree(t testing.TB, folder string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		inside, err := filepath.Rel(folder, name)
		files[filepath.ToSlash(inside)] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// fewPositions keeps the many carts of these tests quick: enough for what one or two switches
// do. The jobs of testdata/rules are looked at in all positions.
const fewPositions = 200

// check adds a job to a tree and runs all rules over it.
func check(t testing.TB, base fstest.MapFS, name, text string) rule.Result {
	t.Helper()
	files := fstest.MapFS{name: {Data: []byte(text)}}
	for each, file := range base {
		files[each] = file
	}
	h, findings, err := job.Load(name, job.Options{FS: files})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		for _, f := range findings {
			t.Errorf("%s:%d:%d: %s", f.At.File, f.At.Line, f.At.Col, f.Message)
		}
		t.Fatalf("the job does not load:\n%s", text)
	}
	result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{Positions: fewPositions})
	if err != nil {
		t.Fatal(err)
	}
	return result
}

// TestSameInputSameFindings runs the rules twice over each example.
func TestSameInputSameFindings(t *testing.T) {
	base := tree(t, examples)
	var names []string
	for name := range base {
		if strings.HasPrefix(name, "jobs/") {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	for _, name := range names {
		first, second := render(check(t, base, name, string(base[name].Data))), render(check(t, base, name, string(base[name].Data)))
		if first != second {
			t.Errorf("%s: two runs differ:\n%s\n%s", name, first, second)
		}
	}
}

func render(r rule.Result) string {
	var b strings.Builder
	for _, f := range r.Findings {
		b.WriteString(f.Rule + f.Message + f.Detail + f.Advice + strings.Join(f.Subjects, " ") + "\n")
	}
	for _, n := range r.NotChecked {
		b.WriteString(n.Rule + n.String() + "\n")
	}
	return b.String()
}
