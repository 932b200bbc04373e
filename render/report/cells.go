package report

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// tabStop is how far apart the tab stops are in quoted lines, in columns.
const tabStop = 4

// cells returns how many columns of a terminal a character takes: 2 for wide characters
// (Unicode UAX #11), 0 for marks that sit on the character before them.
func cells(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// columns returns how many columns of a terminal a text without line breaks takes.
func columns(s string) int {
	n := 0
	for _, r := range s {
		n += cells(r)
	}
	return n
}

// tame replaces what could make a terminal do or show something else than the text says:
// control characters, and marks that turn the direction of writing. Job files come from
// other people.
func tame(r rune) rune {
	if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' {
		return unicode.ReplacementChar
	}
	return r
}

// oneLine makes a text safe to print within one line.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' || r == '\r' {
			return ' '
		}
		return tame(r)
	}, s)
}
