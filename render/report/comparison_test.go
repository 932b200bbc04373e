package report

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
	"github.com/lugwright/lugwright/wiring/job"
)

// conversion compares a shipped example, which is invented, with its cart as it came.
func conversion(t *testing.T, name string) Comparison {
	t.Helper()
	file := filepath.Join("..", "..", "examples", "tern-point", "jobs", name+".yaml")
	var carts [2]*wiring.Harness
	for i, load := range []func() (*wiring.Harness, error){
		func() (*wiring.Harness, error) { h, _, err := job.LoadBefore(file, job.Options{}); return h, err },
		func() (*wiring.Harness, error) { h, _, err := job.Load(file, job.Options{}); return h, err },
	} {
		h, err := load()
		if err != nil || h == nil {
			t.Fatal(err)
		}
		carts[i] = h
	}
	return Comparison{
		Version: "0", Old: Compared{File: "old.yaml", AsFound: true, Harness: carts[0]},
		New: Compared{File: "new.yaml", Harness: carts[1]}, Difference: difference.Between(carts[0], carts[1]),
	}
}

func TestComparisonKeepsItsSchema(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		var text bytes.Buffer
		if err := ComparisonJSON(&text, conversion(t, name)); err != nil {
			t.Fatal(err)
		}
		checkSchema(t, ComparisonSchema(), text.Bytes(),
			[2]string{`"version": 1,`, `"version": 2,`},
			[2]string{`"class": "moved"`, `"class": "carried"`},
			[2]string{`"what": "wire"`, `"what": "pipe"`},
			[2]string{`: "gone"`, `: "lost"`},
			[2]string{`"revision"`, `"revisions"`})
	}
}

// Nothing is wider than paper; and a comparison of a job with itself says so.
func TestComparisonText(t *testing.T) {
	c := conversion(t, "tern-point-truck-1")
	var text bytes.Buffer
	if err := ComparisonText(&text, c, TextOptions{}); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(text.String()) {
		if columns(strings.TrimSuffix(line, "\n")) > readingsWidth {
			t.Errorf("too wide: %q", line)
		}
	}
	text.Reset()
	c.Old, c.Difference = c.New, difference.Between(c.New.Harness, c.New.Harness)
	if err := ComparisonText(&text, c, TextOptions{}); err != nil {
		t.Fatal(err)
	}
	if want := "No differences.\n"; !strings.HasSuffix(text.String(), want) {
		t.Errorf("%q does not end in %q", text.String(), want)
	}
}

func TestChangeWords(t *testing.T) {
	for _, c := range []struct {
		change difference.Change
		want   string
	}{
		{difference.Change{Class: difference.Refused, Key: "fuse 3", New: "5 A"}, "re-fused, fuse 3: from nothing to 5 A"},
		{difference.Change{Class: difference.Resized, Key: "size", Old: "14 AWG", New: "12 AWG"}, "resized from 14 AWG to 12 AWG"},
		{difference.Change{Class: difference.Moved, Key: "place", Old: "dash", New: "roof"}, "moved, place: from dash to roof"},
		{difference.Change{Class: difference.Moved, Old: "K1.in", New: "F1.out"}, "moved from K1.in to F1.out"},
		{difference.Change{Class: difference.Extended, New: "GN 18 AWG"}, "extended by GN 18 AWG"},
		{difference.Change{Class: difference.Shortened, Old: "GN 18 AWG"}, "shortened from GN 18 AWG to nothing"},
		{difference.Change{Class: difference.Covered, Old: "P2", New: "capped"}, "capped, was on P2"},
		{difference.Change{Class: difference.Stacked, Old: "W1", New: "W2 W1"}, "was W1, is W2 W1"},
	} {
		if got := changeWords(c.change); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
