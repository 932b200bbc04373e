// Package jobtest gives tests the carts that ship.
package jobtest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// Examples lists the names of the shipped example jobs, which are invented, the main one
// first.
func Examples() []string {
	return []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"}
}

// Example reads a shipped example by its name, whichever package's folder the test runs in.
func Example(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load("jobs/"+name+".yaml", job.Options{FS: os.DirFS(folder(t))})
	if err != nil || h == nil {
		t.Fatalf("%s cannot be read: %v\n%v", name, err, findings)
	}
	return h
}

// folder finds the examples from the folder of a package upwards.
func folder(t testing.TB) string {
	t.Helper()
	at, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		found := filepath.Join(at, "examples", "tern-point")
		if _, err := os.Stat(found); err == nil {
			return found
		}
		up := filepath.Dir(at)
		if up == at {
			t.Fatal("no folder examples/tern-point here or above")
		}
		at = up
	}
}
