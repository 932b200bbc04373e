package job_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/rogpeppe/go-internal/txtar"
)

// FuzzLoad reads an archive as a job with its layers. Whatever it holds, reading ends
// without a panic; a harness keeps its promises, and reading again says the same.
func FuzzLoad(f *testing.F) {
	names, err := filepath.Glob("testdata/faults/*.txtar")
	if err != nil || len(names) == 0 {
		f.Fatalf("no cases: %v", err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	base, err := txtar.ParseFile("testdata/faults/base.txtar")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		a := txtar.Parse(text)
		if len(a.Files) > 20 || len(text) > 1<<16 {
			return
		}
		for i := range a.Files {
			a.Files[i].Name = strings.Trim(a.Files[i].Name, "/")
		}
		files := archiveFS(base, a)
		if _, ok := files["job.yaml"]; !ok {
			files["job.yaml"] = &fstest.MapFile{Data: []byte("job: T-1\nuse: [cart, kit]\n")}
		}
		h, findings, err := job.Load("job.yaml", job.Options{FS: files})
		if err != nil {
			return
		}
		if (h == nil) != (diag.Worst(findings) == diag.Error) {
			t.Errorf("harness: %v, findings:\n%s", h != nil, listing(findings))
		}
		for _, x := range findings {
			if x.Message == "" || x.At.File == "" || x.At.Line < 1 || x.At.Col < 1 || x.At.EndCol < x.At.Col {
				t.Errorf("a finding without words or place: %+v", x)
			}
		}
		_, again, _ := job.Load("job.yaml", job.Options{FS: files})
		if listing(again) != listing(findings) {
			t.Errorf("first\n%s\nthen\n%s", listing(findings), listing(again))
		}
		if h != nil {
			checkHarness(t, h)
			if err := job.WriteCSV(&bytes.Buffer{}, h.Wires); err != nil {
				t.Error(err)
			}
		}
	})
}
