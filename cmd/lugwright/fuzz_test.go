package main

import (
	"strings"
	"testing"
	"testing/fstest"
)

// FuzzCall types anything behind the program's name. Whatever it is, the program answers
// with one of its exit codes and says something, and it never panics. There is no job that
// could be drawn among the files, so nothing is written.
func FuzzCall(f *testing.F) {
	for _, line := range []string{
		"", "help", "help draw", "version", "check a.yaml", "check --level=note --output json a.yaml b.yaml",
		"draw a.yaml -o x --sheet 1,2 --paper letter", "explain off-means-off", "kinds reducer", "states a.yaml",
		"check --", "check -- -", "-", "--", "draw -o", "draw -o= a.yaml", "check --root .. a.yaml", "check \x00",
		"check /a.yaml", "check ../a.yaml", `check \a.yaml`, "check .", "kinds é",
	} {
		f.Add(line)
	}
	files := fstest.MapFS{
		"a.yaml": {Data: []byte("job: 1\ntilte: none\n")},
		"b.yaml": {Data: []byte("job: 2\nparts: {E1: {kind: lamp")},
	}
	f.Fuzz(func(t *testing.T, line string) {
		code, out, err := try(files, strings.Split(line, " ")...)
		if code < clean || code > unwritten {
			t.Errorf("exit code %d", code)
		}
		if out+err == "" {
			t.Error("nothing is said")
		}
	})
}
