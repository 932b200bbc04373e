package render

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFileName(t *testing.T) {
	for _, c := range []struct {
		job   string
		sheet int
		title string
		want  string
	}{
		{"TP-14", 1, "48 V", "TP-14-1-48V.svg"},
		{"TP-14", 12, "12 V lights and horn", "TP-14-12-12V-lights-and-horn.svg"},
		{"TP-14", 2, "", "TP-14-2.svg"},
		{"2026/14: Müller", 1, "12 V", "2026-14-Müller-1-12V.svg"},
		{"CON", 1, "", "CON-1.svg"}, // a device's name on some systems, but not with something behind it
		{"../../x", 1, "a\\b", "x-1-a-b.svg"},
		{"a.b. ", 1, "c?", "a-b-1-c.svg"},
		{"", 1, "***", "job-1.svg"},
		{strings.Repeat("n", 200), 1, strings.Repeat("t-", 200), strings.Repeat("n", 60) + "-1-" + strings.Repeat("t-", 29) + "t.svg"},
	} {
		if got := fileName(c.job, c.sheet, c.title, "svg"); got != c.want {
			t.Errorf("fileName(%q, %d, %q) = %q, want %q", c.job, c.sheet, c.title, got, c.want)
		}
	}
}

func TestFileNameIsPlain(t *testing.T) {
	plain := regexp.MustCompile(`^[\p{L}\p{Nd}_-]+\.svg$`)
	rapid.Check(t, func(t *rapid.T) {
		name := fileName(rapid.String().Draw(t, "job"), rapid.IntRange(1, 99).Draw(t, "sheet"), rapid.String().Draw(t, "title"), "svg")
		if !plain.MatchString(name) || strings.HasPrefix(name, "-") {
			t.Fatalf("%q", name)
		}
	})
}
