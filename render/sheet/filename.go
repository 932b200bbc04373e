package sheet

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

// mostLetters of a job's number or a sheet's title go into a file name.
const mostLetters = 60

// FileName is what the file of a sheet is called: "TP-14-3-schematic-48V.svg". It holds
// letters, digits, hyphens, underlines and the one dot, so every file system takes it; the
// number tells apart what would otherwise be called the same.
func (d *Document) FileName(s *Sheet, extension string) string {
	words := []string{d.Name(), strconv.Itoa(s.Number)}
	for _, word := range []string{s.Kind.ID, s.Title} {
		if word = PlainName(word); word != "" {
			words = append(words, word)
		}
	}
	return strings.Join(words, "-") + "." + extension
}

// Name is what all files of the document begin with: the number of the job, as far as it may
// stand in a file name.
func (d *Document) Name() string {
	if name := PlainName(d.Book.Harness.Identity.Number); name != "" {
		return name
	}
	return "job"
}

// spacedVolts is a voltage as sheets print it.
var spacedVolts = regexp.MustCompile(`(\d) V\b`)

// PlainName keeps of a text what may stand in a file name, with hyphens for the rest; it may
// be empty.
func PlainName(text string) string {
	text = spacedVolts.ReplaceAllString(text, "${1}V")
	parts := strings.FieldsFunc(text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
	})
	name := []rune(strings.Join(parts, "-"))
	if len(name) > mostLetters {
		name = name[:mostLetters]
	}
	return strings.Trim(string(name), "-")
}
