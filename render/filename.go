package render

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// mostLetters of a job's number or a sheet's title go into a file name.
const mostLetters = 60

// fileName is what a sheet's file is called: "TP-14-1-48V.svg". It holds letters, digits,
// hyphens, underlines and the one dot, so every file system takes it; the sheet's number
// tells apart what would otherwise be called the same.
func fileName(job string, sheet int, title, extension string) string {
	words := []string{plainName(job, "job"), fmt.Sprint(sheet)}
	if t := plainName(title, ""); t != "" {
		words = append(words, t)
	}
	return strings.Join(words, "-") + "." + extension
}

// spacedVolts is a voltage as sheets print it.
var spacedVolts = regexp.MustCompile(`(\d) V\b`)

// plainName keeps of a text what may stand in a file name, with hyphens for the rest;
// fallback where nothing is left.
func plainName(text, fallback string) string {
	text = spacedVolts.ReplaceAllString(text, "${1}V")
	parts := strings.FieldsFunc(text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
	})
	name := []rune(strings.Join(parts, "-"))
	if len(name) > mostLetters {
		name = name[:mostLetters]
	}
	if plain := strings.Trim(string(name), "-"); plain != "" {
		return plain
	}
	return fallback
}
