package job_test

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write what the program says now as what is wanted")

// TestFaults reads every archive of testdata/faults. Its files lie over those of
// base.txtar; `job.yaml` is loaded, or the file that the first line of the comment names
// behind "load"; `want` holds every finding, as FILE:LINE:COL-ENDCOL: LEVEL: MESSAGE |
// ADVICE, and the related places indented below.
func TestFaults(t *testing.T) {
	base, err := txtar.ParseFile("testdata/faults/base.txtar")
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob("testdata/faults/*.txtar")
	if err != nil || len(names) < 2 {
		t.Fatalf("no cases: %v", err)
	}
	for _, name := range names {
		if filepath.Base(name) == "base.txtar" {
			continue
		}
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			t.Parallel()
			testFault(t, name, base)
		})
	}
}

func testFault(t *testing.T, name string, base *txtar.Archive) {
	a, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	files := archiveFS(base, a)
	want := ""
	if f, ok := files["want"]; ok {
		want = string(f.Data)
		delete(files, "want")
	}
	file := "job.yaml"
	if first, _, _ := strings.Cut(string(a.Comment), "\n"); strings.HasPrefix(first, "load ") {
		file = strings.TrimPrefix(first, "load ")
	}
	h, findings, err := job.Load(file, job.Options{FS: files})
	got := listing(findings)
	if err != nil {
		got += "call: " + err.Error() + "\n"
	}
	if broken := diag.Worst(findings) == diag.Error || err != nil; broken != (h == nil) {
		t.Errorf("errors: %v, and the harness is nil: %v", broken, h == nil)
	}
	if *update {
		rewriteWant(t, name, a, got)
		return
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
}

// archiveFS lays archives over each other, the last on top.
func archiveFS(archives ...*txtar.Archive) fstest.MapFS {
	files := fstest.MapFS{}
	for _, a := range archives {
		for _, f := range a.Files {
			data := f.Data
			switch {
			case strings.HasSuffix(f.Name, "@link"):
				files[strings.TrimSuffix(f.Name, "@link")] = &fstest.MapFile{Data: []byte(strings.TrimSpace(string(data))), Mode: fs.ModeSymlink}
				continue
			case strings.HasSuffix(f.Name, "@gone"):
				delete(files, strings.TrimSuffix(f.Name, "@gone"))
				continue
			}
			files[f.Name] = &fstest.MapFile{Data: data}
		}
	}
	return files
}

func listing(findings []diag.Finding) string {
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&b, "%s:%d:%d-%d: %s: %s", f.At.File, f.At.Line, f.At.Col, f.At.EndCol, f.Level, f.Message)
		if f.Advice != "" {
			b.WriteString(" | " + f.Advice)
		}
		b.WriteByte('\n')
		for _, r := range f.Related {
			fmt.Fprintf(&b, "  %s:%d:%d: %s\n", r.Span.File, r.Span.Line, r.Span.Col, r.Label)
		}
	}
	return b.String()
}

func rewriteWant(t *testing.T, name string, a *txtar.Archive, got string) {
	t.Helper()
	var kept []txtar.File
	for _, f := range a.Files {
		if f.Name != "want" {
			kept = append(kept, f)
		}
	}
	a.Files = append(kept, txtar.File{Name: "want", Data: []byte(got)})
	if err := os.WriteFile(name, txtar.Format(a), 0o644); err != nil {
		t.Fatal(err)
	}
}

// load reads a job that must be without faults.
func load(t testing.TB, fsys fs.FS, file string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load(file, job.Options{FS: fsys})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		t.Fatalf("%s cannot be read:\n%s", file, listing(findings))
	}
	return h
}
