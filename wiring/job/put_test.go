package job_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/job"
)

// A fuse lands in the style of the file, and all else stays as it was.
func TestPutFuse(t *testing.T) {
	for name, tt := range map[string]struct{ text, want string }{
		"in brackets": {"job: T\nparts:\n  A1: {fuses: {1: 10 A}}   # here\n  S1: {kind: rocker}\n",
			"job: T\nparts:\n  A1: {fuses: {1: 10 A, 5: 7.5 A}}   # here\n  S1: {kind: rocker}\n"},
		"no fuses yet":     {"job: T\nparts:\n  a1: {note: \"a } in quotes\"}\n", "job: T\nparts:\n  a1: {note: \"a } in quotes\", fuses: {5: 7.5 A}}\n"},
		"empty":            {"job: T\nparts:\n  A1: {fuses: { }}\n", "job: T\nparts:\n  A1: {fuses: {5: 7.5 A }}\n"},
		"over lines":       {"job: T\r\nparts:\r\n  A1: {fuses: {1: 10 A,   # lights }\r\n    2: 5 A\r\n  }}\r\n", "job: T\r\nparts:\r\n  A1: {fuses: {5: 7.5 A, 1: 10 A,   # lights }\r\n    2: 5 A\r\n  }}\r\n"},
		"block style":      {"job: T\nparts:\n  A1:\n    fuses:\n      1: 10 A # µ\n      2: 5 A\n", "job: T\nparts:\n  A1:\n    fuses:\n      5: 7.5 A\n      1: 10 A # µ\n      2: 5 A\n"},
		"block, no fuses":  {"job: T\r\nparts:\r\n  A1:\r\n    note: µ\r\n", "job: T\r\nparts:\r\n  A1:\r\n    fuses: {5: 7.5 A}\r\n    note: µ\r\n"},
		"no such part yet": {"job: T\n", "job: T\n\nparts:\n  A1: {fuses: {5: 7.5 A}}\n"},
	} {
		got, err := job.PutFuse([]byte(tt.text), "A1", 5, "7.5 A")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if diff := cmp.Diff(tt.want, string(got)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	for text, want := range map[string]string{
		"job: T\nparts:\n  A1: {fuses: {5: 1 A}}\n": "job: A1 has a fuse in channel 5 already",
		"job: T\nparts: {A1: {fuses: {5: 1 A}\n":    "job: the file cannot be read as it stands: check it first",
		"job: T\nparts:\n  A1: 5\n":                 "job: A1 is no map of keys",
	} {
		if _, err := job.PutFuse([]byte(text), "A1", 5, "7.5 A"); err == nil || err.Error() != want {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}
