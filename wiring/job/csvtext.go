package job

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// cell is one value of a wire list.
type cell struct {
	text   string
	at     diag.Span
	open   bool // its quote is never closed
	lines  int  // line ends inside it
	strict bool // quoted as RFC 4180 has it
}

// sheet cuts the text of a wire list into cells. It is not package encoding/csv because
// people write 14" without quoting it, because places are counted in characters, and
// because a quote that is left open must be reported where it stands, not swallow rows.
type sheet struct {
	file  string
	text  string
	comma byte
	line  int
	col   int
}

// newSheet makes ready to cut a text; it finds the separator in the first line that is no
// comment.
func newSheet(file string, text string) *sheet {
	s := &sheet{file: file, text: strings.TrimPrefix(text, "\ufeff"), line: 1, col: 1, comma: ','}
	for _, line := range strings.SplitN(s.text, "\n", 64) {
		if skipped(line) {
			continue
		}
		most := strings.Count(line, ",")
		for _, c := range []byte{';', '\t'} {
			if n := strings.Count(line, string(c)); n > most {
				most, s.comma = n, c
			}
		}
		break
	}
	return s
}

// skipped reports whether a line holds nothing to read.
func skipped(line string) bool {
	line = trimBlank(line)
	return line == "" || line[0] == '#'
}

// trimBlank takes blanks off both ends, those that spreadsheets put there too.
func trimBlank(s string) string { return strings.Trim(s, " \t\r\u00a0") }

// row cuts the next row, nil at the end of the text.
func (s *sheet) row() []cell {
	for s.text != "" {
		line, _, _ := strings.Cut(s.text, "\n")
		if !skipped(line) && trimBlank(strings.ReplaceAll(line, string(s.comma), " ")) != "" {
			break
		}
		s.skip(len(line))
		s.newline()
	}
	if s.text == "" {
		return nil
	}
	var cells []cell
	for {
		cells = append(cells, s.cell())
		if s.text == "" || s.text[0] != s.comma {
			break
		}
		s.skip(1)
	}
	s.newline()
	return cells
}

// skip moves n bytes on within a line.
func (s *sheet) skip(n int) {
	s.col += utf8.RuneCountInString(s.text[:n])
	s.text = s.text[n:]
}

// newline moves past the end of a line, if one is here.
func (s *sheet) newline() {
	s.text = strings.TrimPrefix(s.text, "\r")
	if rest, ok := strings.CutPrefix(s.text, "\n"); ok {
		s.text, s.line, s.col = rest, s.line+1, 1
	}
}

// cell cuts the next cell; what separates it from the one behind stays.
func (s *sheet) cell() cell {
	blank := len(s.text) - len(strings.TrimLeft(s.text, " \u00a0"))
	s.skip(blank)
	if strings.HasPrefix(s.text, `"`) {
		return s.quoted(blank == 0)
	}
	end := strings.IndexAny(s.text, string(s.comma)+"\n")
	if end < 0 {
		end = len(s.text)
	}
	c := cell{text: trimBlank(s.text[:end]), at: s.span()}
	c.at.EndCol += utf8.RuneCountInString(c.text)
	s.skip(len(strings.TrimRight(s.text[:end], "\r")))
	return c
}

func (s *sheet) span() diag.Span {
	return diag.Span{File: s.file, Line: s.line, Col: s.col, EndCol: s.col}
}

// quoted cuts a cell in quotes. A quote inside it that is not doubled counts as a letter,
// unless a separator follows.
func (s *sheet) quoted(strict bool) cell {
	c := cell{at: s.span(), strict: strict}
	s.skip(1)
	var b strings.Builder
	for s.text != "" {
		switch {
		case strings.HasPrefix(s.text, `""`):
			b.WriteByte('"')
			s.skip(2)
		case s.text[0] == '"' && s.closes():
			blank := len(s.text[1:]) - len(strings.TrimLeft(s.text[1:], " \u00a0\r"))
			s.skip(1)
			if c.lines == 0 {
				c.at.EndCol = s.col
			} else {
				c.at.EndCol = c.at.Col + 1
			}
			s.skip(blank)
			c.text = trimBlank(b.String())
			c.strict = c.strict && blank == 0
			return c
		case s.text[0] == '\n':
			b.WriteByte('\n')
			c.lines++
			s.newline()
		default:
			c.strict = c.strict && s.text[0] != '"'
			_, n := utf8.DecodeRuneInString(s.text)
			b.WriteString(s.text[:n])
			s.skip(n)
		}
	}
	c.text, c.open, c.at.EndCol = b.String(), true, c.at.Col+1
	return c
}

// closes reports whether the quote that comes next ends the cell: a separator, the end of
// the line or of the text follows.
func (s *sheet) closes() bool {
	rest := strings.TrimLeft(s.text[1:], " \u00a0\r")
	return rest == "" || rest[0] == s.comma || rest[0] == '\n'
}

// refuseList returns why a wire list is not read at all, if it is not.
func refuseList(file string, text []byte) (diag.Finding, bool) {
	top := topOf(file)
	switch {
	case len(text) > source.MostBytes:
		return source.Fault(top, "this file has more than 4 MB"), true
	case len(text) > 1 && (text[0] == 0xff && text[1] == 0xfe || text[0] == 0xfe && text[1] == 0xff):
		return source.Fault(top, "this file is UTF-16 text", "Save it as CSV UTF-8"), true
	}
	line, col := 1, 1
	for rest := text; len(rest) > 0; {
		c, n := utf8.DecodeRune(rest)
		at := diag.Span{File: file, Line: line, Col: col, EndCol: col + 1}
		switch {
		case c == utf8.RuneError && n == 1:
			return source.Fault(at, fmt.Sprintf("byte %02X is not UTF-8 text", rest[0]), "Save the file as CSV UTF-8"), true
		case c < ' ' && c != '\t' && c != '\r' && c != '\n':
			return source.Fault(at, fmt.Sprintf("the control character U+%04X cannot stand in a wire list", c)), true
		}
		if col++; c == '\n' {
			line, col = line+1, 1
		}
		rest = rest[n:]
	}
	return diag.Finding{}, false
}
