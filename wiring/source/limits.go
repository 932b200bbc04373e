package source

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring/diag"
)

// Limits of a file. They keep a damaged or hostile file from taking the machine with it,
// and lie far above what a cart needs.
const (
	MostBytes    = 4 << 20   // of a file
	MostNesting  = 16        // maps and lists inside each other
	MostText     = 4 << 10   // bytes of one text
	MostValues   = 1_000_000 // values of a file, estimated from the signs that part them
	MostFindings = 200       // of one file; more are counted, not listed
)

// refuse returns why content is not read at all, if it is not.
func refuse(name string, content []byte) (diag.Finding, bool) {
	top := diag.Span{File: name, Line: 1, Col: 1, EndCol: 1}
	switch {
	case len(content) > MostBytes:
		return Fault(top, fmt.Sprintf("this file has %s, and 4 MB is the most", megabytes(len(content)))), true
	case strings.HasPrefix(string(content[:min(2, len(content))]), "\xff\xfe"),
		strings.HasPrefix(string(content[:min(2, len(content))]), "\xfe\xff"):
		return Fault(top, "this file is UTF-16 text", "Save it as UTF-8"), true
	case !utf8.Valid(content):
		return notUTF8(name, content), true
	case separators(content) > MostValues:
		return Fault(top, "this file has more than 1,000,000 values"), true
	}
	return diag.Finding{}, false
}

func megabytes(n int) string { return fmt.Sprintf("%.1f MB", float64(n)/(1<<20)) }

// notUTF8 finds the first byte that is no UTF-8.
func notUTF8(name string, content []byte) diag.Finding {
	line, col := 1, 1
	for len(content) > 0 {
		r, n := utf8.DecodeRune(content)
		if r == utf8.RuneError && n == 1 {
			break
		}
		col++
		if r == '\n' {
			line, col = line+1, 1
		}
		content = content[n:]
	}
	at := diag.Span{File: name, Line: line, Col: col, EndCol: col + 1}
	return Fault(at, fmt.Sprintf("byte %02X is not UTF-8 text", content[0]), "Save the file as UTF-8")
}

// separators counts the signs that part values, a little more than there can be values.
func separators(content []byte) int {
	n := 0
	for _, c := range content {
		switch c {
		case ',', ':', '[', '{', '\n', '-', '?':
			n++
		}
	}
	return n
}

// loneReturn finds the first carriage return without a line feed: the line ends of a time
// before both worlds. What looks like one line is then several.
func loneReturn(t *text) (at diag.Span, ok bool) {
	for i, l := range t.lines {
		if before, _, found := strings.Cut(l.text, "\r"); found {
			col := utf8.RuneCountInString(before) + 1
			return t.span(i+1, col, col+1), true
		}
	}
	return diag.Span{}, false
}

// directives reports lines such as %YAML 1.2 in front of the document.
func directives(t *text) []cause {
	var found []cause
	for i, l := range t.lines {
		switch {
		case strings.HasPrefix(l.text, "%"):
			found = append(found, directive(stretch{i + 1, 1, l.end}, put(i+1, 1, '#')))
		case l.end > 1 && l.text[0] != '#':
			return found
		}
	}
	return found
}

// badSigns reports characters that text does not hold: control characters, and line ends
// of other worlds, which YAML would count as lines and nobody else does. It reports one
// cause a line, and mends all of that line.
func badSigns(t *text) []cause {
	var found []cause
	for i, l := range t.lines {
		var c cause
		col := 0
		for _, r := range l.text {
			col++
			what := badSign(r)
			if what == "" {
				continue
			}
			if c.mend == nil {
				c = cause{line: i + 1, col: col, message: what + " cannot stand in this file", advice: "Delete it"}
			}
			c.end = col + 1
			c.mend = append(c.mend, put(i+1, col, ' '))
		}
		if c.mend != nil {
			found = append(found, c)
		}
	}
	return found
}

func badSign(r rune) string {
	switch {
	case r == '\t':
		return ""
	case r == 0x85 || r == 0x2028 || r == 0x2029:
		return fmt.Sprintf("the line separator U+%04X", r)
	case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0xfffe || r == 0xffff:
		return fmt.Sprintf("the control character U+%04X", r)
	case r == 0xfeff:
		return "a byte order mark inside the text"
	}
	return ""
}
