package report

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/headroom"
)

func TestHeadroomKeepsItsSchemaAndWidth(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		room, err := headroom.Of(context.Background(), surveyed(t, name).Bench.Harness)
		if err != nil {
			t.Fatal(err)
		}
		r := Headroom{File: name, Room: room}
		keepsSchema(t, HeadroomSchema(), func(w io.Writer) error { return HeadroomJSON(w, r) },
			map[string]string{`"version": 1,`: `"version": 2,`, `"number": 1,`: `"number": 0,`, `"free": false`: `"free": "no"`})
		var text bytes.Buffer
		if err := HeadroomText(&text, r, TextOptions{}); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(text.String()) {
			if columns(strings.TrimSuffix(line, "\n")) > readingsWidth {
				t.Errorf("%s: %q", name, line)
			}
		}
		if err := HeadroomText(failing{}, r, TextOptions{}); err != io.ErrShortWrite {
			t.Errorf("error %v is lost", err)
		}
	}
}
