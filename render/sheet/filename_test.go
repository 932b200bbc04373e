package sheet

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
)

func fileName(job string, number int, kind, title string) string {
	d := &Document{Book: &Book{Harness: &wiring.Harness{Identity: wiring.Identity{Number: job}}}}
	return d.FileName(&Sheet{Entry: Entry{Number: number, Kind: &Kind{ID: kind}, Title: title}}, "svg")
}

func TestFileName(t *testing.T) {
	for _, c := range []struct {
		job         string
		number      int
		kind, title string
		want        string
	}{
		{"TP-14", 1, "schematic", "48 V", "TP-14-1-schematic-48V.svg"},
		{"TP-14", 12, "schematic", "12 V lights and horn", "TP-14-12-schematic-12V-lights-and-horn.svg"},
		{"TP-14", 2, "cover", "", "TP-14-2-cover.svg"},
		{"2026/14: Müller", 1, "x", "12 V", "2026-14-Müller-1-x-12V.svg"},
		{"CON", 1, "x", "", "CON-1-x.svg"}, // a device's name on some systems, but not with something behind it
		{"../../x", 1, "k", "a\\b", "x-1-k-a-b.svg"},
		{"a.b. ", 1, "k", "c?", "a-b-1-k-c.svg"},
		{"", 1, "k", "***", "job-1-k.svg"},
		{strings.Repeat("n", 200), 1, "k", strings.Repeat("t-", 200), strings.Repeat("n", 60) + "-1-k-" + strings.Repeat("t-", 29) + "t.svg"},
	} {
		if got := fileName(c.job, c.number, c.kind, c.title); got != c.want {
			t.Errorf("the file of sheet %d, %s %q, of %q is %q, want %q", c.number, c.kind, c.title, c.job, got, c.want)
		}
	}
}

func TestFileNameIsPlain(t *testing.T) {
	plain := regexp.MustCompile(`^[\p{L}\p{Nd}_-]+\.svg$`)
	rapid.Check(t, func(t *rapid.T) {
		name := fileName(rapid.String().Draw(t, "job"), rapid.IntRange(1, 99).Draw(t, "sheet"), "kind", rapid.String().Draw(t, "title"))
		if !plain.MatchString(name) || strings.HasPrefix(name, "-") {
			t.Fatalf("%q", name)
		}
	})
}
