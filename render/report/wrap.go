package report

import "strings"

// wrap breaks a text at blanks so that no line takes more than room columns, unless a
// single word does. Line breaks of the text stay. At least one line is returned.
func wrap(text string, room int) []string {
	var lines []string
	for _, paragraph := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		lines = append(lines, fill(strings.Fields(paragraph), room)...)
	}
	return lines
}

// fill sets words into lines of at most room columns.
func fill(words []string, room int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range words {
		word = oneLine(word)
		long := columns(word)
		if used > 0 && used+1+long > room {
			lines = append(lines, line)
			line, used = "", 0
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+long
	}
	return append(lines, line)
}
