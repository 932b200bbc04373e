package cases

import (
	"io/fs"
	"os"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/settle"
)

// root is the folder of the jobs, with a shop.yaml and layers of its own.
const root = "../../testdata/cases"

// withFiles is a folder with some more files in it.
type withFiles struct {
	fs.FS
	more fstest.MapFS
}

func (w withFiles) Open(name string) (fs.File, error) {
	if _, ok := w.more[name]; ok {
		return w.more.Open(name)
	}
	return w.FS.Open(name)
}

// written loads a job that is one text, among the jobs of a folder.
func written(t testing.TB, folder, text string) *wiring.Harness {
	t.Helper()
	files := withFiles{os.DirFS(folder), fstest.MapFS{"jobs/written.yaml": {Data: []byte(text)}}}
	h, findings, err := job.Load("jobs/written.yaml", job.Options{FS: files})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		for _, f := range findings {
			t.Errorf("%s:%d: %s", f.At.File, f.At.Line, f.Message)
		}
		t.FailNow()
	}
	return h
}

// at settles one of the harness's states.
func at(t testing.TB, net *settle.Network, state string) *settle.Point {
	t.Helper()
	s := net.Harness().State(state)
	if s == nil {
		t.Fatalf("there is no state %s", state)
	}
	p, err := net.Settle(t.Context(), s, settle.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func terminal(t testing.TB, h *wiring.Harness, ref string) *wiring.Terminal {
	t.Helper()
	found := h.Terminal(ref)
	if found == nil {
		t.Fatalf("there is no terminal %s", ref)
	}
	return found
}

// refs names elements: "F11.fuse".
func refs(es []wiring.Element) (names []string) {
	for _, e := range es {
		names = append(names, e.Base().Ref())
	}
	return names
}
