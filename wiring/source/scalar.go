package source

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"github.com/lugwright/lugwright/wiring/diag"
)

const quotedStyle = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle

// scalar turns a text into ours; what has been reported already, and nothing at all,
// become Null.
func (c *converter) scalar(n *yaml.Node) *Node {
	at := c.text.span(n.Line, n.Column, c.scalarEnd(n))
	node := &Node{Kind: Scalar, Text: c.written(n, at), Quoted: n.Style&quotedStyle != 0, Span: at}
	switch {
	case isNull(n) || c.isBroken(at):
		return &Node{Kind: Null, Span: at}
	case len(node.Text) > MostText:
		c.fault(at, fmt.Sprintf("this text has %d kB, and 4 kB is the most", (len(node.Text)+1023)/1024))
		return &Node{Kind: Null, Span: at}
	}
	c.typography(node)
	c.commentDigits(n, node)
	return node
}

// isNull reports whether YAML takes a text for no value.
func isNull(n *yaml.Node) bool {
	if n.Kind != yaml.ScalarNode || n.Style&^yaml.TaggedStyle != 0 {
		return false
	}
	switch n.Value {
	case "", "~", "null", "Null", "NULL":
		return true
	}
	return false
}

// isBroken reports whether a mistake has been reported inside a span.
func (c *converter) isBroken(at diag.Span) bool {
	for _, cause := range c.broken[at.Line] {
		if cause.covers(at.Line, at.Col, at.EndCol) {
			return true
		}
	}
	return false
}

// scalarEnd returns the column behind a text, or the end of the line if it goes on behind
// that.
func (c *converter) scalarEnd(n *yaml.Node) int {
	l := c.text.line(n.Line)
	switch {
	case n.Style&quotedStyle != 0:
		return quotedEnd(l, n.Column)
	case n.Style == 0 && c.onOneLine(n):
		return n.Column + utf8.RuneCountInString(n.Value)
	}
	return max(l.end, n.Column)
}

// onOneLine reports whether a plain text stands on one line: there is no other sign of it,
// since the library joins lines with a space.
func (c *converter) onOneLine(n *yaml.Node) bool {
	return c.text.line(n.Line).startsWith(n.Column, n.Value)
}

// quotedEnd returns the column behind the closing quote of a text that begins in col.
func quotedEnd(l line, col int) int {
	quote := l.at(col)
	for i := col + 1; l.at(i) != 0; i++ {
		switch r := l.at(i); {
		case r == '\\' && quote == '"':
			i++
		case r == '\'' && quote == '\'' && l.at(i+1) == '\'':
			i++
		case r == quote:
			return i + 1
		}
	}
	return l.end
}

// written is the text as it was written. The library saw some signs patched; on one line
// the original is still there.
func (c *converter) written(n *yaml.Node, at diag.Span) string {
	if n.Style == 0 && at.EndCol-at.Col == utf8.RuneCountInString(n.Value) {
		return c.text.line(at.Line).cut(at.Col, at.EndCol)
	}
	return n.Value
}

// typography reports quotes that a word processor made.
func (c *converter) typography(n *Node) {
	if quote, ok := typographicQuote(n.Text); ok && !n.Quoted {
		c.fault(n.Span, `these are typographic quotes, not "`, fmt.Sprintf(`Write " instead of %s`, quote))
		n.Kind = Null
	}
}

// commentDigits warns of text that YAML takes for a comment: `note: wire #4 to the fuse`.
func (c *converter) commentDigits(n *yaml.Node, node *Node) {
	if len(n.LineComment) < 2 || n.LineComment[1] < '0' || n.LineComment[1] > '9' {
		return
	}
	l := c.text.line(node.Span.Line)
	at := l.skipBlanks(node.Span.EndCol)
	if l.at(at) != '#' {
		return
	}
	f := Fault(c.text.span(node.Span.Line, at, l.end), "everything after # is a comment",
		"If it belongs to the text, put the text in quotes; else write a space behind the #")
	f.Level = diag.Warning
	c.add(f)
}

// noValue reports a key without a value.
func (c *converter) noValue(key *Node, value *yaml.Node, depth int) {
	l := c.text.line(key.Span.Line)
	hash := l.skipBlanks(l.skipBlanks(key.Span.EndCol) + 1)
	switch {
	case value.Value == "" && l.at(hash) == '#' && hash+1 < l.end && !isBlank(l.at(hash+1)):
		c.fault(c.text.span(key.Span.Line, hash, l.end),
			key.Text+" has no value: everything after # is a comment",
			"Write "+firstWords(l.cut(hash+1, l.end)))
	case depth == 1:
		c.fault(key.Span, key.Text+" has no value: leave it out, or indent what belongs to it")
	default:
		c.fault(key.Span, key.Text+" has no value: leave it out, or write unknown")
	}
}

// noColon reports a word between brackets that is no entry.
func (c *converter) noColon(key, before *Node) {
	sameLine := before != nil && before.Span.Line == key.Span.Line
	switch word, _, found := strings.Cut(key.Text, ":"); {
	case sameLine && before.Kind == Null: // a part of what has been reported
	case found && word != "" && !key.Quoted:
		c.fault(key.Span, "put a space after the colon: "+spaced(key.Text))
	case sameLine && before.Kind == Scalar:
		at := c.text.span(before.Span.Line, before.Span.Col, key.Span.EndCol)
		text := c.text.line(at.Line).cut(at.Col, at.EndCol)
		c.fault(at, "a comma inside { } begins the next entry", quoteIt+": "+inQuotes(text))
	default:
		c.fault(key.Span, key.Text+" has no colon and no value", "Write "+key.Text+": and its value")
	}
}
