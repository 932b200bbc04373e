package source

import (
	"strings"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring/diag"
)

// text is a file cut into lines, with the means to turn places into spans.
type text struct {
	name  string
	lines []line
}

// line is one line without its end. Columns count characters from 1.
type line struct {
	text  string
	runes []rune // nil if the line is plain ASCII, where bytes are characters
	end   int    // the column behind the last character that is not blank
}

func newText(name string, content string) *text {
	parts := strings.Split(content, "\n")
	t := &text{name: name, lines: make([]line, len(parts))}
	for i, part := range parts {
		t.lines[i] = newLine(strings.TrimSuffix(part, "\r"))
	}
	return t
}

func newLine(s string) line {
	l := line{text: s}
	if !isASCII(s) {
		l.runes = []rune(s)
	}
	l.end = utf8.RuneCountInString(strings.TrimRight(s, " \t")) + 1
	return l
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// line returns a line by its number, an empty one if there is no such line.
func (t *text) line(number int) line {
	if number < 1 || number > len(t.lines) {
		return line{end: 1}
	}
	return t.lines[number-1]
}

// span is a stretch of one line, brought inside that line.
func (t *text) span(number, col, end int) diag.Span {
	number = min(max(number, 1), len(t.lines))
	width := t.lines[number-1].width()
	col = min(max(col, 1), width+1)
	end = min(max(end, col), width+1)
	return diag.Span{File: t.name, Line: number, Col: col, EndCol: end}
}

// whole is the span of all that stands on a line.
func (t *text) whole(number int) diag.Span {
	l := t.line(number)
	return t.span(number, l.indent()+1, l.end)
}

// width is the number of characters of the line.
func (l line) width() int {
	if l.runes != nil {
		return len(l.runes)
	}
	return len(l.text)
}

// at returns the character in a column, 0 outside the line.
func (l line) at(col int) rune {
	switch {
	case col < 1 || col > l.width():
		return 0
	case l.runes != nil:
		return l.runes[col-1]
	default:
		return rune(l.text[col-1])
	}
}

// cut returns what stands from col up to, not including, end.
func (l line) cut(col, end int) string {
	col, end = max(col, 1), min(end, l.width()+1)
	switch {
	case col >= end:
		return ""
	case l.runes != nil:
		return string(l.runes[col-1 : end-1])
	default:
		return l.text[col-1 : end-1]
	}
}

// startsWith reports whether want stands from a column on, without copying the line.
func (l line) startsWith(col int, want string) bool {
	if l.runes == nil {
		return col >= 1 && col <= len(l.text)+1 && strings.HasPrefix(l.text[col-1:], want)
	}
	for _, r := range want {
		if l.at(col) != r {
			return false
		}
		col++
	}
	return true
}

// indent is the number of blanks in front of the first character.
func (l line) indent() int {
	n := 0
	for n < len(l.text) && (l.text[n] == ' ' || l.text[n] == '\t') {
		n++
	}
	return n
}

// skipBlanks returns the first column from col on that is not blank.
func (l line) skipBlanks(col int) int {
	for isBlank(l.at(col)) {
		col++
	}
	return col
}

func isBlank(r rune) bool { return r == ' ' || r == '\t' }
