package handbook

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds of what is read of a table: our own choice, far above any real one.
const (
	largestTable = 1 << 20 // bytes
	mostRows     = 2000
)

// TableError lists what is wrong with a table, all faults of one reading.
type TableError struct {
	Table  string   // its name: "ampacity"
	Faults []string // "line 5, column A_75C: 12x is no number"
}

// Error returns one fault a line, each with the name of the table.
func (e *TableError) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = "table " + e.Table + ": " + f
	}
	return strings.Join(lines, "\n")
}

// sheet is one table as text: its source line, its columns, its rows. Faults are gathered
// while it is read, so that one run shows them all.
type sheet struct {
	name           string
	source, status string
	rows           []row
	faults         []string
}

// row is one line of a sheet. Its methods read one cell, and note a fault if it is not
// what they want.
type row struct {
	sheet *sheet
	line  int
	cells map[string]string
}

// fail notes a fault of the whole table or, from a row, of one line.
func (s *sheet) fail(format string, args ...any) {
	s.faults = append(s.faults, fmt.Sprintf(format, args...))
}

func (s *sheet) err() error {
	if len(s.faults) == 0 {
		return nil
	}
	return &TableError{Table: s.name, Faults: s.faults}
}

// readSheet reads a table: first "# source: …; status: …", then a header with all the
// wanted columns, then rows. Other columns are taken too, and ignored.
func readSheet(name string, r io.Reader, columns []string) (*sheet, error) {
	s := &sheet{name: name}
	text, err := io.ReadAll(io.LimitReader(r, largestTable+1))
	if err != nil {
		return nil, &TableError{Table: name, Faults: []string{err.Error()}}
	}
	body := strings.TrimPrefix(string(text), "\ufeff")
	switch {
	case len(text) > largestTable:
		s.fail("is larger than %d bytes", largestTable)
	case !utf8.ValidString(body):
		s.fail("is no UTF-8 text")
	default:
		s.readHead(body)
		s.readBody(body, columns)
	}
	return s, s.err()
}

// readHead reads the line that says where the figures come from.
func (s *sheet) readHead(body string) {
	head, _, _ := strings.Cut(body, "\n")
	text, isComment := strings.CutPrefix(strings.TrimSpace(head), "# source:")
	source, status, hasStatus := cutLast(text, "; status:")
	s.source, s.status = strings.TrimSpace(source), strings.TrimSpace(status)
	if !isComment || !hasStatus || s.source == "" || s.status == "" {
		s.fail("line 1 must say where the figures come from: # source: …; status: …")
	}
}

// cutLast splits at the last separator.
func cutLast(text, separator string) (before, after string, found bool) {
	i := strings.LastIndex(text, separator)
	if i < 0 {
		return text, "", false
	}
	return text[:i], text[i+len(separator):], true
}

func (s *sheet) readBody(body string, columns []string) {
	r := csv.NewReader(strings.NewReader(withoutComments(body)))
	header, err := r.Read()
	if err != nil {
		s.fail("has no line of column names")
		return
	}
	if !s.checkHeader(header, columns) {
		return
	}
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			s.fail("%s", csvFault(err))
			if !errors.Is(err, csv.ErrFieldCount) {
				break
			}
			continue
		}
		if len(s.rows) == mostRows {
			s.fail("has more than %d rows", mostRows)
			break
		}
		line, _ := r.FieldPos(0)
		s.rows = append(s.rows, newRow(s, line, header, cells))
	}
	if len(s.rows) == 0 && len(s.faults) == 0 {
		s.fail("has no rows")
	}
}

// withoutComments empties the lines that begin with # and a blank, so that the others keep
// their numbers. A # alone does not make a comment: #10 is a stud.
func withoutComments(body string) string {
	lines := strings.Split(body, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "# ") {
			lines[i] = ""
		}
	}
	return strings.Join(lines, "\n")
}

func newRow(s *sheet, line int, header, cells []string) row {
	r := row{sheet: s, line: line, cells: make(map[string]string, len(header))}
	for i, name := range header {
		r.cells[name] = strings.TrimSpace(cells[i])
	}
	return r
}

// checkHeader notes missing and doubled columns.
func (s *sheet) checkHeader(header, columns []string) bool {
	have := map[string]bool{}
	for i, name := range header {
		header[i] = strings.TrimSpace(name)
		if have[header[i]] {
			s.fail("column %s stands twice", header[i])
		}
		have[header[i]] = true
	}
	for _, name := range columns {
		if !have[name] {
			s.fail("column %s is missing", name)
		}
	}
	return len(s.faults) == 0
}

// csvFault words a fault of the CSV reader.
func csvFault(err error) string {
	var parse *csv.ParseError
	if !errors.As(err, &parse) {
		return err.Error()
	}
	if errors.Is(err, csv.ErrFieldCount) {
		return fmt.Sprintf("line %d has more or fewer cells than there are columns", parse.Line)
	}
	return fmt.Sprintf("line %d: %v", parse.Line, parse.Err)
}

// fail notes a fault of one cell.
func (r row) fail(column, format string, args ...any) {
	r.sheet.fail("line %d, column %s: %s", r.line, column, fmt.Sprintf(format, args...))
}

// text returns a cell, which may be empty.
func (r row) text(column string) string { return r.cells[column] }

// word returns a cell that must not be empty.
func (r row) word(column string) string {
	w := r.cells[column]
	if w == "" {
		r.fail(column, "is empty")
	}
	return w
}

// number returns a cell that must be a number from 0 up.
func (r row) number(column string) float64 {
	x, ok := plainNumber(r.cells[column])
	if !ok {
		r.fail(column, "%q is no number", r.cells[column])
	}
	return x
}

// optional returns a number, or 0 for an empty cell.
func (r row) optional(column string) float64 {
	if r.cells[column] == "" {
		return 0
	}
	return r.number(column)
}

// positive returns a cell that must be a number above 0.
func (r row) positive(column string) float64 {
	before := len(r.sheet.faults)
	x := r.number(column)
	if x == 0 && len(r.sheet.faults) == before {
		r.fail(column, "must be above 0")
	}
	return x
}

// numbers returns the numbers of a cell, separated by blanks, which must rise.
func (r row) numbers(column string) []float64 {
	var out []float64
	for _, field := range strings.Fields(r.word(column)) {
		x, ok := plainNumber(field)
		if !ok || x == 0 {
			r.fail(column, "%q is no number above 0", field)
			return nil
		}
		if len(out) > 0 && x <= out[len(out)-1] {
			r.fail(column, "%s does not rise", field)
		}
		out = append(out, x)
	}
	return out
}

// status returns how far the row is to be trusted: its own word, else the table's.
func (r row) status() Status {
	if s := r.cells["status"]; s != "" {
		return statusOf(s)
	}
	return statusOf(r.sheet.status)
}

// plainNumber reads a finite number that is not negative.
func plainNumber(text string) (float64, bool) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
		return 0, false
	}
	return x, true
}
