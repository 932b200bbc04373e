package job_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring/job"
)

func TestInsert(t *testing.T) {
	part := job.Insertion{Section: "parts", Lines: []string{"E9: {kind: lamp}"}}
	wire := job.Insertion{Section: "wires", Lines: []string{"W99: {from: A1.1, to: E9.+}", "W100: {from: E9.-, to: A1.n}"}}
	tests := []struct {
		name, text, want string
		in               []job.Insertion
	}{
		{"at the ends of sections", "job: T\nparts:\n    S1: {kind: rocker}   # here\n    # the last\n\n# wires follow\nwires:\n  W1: {from: S1.in,\n    to: S1.out}\nlimits: {}\n",
			"job: T\nparts:\n    S1: {kind: rocker}   # here\n    # the last\n    E9: {kind: lamp}\n\n# wires follow\nwires:\n  W1: {from: S1.in,\n    to: S1.out}\n  W99: {from: A1.1, to: E9.+}\n  W100: {from: E9.-, to: A1.n}\nlimits: {}\n",
			[]job.Insertion{part, wire}},
		{"begun", "job: T\nuse: [a]\nlimits: {}\n", "job: T\nuse: [a]\n\nparts:\n  E9: {kind: lamp}\nlimits: {}\n", []job.Insertion{part}},
		{"begun at the end", "job: T", "job: T\n\nwires:\n  W99: {from: A1.1, to: E9.+}\n  W100: {from: E9.-, to: A1.n}\n", []job.Insertion{wire}},
		{"line ends", "job: T\r\nparts:\r\n  S1: {kind: rocker}", "job: T\r\nparts:\r\n  S1: {kind: rocker}\r\n  E9: {kind: lamp}\r\n", []job.Insertion{part}},
		{"empty section", "job: T\nparts: # none yet\nwires:\n", "job: T\nparts: # none yet\n  E9: {kind: lamp}\nwires:\n", []job.Insertion{part}},
		{"list at the margin", "job: T\nuse:\n- a\n- b\n# end\n", "job: T\nuse:\n- a\n- b\n\nparts:\n  E9: {kind: lamp}\n# end\n", []job.Insertion{part}},
		{"nothing", "job: T\n", "job: T\n", []job.Insertion{{Section: "parts"}}},
	}
	for _, tt := range tests {
		got, err := job.Insert([]byte(tt.text), tt.in...)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if diff := cmp.Diff(tt.want, string(got)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
	for text, want := range map[string]string{
		"job: T\nparts: {S1: {kind: rocker}}\n": "job: parts: is followed by {S1: {kind: rocker}} on its own line: put its entries on lines of their own first",
		"job: \xff\n":                           "job: the file is not UTF-8 text",
	} {
		if _, err := job.Insert([]byte(text), part); err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	if _, err := job.Insert([]byte("job: T\n"), job.Insertion{Section: "wirse", Lines: []string{"x"}}); err == nil {
		t.Error("wirse is no section")
	}
}

// What is inserted into the example jobs is read, and all else stays as it was.
func TestInsertIntoExamples(t *testing.T) {
	names, err := filepath.Glob("testdata/format-examples/jobs/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal(err)
	}
	parts := []string{"X90: {kind: splice}", "X91: {kind: splice}"}
	wires := []string{"W990: {from: X90, to: X91, colour: BK, size: 14 AWG, length: 1 ft}"}
	for _, name := range names {
		before, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		after, err := job.Insert(before, job.Insertion{Section: "parts", Lines: parts}, job.Insertion{Section: "wires", Lines: wires})
		if err != nil {
			t.Fatal(err)
		}
		back := string(after)
		for _, line := range append(parts, wires...) {
			back = strings.Replace(back, "  "+line+"\n", "", 1)
		}
		if diff := cmp.Diff(string(before), back); diff != "" {
			t.Errorf("%s: more than lines were inserted:\n%s", name, diff)
		}
		files := fstest.MapFS{}
		if err := filepath.WalkDir("testdata/format-examples", func(path string, d os.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := os.ReadFile(path)
			files[strings.TrimPrefix(filepath.ToSlash(path), "testdata/format-examples/")] = &fstest.MapFile{Data: text}
			return err
		}); err != nil {
			t.Fatal(err)
		}
		file := "jobs/" + filepath.Base(name)
		was := load(t, files, file)
		files[file] = &fstest.MapFile{Data: after}
		is := load(t, files, file)
		if len(is.Parts) != len(was.Parts)+2 || len(is.Wires) != len(was.Wires)+1 || is.Wire("W990") == nil {
			t.Errorf("%s: %d parts and %d wires became %d and %d", name, len(was.Parts), len(was.Wires), len(is.Parts), len(is.Wires))
		}
	}
}
