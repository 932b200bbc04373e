package ink

import (
	"slices"
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", ""},
		{"W37 RD 16 AWG", "W37 RD 16 AWG"},
		{"  two\tlines\r\nin one  ", "two lines in one"},
		{"nul\x00bell\x07esc\x1b[31m", "nul bell esc [31m"},
		{"bad \xff\xfe UTF-8", "bad \uFFFD UTF-8"},
		{"half \xe2\x82", "half \uFFFD"},
		{"turned \u202eback\u202c", "turned back"},
		{"no\u200bwidth\ufeff", "nowidth"},
		{"e\u0301tat", "état"},
		{"5 \u2126", "5 Ω"},
		{"private \ue000 and none \ufffe\U0010ffff", "private \uFFFD and none \uFFFD\uFFFD"},
		{"<b>&amp;\"'</b>", "<b>&amp;\"'</b>"},
		{"工具车", "工具车"},
	} {
		if got := Clean(c.in); got != c.want {
			t.Errorf("Clean(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func FuzzClean(f *testing.F) {
	for _, s := range []string{"", "W1", "a\x00b", "\xff", "\u202e", " \n ", "e\u0301", "\U0001f50b\ufe0f"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Clean(s)
		if !utf8.ValidString(got) {
			t.Fatalf("Clean(%q) is not UTF-8", s)
		}
		for _, r := range got {
			if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == 0xfffe || r == 0xffff {
				t.Fatalf("Clean(%q) keeps %U", s, r)
			}
		}
		if again := Clean(got); again != got {
			t.Fatalf("Clean is not settled: %q, then %q", got, again)
		}
		for _, face := range Faces() {
			shown, _ := Substitute(got, face)
			for _, r := range shown {
				if !Covers(face, r) {
					t.Fatalf("Substitute keeps %U", r)
				}
			}
		}
	})
}

func TestSubstitute(t *testing.T) {
	got, lost := Substitute("12\u201113 工 ✓ 工 Ω", Regular)
	if want := "12-13 \uFFFD \uFFFD \uFFFD Ω"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if !slices.Equal(lost, []rune{'工', '✓'}) {
		t.Errorf("lost %q", lost)
	}
}

func TestAlikeListsOnlyWhatTheFacesLack(t *testing.T) {
	for from, to := range alike {
		for _, f := range Faces() {
			if Covers(f, from) || !Covers(f, to) {
				t.Errorf("%v: %q covered %v, %q covered %v", f, from, Covers(f, from), to, Covers(f, to))
			}
		}
	}
}
