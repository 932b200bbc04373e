package catalog

import "testing"

func TestShippedKindsReadWithoutFindings(t *testing.T) {
	for _, f := range Findings() {
		t.Errorf("%s:%d:%d: %s %s", f.At.File, f.At.Line, f.At.Col, f.Message, f.Advice)
	}
	for _, d := range Kinds() {
		if d == nil || d.Title == "" || d.Letter == "" {
			t.Errorf("kind %+v lacks a title or a letter", d)
		}
	}
}
