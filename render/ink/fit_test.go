package ink

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCut(t *testing.T) {
	for _, c := range []struct {
		s     string
		width float64
		want  string
	}{
		{"motor controller", 100, "motor controller"},
		{"motor controller", Width("motor controller", Regular, 2.5), "motor controller"},
		{"motor controller", Width("motor …", Regular, 2.5), "motor…"}, // no gap before the dots
		{"motor controller", Width("motor co…", Regular, 2.5) + 0.01, "motor co…"},
		{"motor controller", Width("…", Regular, 2.5), "…"},
		{"motor controller", 1, ""},
		{"", 1, ""},
	} {
		if got := Cut(c.s, Regular, 2.5, c.width); got != c.want {
			t.Errorf("Cut(%q, %.2f) = %q, want %q", c.s, c.width, got, c.want)
		}
	}
}

func TestFitNeverOverflows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(rapid.String().Draw(t, "s"))
		face := rapid.SampledFrom(Faces()).Draw(t, "face")
		width := rapid.Float64Range(0, 80).Draw(t, "width")
		capital, got := Fit(s, face, 3.5, 2.5, width)
		if Width(got, face, capital) > width {
			t.Fatalf("%q at %v mm is wider than %v", got, capital, width)
		}
		if capital > 3.5 || capital < 2.5 {
			t.Fatalf("capital height %v", capital)
		}
		if got != s && capital != 2.5 {
			t.Fatalf("%q was cut at %v mm, before it was as small as allowed", s, capital)
		}
	})
}

func TestWrap(t *testing.T) {
	width := Width("never joined to", Regular, 2.5)
	for _, c := range []struct {
		s    string
		most int
		want []string
	}{
		{"", 0, nil},
		{"one", 0, []string{"one"}},
		{"12 V is never joined to 48 V", 0, []string{"12 V is never", "joined to 48 V"}},
		{"12 V is never joined to 48 V", 1, []string{Cut("12 V is never joined to 48 V", Regular, 2.5, width)}},
		{"electroencephalographically so", 0, []string{Cut("electroencephalographically", Regular, 2.5, width), "so"}},
	} {
		if got := Wrap(c.s, Regular, 2.5, width, c.most); !slices.Equal(got, c.want) {
			t.Errorf("Wrap(%q, %d) = %q, want %q", c.s, c.most, got, c.want)
		}
	}
}

func TestWrapKeepsEveryWordThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-z]{1,8}`)).Draw(t, "words")
		lines := Wrap(strings.Join(words, " "), Regular, 2.5, 40, 0)
		if got := strings.Fields(strings.Join(lines, " ")); !slices.Equal(got, words) {
			t.Fatalf("%q became %q", words, lines)
		}
		for _, line := range lines {
			if Width(line, Regular, 2.5) > 40 {
				t.Fatalf("line %q is too long", line)
			}
		}
	})
}
