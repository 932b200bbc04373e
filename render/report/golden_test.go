package report

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/diag"
)

var update = flag.Bool("update", false, "rewrite the golden files of this package")

// TestGolden compares whole outputs, since a report is read as a whole.
func TestGolden(t *testing.T) {
	text := func(r Report, o TextOptions) func(io.Writer) error {
		return func(w io.Writer) error { return Text(w, r, o) }
	}
	warnings := sampleReport()
	warnings.Least = diag.Warning
	for name, write := range map[string]func(io.Writer) error{
		"text.txt":     text(sampleReport(), TextOptions{}),
		"narrow.txt":   text(sampleReport(), TextOptions{Width: 60}),
		"colour.txt":   text(sampleReport(), TextOptions{Colour: true}),
		"warnings.txt": text(warnings, TextOptions{}),
		"jobs.txt":     text(sampleBroken(), TextOptions{}),
		"findings.txt": func(w io.Writer) error {
			return Findings(w, warnings, TextOptions{})
		},
		"report.json":        func(w io.Writer) error { return JSON(w, sampleReport()) },
		"broken.json":        func(w io.Writer) error { return JSON(w, sampleBroken()) },
		"report.sarif":       func(w io.Writer) error { return SARIF(w, sampleReport()) },
		"broken.sarif":       func(w io.Writer) error { return SARIF(w, sampleBroken()) },
		"explain.txt":        func(w io.Writer) error { return Explain(w, sampleRules()[0], TextOptions{Width: 72}) },
		"explain-bare.txt":   func(w io.Writer) error { return Explain(w, sampleRules()[1], TextOptions{}) },
		"explain-colour.txt": func(w io.Writer) error { return Explain(w, sampleRules()[0], TextOptions{Colour: true}) },
		"rules.txt":          func(w io.Writer) error { return Rules(w, sampleRules(), TextOptions{}) },
	} {
		t.Run(name, func(t *testing.T) {
			var got bytes.Buffer
			if err := write(&got); err != nil {
				t.Fatal(err)
			}
			checkGolden(t, filepath.Join("testdata", name), got.Bytes())
		})
	}
}

func checkGolden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v (go test -update writes it)", err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s differs (-want +got); if that is meant: go test -update\n%s", file, diff)
	}
}

// failing is a writer whose disk is full.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteErrorsAreReturned(t *testing.T) {
	r := sampleReport()
	for name, write := range map[string]func(io.Writer) error{
		"text":     func(w io.Writer) error { return Text(w, r, TextOptions{}) },
		"findings": func(w io.Writer) error { return Findings(w, r, TextOptions{}) },
		"json":     func(w io.Writer) error { return JSON(w, r) },
		"sarif":    func(w io.Writer) error { return SARIF(w, r) },
		"explain":  func(w io.Writer) error { return Explain(w, r.Rules[0], TextOptions{}) },
		"rules":    func(w io.Writer) error { return Rules(w, r.Rules, TextOptions{}) },
	} {
		if err := write(failing{}); err != io.ErrShortWrite {
			t.Errorf("%s: error %v is lost", name, err)
		}
	}
}
