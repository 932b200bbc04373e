package job_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring/job"
)

// FORMAT.md is what Reference writes now.
func TestFORMAT(t *testing.T) {
	want := job.Reference()
	if *update {
		if err := os.WriteFile("FORMAT.md", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile("FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Errorf("FORMAT.md is stale: go test ./wiring/job -run FORMAT -update\n%s", diff)
	}
}

// Every line of a table has as many cells as its heading.
func TestReferenceTables(t *testing.T) {
	cells := 0
	for _, line := range strings.Split(job.Reference(), "\n") {
		if !strings.HasPrefix(line, "|") {
			cells = 0
			continue
		}
		n := strings.Count(line, "|") - strings.Count(line, `\|`)
		if cells == 0 {
			cells = n
		}
		if n != cells {
			t.Errorf("%d cells in a table of %d: %s", n-1, cells-1, line)
		}
	}
}
