package report

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

func TestQuote(t *testing.T) {
	const long = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
	for _, c := range []struct {
		name, line         string
		col, end, room     int
		wantText, wantMark string
	}{
		{"plain", "size: 18 AWG", 7, 13, 80, "size: 18 AWG", "      ^^^^^^"},
		{"tab is a step to the next stop", "\ta:\tb", 5, 6, 80, "    a:  b", "        ^"},
		{"wide before", "灯: x", 4, 5, 80, "灯: x", "    ^"},
		{"wide below", "a: 灯灯", 4, 6, 80, "a: 灯灯", "   ^^^^"},
		{"combining mark", "e\u0301: x", 5, 6, 80, "e\u0301: x", "   ^"},
		{"empty span", "abc", 2, 2, 80, "abc", " ^"},
		{"end before start", "abc", 3, 1, 80, "abc", "  ^"},
		{"behind the end", "abc", 4, 5, 80, "abc", "   ^"},
		{"far behind the end", "abc", 400, 500, 80, "abc", "   ^"},
		{"before the start", "abc", 0, 2, 80, "abc", "^"},
		{"trailing blanks", "abc  \t", 1, 4, 80, "abc", "^^^"},
		{"escape sequence", "a\x1b[2Jb", 6, 7, 80, "a\ufffd[2Jb", "     ^"},
		{"cropped right", long, 1, 3, 30, "0123456789abcdefghijklmnopqr…", "^^"},
		{"cropped left", long, 61, 63, 30, "…yzABCDEFGHIJKLMNOPQRSTUVWXYZ", "                           ^^"},
		{"cropped both", long, 31, 33, 30, "…hijklmnopqrstuvwxyzABCDEFGHI…", "              ^^"},
		{"longer than the room", long, 11, 60, 30, "…789abcdefghijklmnopqrstuvwxy…", "    ^^^^^^^^^^^^^^^^^^^^^^^^^"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, mark := quote(c.line, c.col, c.end, c.room)
			if text != c.wantText || mark != c.wantMark {
				t.Errorf("got\n%s|\n%s|\nwant\n%s|\n%s|", text, mark, c.wantText, c.wantMark)
			}
		})
	}
}

func TestQuoteHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringOfN(rapid.RuneFrom([]rune("ab \t灯é\u0301\x1b\u202e{}:")), 0, 200, -1).Draw(t, "line")
		col := rapid.IntRange(-3, 210).Draw(t, "col")
		end := rapid.IntRange(-3, 210).Draw(t, "end")
		room := rapid.IntRange(0, 120).Draw(t, "room")
		text, mark := quote(line, col, end, room)

		if columns(text) > max(room, minRoom) {
			t.Errorf("%q takes %d of %d columns", text, columns(text), room)
		}
		if len(mark) > max(columns(text), 1)+1 {
			t.Errorf("the carets %q stand outside %q", mark, text)
		}
		if trimmed := strings.TrimLeft(mark, " "); trimmed == "" || strings.Trim(trimmed, "^") != "" {
			t.Errorf("carets are %q", mark)
		}
		for _, r := range text {
			if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
				t.Errorf("%q reaches the terminal", r)
			}
		}
	})
}

// The character above the first caret must be the one that the span begins with.
func TestQuoteMarksTheCharacter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := rapid.StringOfN(rapid.RuneFrom([]rune("ab \t灯é")), 0, 150, -1).Draw(t, "before")
		after := rapid.StringOfN(rapid.RuneFrom([]rune("ab \t灯é")), 0, 150, -1).Draw(t, "after")
		col := len([]rune(before)) + 1
		text, mark := quote(before+"X"+after, col, col+1, rapid.IntRange(0, 120).Draw(t, "room"))
		at := 0
		for _, r := range text {
			if at == len(mark)-1 {
				if r != 'X' {
					t.Errorf("the caret stands below %q in\n%s\n%s", r, text, mark)
				}
				return
			}
			at += cells(r)
		}
		t.Errorf("the caret stands below nothing in\n%s\n%s", text, mark)
	})
}

// A line of four megabytes with a finding on every word must not take a minute.
func TestQuoteOfALongLine(t *testing.T) {
	line := strings.Repeat("word ", 800_000)
	for i := range 100 {
		col := 1 + 5*i*8000
		text, mark := quote(line, col, col+4, 80)
		if at := strings.Index(mark, "^^^^"); at < 0 || columns(text) > 80 || !strings.Contains(text, "word") {
			t.Fatalf("column %d:\n%s\n%s", col, text, mark)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text string
		room int
		want string
	}{
		{"", 10, ""},
		{"one two three", 80, "one two three"},
		{"one two three", 7, "one two|three"},
		{"unbreakable-word here", 5, "unbreakable-word|here"},
		{"one\n\ntwo\n", 80, "one||two"},
		{"灯灯 灯灯", 8, "灯灯|灯灯"},
		{"灯灯 灯灯", 9, "灯灯 灯灯"},
	} {
		if got := strings.Join(wrap(c.text, c.room), "|"); got != c.want {
			t.Errorf("wrap(%q, %d) = %q, want %q", c.text, c.room, got, c.want)
		}
	}
}

func TestWrapKeepsWordsAndWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z灯]{1,12}`), 1, 40).Draw(t, "words")
		room := rapid.IntRange(1, 60).Draw(t, "room")
		lines := wrap(strings.Join(words, " "), room)
		if got := strings.Join(lines, " "); got != strings.Join(words, " ") {
			t.Fatalf("words were lost: %q", got)
		}
		for _, line := range lines {
			if columns(line) > room && strings.Contains(line, " ") {
				t.Fatalf("%q is wider than %d and could be broken", line, room)
			}
		}
	})
}
