package source

import (
	"fmt"
	"strings"
)

// oddBlanks are blanks that look like a space and are none to YAML.
const oddBlanks = "\u00a0\u2007\u202f\u2002\u2003\u2009\u3000\u200b"

func isOddBlank(r rune) bool { return strings.ContainsRune(oddBlanks, r) }

// oddIndents reports lines that are indented with blanks that are no spaces.
func oddIndents(t *text) []cause {
	var found []cause
	for i, l := range t.lines {
		if l.runes == nil {
			continue
		}
		end := 1
		first := 0
		for isBlank(l.at(end)) || isOddBlank(l.at(end)) {
			if first == 0 && isOddBlank(l.at(end)) {
				first = end
			}
			end++
		}
		if first == 0 || l.at(end) == 0 || l.at(end) == '#' {
			continue
		}
		found = append(found, cause{
			line: i + 1, col: first, end: end,
			message: fmt.Sprintf("line %d begins with a non-breaking space: indent with ordinary spaces", i+1),
			mend:    blanks(l, i+1, first, end),
		})
	}
	return found
}

// quietBlanks turns odd blanks into spaces where they part values: around the signs of
// YAML, at the ends of lines, on lines that hold nothing else. Inside a text they stay.
func quietBlanks(t *text) []patch {
	var patches []patch
	for i, l := range t.lines {
		if l.runes == nil {
			continue
		}
		for col := 1; col <= len(l.runes); col++ {
			if !isOddBlank(l.at(col)) {
				continue
			}
			end := col
			for isOddBlank(l.at(end)) || isBlank(l.at(end)) {
				end++
			}
			if partsValues(l.at(col-1), l.at(end)) {
				patches = append(patches, blanks(l, i+1, col, end)...)
			}
			col = end
		}
	}
	return patches
}

func partsValues(before, after rune) bool {
	return before == 0 || after == 0 || strings.ContainsRune(":,[{-", before) || strings.ContainsRune("]},#", after)
}

// blanks are the patches that make spaces of a stretch of odd blanks.
func blanks(l line, number, col, end int) []patch {
	var patches []patch
	for ; col < end; col++ {
		if isOddBlank(l.at(col)) {
			patches = append(patches, put(number, col, ' '))
		}
	}
	return patches
}

// typographicQuote reports whether a text begins with a quote that a word processor made.
func typographicQuote(s string) (quote string, ok bool) {
	for _, q := range []string{"“", "”", "„", "‘", "’", "«", "»"} {
		if strings.HasPrefix(s, q) {
			return q, true
		}
	}
	return "", false
}
