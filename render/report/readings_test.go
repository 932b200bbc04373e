package report

import (
	"bytes"
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/meter"
)

// surveyed settles the states of a shipped example, which is invented.
func surveyed(t *testing.T, name string) *meter.Survey {
	t.Helper()
	h, findings, err := job.Load(filepath.Join("..", "..", "examples", "tern-point", "jobs", name+".yaml"), job.Options{})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	v, err := meter.New(h).Survey(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestReadingsKeepTheirSchemas validates by an independent implementation of JSON Schema.
func TestReadingsKeepTheirSchemas(t *testing.T) {
	v := surveyed(t, "tern-point-14")
	for name, c := range map[string]struct {
		schema []byte
		write  func(io.Writer) error
	}{
		"readings": {ReadingsSchema(), func(w io.Writer) error { return ReadingsJSON(w, Readings{Survey: v, All: true}) }},
		"trace": {TraceSchema(), func(w io.Writer) error {
			return TraceJSON(w, Trace{Survey: v, Spots: v.Bench.Terminals()})
		}},
	} {
		compiled := compile(t, c.schema)
		var text bytes.Buffer
		if err := c.write(&text); err != nil {
			t.Fatal(err)
		}
		for _, damage := range []string{"", `"version": 1,`, `"proof": "sound"`} {
			out := text.Bytes()
			if damage != "" {
				out = bytes.Replace(out, []byte(damage), []byte(strings.NewReplacer("1", "2", "sound", "other").Replace(damage)), 1)
			}
			value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out))
			if err != nil {
				t.Fatal(err)
			}
			if err := compiled.Validate(value); (err == nil) != (damage == "") {
				t.Errorf("%s with %s damaged: %v", name, damage, err)
			}
		}
	}
}

// No line of a table is wider than the terminal.
func TestReadingsKeepTheWidth(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		var text bytes.Buffer
		if err := ReadingsText(&text, Readings{Survey: surveyed(t, name)}, TextOptions{}); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(text.String()) {
			if columns(strings.TrimSuffix(line, "\n")) > readingsWidth && !strings.HasPrefix(line, "TP-") {
				t.Errorf("%s: %q", name, line)
			}
		}
	}
}

func TestUnformula(t *testing.T) {
	for text, want := range map[string]string{"=1+1": "'=1+1", "+12": "'+12", "-x": "'-x", "@a": "'@a", "'a": "''a", "G1.+": "G1.+", "": ""} {
		if got := unformula(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}
