package job

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// isList reports whether a file is a wire list by its name.
func isList(name string) bool { return strings.HasSuffix(strings.ToLower(name), ".csv") }

// wireColumn holds the numbers of the wires of a list.
const wireColumn = "wire"

// listColumns are the columns of a wire list, in the order in which we write them. All but
// the first are keys of a wire; those that begin with "extend " are keys of its `extend`.
var listColumns = []string{
	wireColumn, "from", "to", "colour", "size", "length",
	"extend colour", "extend size", "extend length", "extend at",
	"joint", "insulation", "volts", "from lug", "to lug", "loom", "for", "note",
}

// mostColumns bounds the columns of a list; those for people count too.
const mostColumns = 100

// severalMark parts the pieces of an `extend` of several in one cell.
const severalMark = "+"

// list is a wire list while it is turned into the wires of a layer.
type list struct {
	columns  []string // by position; empty: only for people
	column   map[*source.Node]string
	findings []diag.Finding
}

// parseCSV turns a wire list into the keys of a layer, and says of each value in which
// column it stood.
func parseCSV(file string, text []byte) (map[string]source.Entry, map[*source.Node]string, []diag.Finding) {
	l := &list{column: map[*source.Node]string{}}
	if why, refused := refuseList(file, text); refused {
		return nil, nil, []diag.Finding{why}
	}
	s := newSheet(file, string(text))
	heading := s.row()
	if heading == nil {
		return nil, nil, []diag.Finding{source.Fault(topOf(file), "this wire list is empty", "Its first line names the columns: wire,from,to,colour,size,length")}
	}
	if !l.heading(heading) {
		return nil, nil, l.findings
	}
	wires := &source.Node{Kind: source.Map, Span: topOf(file)}
	for row := s.row(); row != nil; row = s.row() {
		if e, ok := l.row(row); ok {
			wires.Entries = append(wires.Entries, e)
		}
	}
	key := &source.Node{Kind: source.Scalar, Text: "wires", Span: topOf(file)}
	return map[string]source.Entry{"wires": {Key: key, Value: wires}}, l.column, l.findings
}

func (l *list) fault(at diag.Span, message string, advice ...string) {
	if len(l.findings) >= source.MostFindings {
		return
	}
	l.findings = append(l.findings, source.Fault(at, message, advice...))
}

// heading reads the names of the columns; false if the list cannot be read without them.
func (l *list) heading(cells []cell) bool {
	seen := map[string]bool{}
	if len(cells) > mostColumns {
		l.fault(cells[mostColumns].at, fmt.Sprintf("more than %d columns", mostColumns))
		return false
	}
	for _, c := range cells {
		name := columnName(c.text)
		switch {
		case name == "", strings.HasPrefix(name, "(") && strings.HasSuffix(name, ")"):
			name = ""
		case !slices.Contains(listColumns, name):
			l.unknownColumn(c, name)
			name = ""
		case seen[name]:
			l.fault(c.at, fmt.Sprintf("the column %s is there twice", name))
			name = ""
		}
		seen[name] = true
		l.columns = append(l.columns, name)
	}
	if !seen[wireColumn] {
		l.fault(cells[0].at, "no column is called wire", "The first line names the columns: wire,from,to,colour,size,length")
	}
	return seen[wireColumn]
}

func (l *list) unknownColumn(c cell, name string) {
	if meant := source.Suggest(name, listColumns); meant != "" {
		l.fault(c.at, fmt.Sprintf("unknown column %s: did you mean %s?", c.text, meant), fmt.Sprintf("Write (%s) if it is only for people", c.text))
		return
	}
	l.fault(c.at, fmt.Sprintf("unknown column %s: write (%s) if it is only for people", c.text, c.text))
}

// columnName forgives case, underlines, hyphens and blanks.
func columnName(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r == ' ' || r == '_' || r == '-' || r == '\u00a0' || r == '\t'
	})
	for i, w := range words {
		words[i] = spelling(w)
	}
	return strings.Join(words, " ")
}

// row turns one row into a wire.
func (l *list) row(cells []cell) (source.Entry, bool) {
	e := source.Entry{Value: &source.Node{Kind: source.Map, Span: cells[0].at}}
	extend := map[string]cell{}
	for i, c := range cells {
		name := ""
		if i < len(l.columns) {
			name = l.columns[i]
		}
		if !l.whole(c, name) {
			return e, false
		}
		c.text = unguarded(c.text)
		switch {
		case i >= len(l.columns) && c.text != "":
			l.fault(c.at, fmt.Sprintf("this row has %s, the heading has %d", plural(len(cells), "cell"), len(l.columns)))
			return e, false
		case c.text == "" || name == "":
		case name == wireColumn:
			e.Key = l.node(c, name)
		case strings.HasPrefix(name, "extend "):
			extend[strings.TrimPrefix(name, "extend ")] = c
		default:
			e.Value.Entries = append(e.Value.Entries, l.entry(strings.ReplaceAll(name, " ", "-"), c, name))
		}
	}
	if e.Key == nil {
		l.fault(cells[0].at, "this row has no wire number")
		return e, false
	}
	return e, l.extend(&e, extend)
}

// whole reports a cell that a quote left open has made too long.
func (l *list) whole(c cell, column string) bool {
	prose := column == "note" || column == "for"
	switch {
	case c.open:
		l.fault(c.at, "this quote is never closed", `A quote at the beginning of a cell needs one at its end; 14" needs none`)
	case c.lines > 0 && !(prose && c.strict):
		l.fault(c.at, fmt.Sprintf("this cell goes on to line %d: a quote is left open", c.at.Line+c.lines),
			"Only a note has several lines, and then every quote inside it is doubled")
	case len(c.text) > source.MostText:
		l.fault(c.at, fmt.Sprintf("this cell holds more than %d bytes", source.MostText))
	default:
		return true
	}
	return false
}

// unguarded drops the sign that keeps a spreadsheet from taking a text for a formula.
func unguarded(text string) string { return strings.TrimPrefix(text, "'") }

func (l *list) node(c cell, column string) *source.Node {
	n := &source.Node{Kind: source.Scalar, Text: c.text, Quoted: true, Span: c.at}
	l.column[n] = column
	return n
}

func (l *list) entry(key string, c cell, column string) source.Entry {
	return source.Entry{Key: &source.Node{Kind: source.Scalar, Text: key, Span: c.at}, Value: l.node(c, column)}
}

// extend puts the cells of an extension together; several pieces stand in one cell, parted
// by +, outwards.
func (l *list) extend(e *source.Entry, cells map[string]cell) bool {
	if len(cells) == 0 {
		return true
	}
	var items []*source.Node
	first := cell{}
	for _, key := range extendKeys.names("") {
		c, ok := cells[key]
		if !ok {
			continue
		}
		parts := strings.Split(c.text, severalMark)
		if items == nil {
			first = c
			for range parts {
				items = append(items, &source.Node{Kind: source.Map, Span: c.at})
			}
		}
		if len(parts) != len(items) {
			l.fault(c.at, fmt.Sprintf("column extend %s: %s is %s, %s is %s", key, c.text, plural(len(parts), "piece"), first.text, plural(len(items), "piece")))
			return false
		}
		for i, part := range parts {
			if c.text = trimBlank(part); c.text != "" {
				items[i].Entries = append(items[i].Entries, l.entry(key, c, "extend "+key))
			}
		}
	}
	value := &source.Node{Kind: source.List, Items: items, Span: first.at}
	e.Value.Entries = append(e.Value.Entries, source.Entry{
		Key: &source.Node{Kind: source.Scalar, Text: "extend", Span: first.at}, Value: value,
	})
	return true
}
