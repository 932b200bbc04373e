package source

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

// cause is a mistake that people make when they write YAML: what is wrong, what to write,
// and how to read on behind it.
type cause struct {
	line, col, end  int    // what is at fault; columns count characters from 1
	message, advice string //
	mend            []patch
}

// finding is the cause as it is reported.
func (c cause) finding(t *text) diag.Finding {
	return Fault(t.span(c.line, c.col, c.end), c.message, c.advice)
}

// covers reports whether what is at fault reaches into a stretch of a line.
func (c cause) covers(line, col, end int) bool {
	return c.line == line && c.col < end && col < c.end
}

// mendable reports whether reading can go on behind the mistake.
func (c cause) mendable() bool { return len(c.mend) > 0 }

func sortCauses(cs []cause) {
	sort.SliceStable(cs, func(i, j int) bool {
		if cs[i].line != cs[j].line {
			return cs[i].line < cs[j].line
		}
		return cs[i].col < cs[j].col
	})
}

// A stretch of one line: from col up to, not including, end.
type stretch struct{ line, col, end int }

func (s stretch) cause(message, advice string, mend ...patch) cause {
	return cause{line: s.line, col: s.col, end: s.end, message: message, advice: advice, mend: mend}
}

const quoteIt = "Put the text in quotes"

// The causes, in the words of the person who made the mistake.

func commentInBrackets(s stretch, hash patch, bracket rune) cause {
	return s.cause(fmt.Sprintf("# after a space starts a comment and the %c is never closed", bracket), quoteIt, hash)
}

func secondColon(s stretch, text string, colons ...patch) cause {
	advice := quoteIt + ": " + inQuotes(text)
	if strings.Contains(text, ",") {
		advice = quoteIt + ", or the entries in { }"
	}
	return s.cause("a colon and a space begin a value", advice, colons...)
}

func secondColonInBrackets(s stretch, colon patch) cause {
	return s.cause("a colon and a space begin a value", quoteIt+", or a comma between the two entries", colon)
}

func noSpaceAfterColon(s stretch, text string, mend ...patch) cause {
	return s.cause("put a space after the colon: "+spaced(text), "", mend...)
}

func noColon(s stretch, text string, mend ...patch) cause {
	return s.cause(fmt.Sprintf("%s has no colon and no value", text), "Write "+text+": and its value", mend...)
}

func beginsWith(s stretch, sign rune, text string, mend ...patch) cause {
	return s.cause(fmt.Sprintf("text that begins with %c goes in quotes", sign), "Write "+inQuotes(text), mend...)
}

func holdsSign(s stretch, sign rune, text string, mend ...patch) cause {
	return s.cause(fmt.Sprintf("text that holds %c goes in quotes inside { } and [ ]", sign), "Write "+inQuotes(text), mend...)
}

func behindQuote(s stretch, quote rune, mend ...patch) cause {
	other, double := `'`, `\"`
	if quote == '\'' {
		other, double = `"`, `''`
	}
	return s.cause(fmt.Sprintf("the text goes on behind the closing %c", quote),
		fmt.Sprintf("Put all of it between %s, or write %s for a %c inside it", other, double, quote), mend...)
}

func behindBracket(s stretch, closing rune, mend ...patch) cause {
	return s.cause(fmt.Sprintf("there is text behind the closing %c", closing),
		quoteIt+", or put a comma or a new line in front of it", mend...)
}

func neverClosed(s stretch, sign rune, mend ...patch) cause {
	closing := sign
	if c, ok := closingOf[sign]; ok {
		closing = c
	}
	return s.cause(fmt.Sprintf("the %c is never closed", sign), fmt.Sprintf("Add the closing %c", closing), mend...)
}

func strayClosing(s stretch, sign rune, mend ...patch) cause {
	return s.cause(fmt.Sprintf("this %c closes nothing", sign), "Delete it, or put the text in quotes", mend...)
}

func wrongClosing(s stretch, got, want rune, mend ...patch) cause {
	return s.cause(fmt.Sprintf("this is closed with %c, and was opened for %c", got, want), "", mend...)
}

func nothingBetweenCommas(s stretch, mend ...patch) cause {
	return s.cause("nothing stands in front of this comma", "Delete it", mend...)
}

func badEscape(s stretch, mend ...patch) cause {
	return s.cause("a backslash between double quotes begins a special sign, and this is none",
		`Write \\ for a backslash, or use ' instead of "`, mend...)
}

func tabIndent(s stretch, others []int) cause {
	advice := ""
	if len(others) > 0 {
		advice = "The same on " + lineNumbers(others)
	}
	return s.cause(fmt.Sprintf("line %d begins with a tab: indent with spaces", s.line), advice)
}

func wrongIndent(s stretch, indent, want int) cause {
	return s.cause(fmt.Sprintf("line %d is indented by %s, and the entries above it by %d", s.line, spaces(indent), want),
		"Entries of one map or list begin in one column")
}

func mixedEntries(s stretch, list bool) cause {
	if list {
		return s.cause("a dash begins an item of a list, and the entries above it are keys with values", "")
	}
	return s.cause("this is a key, and the entries above it are items of a list", "Begin it with a dash, or further left")
}

func directive(s stretch, mend ...patch) cause {
	return s.cause("lines that begin with % are not used here", "Delete the line", mend...)
}

func notYAML(s stretch) cause { return s.cause("this line is not YAML", "") }

func spaces(n int) string {
	if n == 1 {
		return "1 space"
	}
	return fmt.Sprintf("%d spaces", n)
}

// lineNumbers lists a few lines and counts the rest.
func lineNumbers(lines []int) string {
	const most = 5
	words := make([]string, 0, most+1)
	for _, n := range lines[:min(most, len(lines))] {
		words = append(words, fmt.Sprint(n))
	}
	if more := len(lines) - most; more > 0 {
		words = append(words, fmt.Sprintf("%d more", more))
	}
	if len(words) == 1 {
		return "line " + words[0]
	}
	return "lines " + strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// inQuotes puts a text between the quotes that it does not hold, shortened to what a
// message has room for.
func inQuotes(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most-1]) + "…"
	}
	if strings.Contains(s, `"`) || strings.Contains(s, `\`) {
		return "'" + strings.ReplaceAll(s, "'", "''") + "'"
	}
	return `"` + s + `"`
}

// spaced puts the space behind the first colon that lacks one.
func spaced(s string) string {
	key, value, _ := strings.Cut(s, ":")
	if r := []rune(value); len(r) > 30 {
		value = string(r[:29]) + "…"
	}
	return key + ": " + value
}
