package schematictest_test

import (
	"os"
	"testing"

	"github.com/lugwright/lugwright/render/schematic/schematictest"
	"github.com/lugwright/lugwright/wiring/job"
)

// Every variant is a job that can be read, and no two of a family are the same.
func TestVariantsAreJobs(t *testing.T) {
	shipped := os.DirFS("../../../examples/tern-point")
	for _, f := range schematictest.Families() {
		seen := map[string]int{}
		for n := range 200 {
			v, err := f.Variant(shipped, n)
			if err != nil {
				t.Fatal(err)
			}
			h, found, err := job.Load(v.File, job.Options{FS: v.FS})
			if err != nil || h == nil {
				t.Fatalf("%s: %v %v\n%s", v.Name, err, found, v.Text)
			}
			seen[v.Text]++
		}
		if len(seen) < 200 {
			t.Errorf("%s: only %d of 200 variants differ", f.Name, len(seen))
		}
	}
}
