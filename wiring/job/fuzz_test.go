package job_test

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/rogpeppe/go-internal/txtar"
)

// FuzzLoad reads a job, an add-on and a wire list over the platform and kit of the test
// cases. Whatever they hold, reading ends without a panic; a harness keeps its promises,
// and reading again says the same.
func FuzzLoad(f *testing.F) {
	base, err := txtar.ParseFile("testdata/faults/base.txtar")
	if err != nil {
		f.Fatal(err)
	}
	seedFuzz(f)
	f.Fuzz(func(t *testing.T, text, addon, list string) {
		if len(text)+len(addon)+len(list) > 1<<15 {
			return
		}
		files := archiveFS(base)
		files["job.yaml"] = &fstest.MapFile{Data: []byte(text)}
		files["addons/light.yaml"] = &fstest.MapFile{Data: []byte(addon)}
		files["list.csv"] = &fstest.MapFile{Data: []byte(list)}
		h, findings, err := job.Load("job.yaml", job.Options{FS: files})
		if err != nil {
			t.Fatal(err)
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

// seedFuzz begins with the cases of the other tests.
func seedFuzz(f *testing.F) {
	f.Helper()
	var names []string
	for _, pattern := range []string{"testdata/faults/*.txtar", "testdata/layers/*.txtar"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			f.Fatalf("no cases: %v", err)
		}
		names = append(names, found...)
	}
	for _, name := range names {
		a, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		var text, addon, list string
		for _, file := range a.Files {
			switch {
			case file.Name == "job.yaml":
				text = string(file.Data)
			case strings.HasSuffix(file.Name, ".csv"):
				list = string(file.Data)
			case strings.HasPrefix(file.Name, "addons/"):
				addon = string(file.Data)
			}
		}
		if text != "" {
			f.Add(text, addon, list)
		}
	}
}
