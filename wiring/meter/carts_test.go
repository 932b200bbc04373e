package meter_test

import (
	"context"
	"path/filepath"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/meter"
)

// carts are the shipped examples, all invented.
var carts = []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"}

// cart reads one of them.
func cart(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load(filepath.Join("..", "..", "examples", "tern-point", "jobs", name+".yaml"), job.Options{})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	return h
}

// text reads a job that is one text.
func text(t testing.TB, yaml string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load("bench.yaml", job.Options{FS: fstest.MapFS{"bench.yaml": {Data: []byte(yaml)}}})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	return h
}

// survey settles all states of a harness, which must all settle.
func survey(t testing.TB, h *wiring.Harness) *meter.Survey {
	t.Helper()
	v, err := meter.New(h).Survey(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if len(v.Failed) > 0 {
		t.Fatal(v.Failed[0])
	}
	return v
}
