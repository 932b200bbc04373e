package flow

import (
	"slices"

	"github.com/lugwright/lugwright/render/ink"
)

// Column says how a column of a table is set.
type Column struct {
	Head  string
	Right bool     // words end at the right edge, as numbers do
	Face  ink.Face //
	Least float64  // width at least, in millimetres
	Most  float64  // width at most, in millimetres; 0: as wide as its longest words, if there is room
	Lines int      // most lines that the words of a cell are broken into; 0: 4
	Whole bool     // gives no room to other columns: codes and sizes, which must not be cut
}

// Cell is what stands in one field of a table: lines below each other, each of which may be
// broken further. An empty cell is a field to write in.
type Cell struct {
	Lines []Word
}

// Word is one line of a cell.
type Word struct {
	Text string
	Link string // where it leads; see ink.Group
	Face ink.Face
	Icon *Icon // before it
}

// Icon is a small drawing before words.
type Icon struct {
	Wide float64                                // in millimetres
	Draw func(page ink.Page, x, middle float64) // from its left end, about the middle of the line
}

// Text is a cell with words.
func Text(lines ...string) Cell {
	var c Cell
	for _, line := range lines {
		c.Lines = append(c.Lines, Word{Text: line})
	}
	return c
}

// Bold is a cell with heavy words.
func Bold(lines ...string) Cell {
	c := Text(lines...)
	for i := range c.Lines {
		c.Lines[i].Face = ink.Bold
	}
	return c
}

// Linked is a cell whose words lead somewhere.
func Linked(text, link string) Cell { return Cell{Lines: []Word{{Text: text, Link: link}}} }

// Row is one row of a table.
type Row struct {
	Group ink.Group // what it is about; empty class: nothing in particular
	Cells []Cell    // by column; fewer leave fields empty
	Span  string    // words across the whole table in place of cells, which stay with the next row
	Tall  float64   // height at least, in millimetres
}

// Table is columns and rows.
type Table struct {
	Columns []Column
	Rows    []Row
	Natural bool // no wider than its words need, instead of the whole column
}

// defaultLines of a cell.
const defaultLines = 4

// Table adds a table. Its head is repeated where it goes on, and no row is divided.
func (f *Flow) Table(t Table) {
	l := layTable(t, f.width)
	head := l.row(Row{Cells: l.heads()}, true)
	head.keep = true
	f.add(head)
	for _, r := range t.Rows {
		s := l.span(r)
		if r.Span == "" {
			s = l.row(r, false)
		}
		s.head = head
		f.add(s)
	}
}

// laidTable is a table whose columns have widths.
type laidTable struct {
	Table
	wide  []float64
	total float64
}

func layTable(t Table, width float64) *laidTable {
	l := &laidTable{Table: t}
	l.wide = columnWidths(t, width)
	for _, w := range l.wide {
		l.total += w
	}
	return l
}

func (l *laidTable) heads() []Cell {
	var cells []Cell
	for _, c := range l.Columns {
		cells = append(cells, Bold(c.Head))
	}
	return cells
}

// setLine is a line of a cell, ready to be written.
type setLine struct {
	Word
	x     float64 // of the words, from the left edge of the row
	right bool
}

// row sets a row.
func (l *laidTable) row(r Row, head bool) *strip {
	var cells [][]setLine
	x, most := 0.0, 1
	for i, c := range l.Columns {
		var lines []setLine
		if i < len(r.Cells) {
			lines = setCell(r.Cells[i], c, x, l.wide[i])
		}
		cells = append(cells, lines)
		most = max(most, len(lines))
		x += l.wide[i]
	}
	high := max(r.Tall, float64(most)*Line+1.6)
	return &strip{high: high, draw: func(page ink.Page, x, y float64) {
		if r.Group.Class != "" {
			page.Open(r.Group)
			defer page.Close()
		}
		l.rules(page, x, y, high, head)
		for _, lines := range cells {
			for i, line := range lines {
				line.draw(page, x, y+1.1+Letter+float64(i)*Line)
			}
		}
	}}
}

// setCell breaks the words of a cell.
func setCell(c Cell, col Column, x, wide float64) []setLine {
	most := col.Lines
	if most == 0 {
		most = defaultLines
	}
	var lines []setLine
	for _, w := range c.Lines {
		face := w.Face
		if face == ink.Regular {
			face = col.Face
		}
		icon := 0.0
		if w.Icon != nil {
			icon = w.Icon.Wide
		}
		broken := Wrap(w.Text, face, wide-2*pad-icon, most)
		if len(broken) == 0 && w.Icon != nil {
			broken = []string{""}
		}
		for i, text := range broken {
			s := setLine{Word: Word{Text: text, Link: w.Link, Face: face}, x: x + pad + icon, right: col.Right}
			if col.Right {
				s.x = x + wide - pad
			}
			if i == 0 {
				s.Icon = w.Icon
			}
			lines = append(lines, s)
		}
	}
	return lines
}

func (s setLine) draw(page ink.Page, x, y float64) {
	if s.Icon != nil {
		s.Icon.Draw(page, x+s.x-s.Icon.Wide, y-Letter/2)
	}
	if s.Text == "" {
		return
	}
	t := ink.Text{At: ink.At(x+s.x, y), String: s.Text, Capital: Letter, Face: s.Face}
	if s.right {
		t.Anchor = ink.End
	}
	if s.Link != "" {
		page.Open(ink.Group{Class: "link", Name: s.Text, Link: s.Link})
		defer page.Close()
	}
	page.Text(t)
}

// rules draws the lines around a row and between its fields.
func (l *laidTable) rules(page ink.Page, x, y, high float64, head bool) {
	box := ink.Rect{Min: ink.At(x, y), Max: ink.At(x+l.total, y+high)}
	style := ink.Pen(ink.Thin)
	if head {
		page.Path(box.Path(), ink.Area(shade()))
		style = ink.Pen(ink.Medium)
	}
	page.Path(box.Path(), style)
	at := x
	for _, w := range l.wide[:len(l.wide)-1] {
		at += w
		page.Path(ink.Lines(ink.At(at, y), ink.At(at, y+high)), ink.Pen(ink.Hair))
	}
}

// shade is the ground of heads: light enough for a bad printer.
func shade() ink.Color { return ink.Color{R: 0xe8, G: 0xe8, B: 0xe8} }

// span sets words across the table.
func (l *laidTable) span(r Row) *strip {
	lines := Wrap(r.Span, ink.Bold, l.total-2*pad, 2)
	high := float64(len(lines))*Line + 2.2
	return &strip{high: high, keep: true, draw: func(page ink.Page, x, y float64) {
		box := ink.Rect{Min: ink.At(x, y), Max: ink.At(x+l.total, y+high)}
		page.Path(box.Path(), ink.Pen(ink.Thin))
		for i, line := range lines {
			write(page, x+pad, y+1.4+Letter+float64(i)*Line, line, ink.Bold, Letter)
		}
	}}
}

// columnWidths gives each column the width of its longest words, if all of that fits; else
// the widest columns that may give way are narrowed to one width, none below its longest single word as long as
// that can be had. What is left over is shared by the columns that may be wider.
func columnWidths(t Table, width float64) []float64 {
	n := len(t.Columns)
	want, least := make([]float64, n), make([]float64, n)
	for i, c := range t.Columns {
		want[i], least[i] = measureColumn(t, i)
		if c.Most > 0 {
			want[i] = min(want[i], c.Most)
		}
		least[i] = min(least[i], longestWord)
		want[i] = max(want[i], c.Least)
		if c.Whole {
			least[i] = want[i]
			continue
		}
		least[i] = min(max(least[i], c.Least), want[i])
	}
	wide := narrowed(want, least, width)
	if t.Natural {
		return wide
	}
	spread(t.Columns, wide, width)
	return wide
}

// longestWord is how wide a single word may make a column that has to give way, in
// millimetres: longer ones are cut.
const longestWord = 18.0

// measureColumn returns the widths of the longest line and of the longest word of a column.
func measureColumn(t Table, i int) (line, word float64) {
	c := t.Columns[i]
	measure := func(w Word) {
		face := w.Face
		if face == ink.Regular {
			face = c.Face
		}
		icon := 2 * pad
		if w.Icon != nil {
			icon += w.Icon.Wide
		}
		text := ink.Clean(w.Text)
		line = max(line, long(text, face)+icon)
		for _, one := range words(text) {
			word = max(word, long(one, face)+icon)
		}
	}
	measure(Word{Text: c.Head, Face: ink.Bold})
	for _, r := range t.Rows {
		if r.Span == "" && i < len(r.Cells) {
			for _, w := range r.Cells[i].Lines {
				measure(w)
			}
		}
	}
	return line, word
}

// long is the width of a text with room for a replaced font, and a hair for rounding.
func long(s string, face ink.Face) float64 { return ink.Width(s, face, Letter)*(1+ink.Slack) + 0.01 }

func words(s string) []string {
	var all []string
	begin := 0
	for i, r := range s {
		if r == ' ' {
			all = append(all, s[begin:i])
			begin = i + 1
		}
	}
	return append(all, s[begin:])
}

// narrowed cuts the widest columns down to one level at which all fit.
func narrowed(want, least []float64, width float64) []float64 {
	at := func(level float64) ([]float64, float64) {
		wide, sum := make([]float64, len(want)), 0.0
		for i := range want {
			wide[i] = min(want[i], max(level, least[i]))
			sum += wide[i]
		}
		return wide, sum
	}
	wide, sum := at(slices.Max(want))
	if sum <= width {
		return wide
	}
	low, high := 0.0, slices.Max(want)
	for range 50 {
		if middle := (low + high) / 2; sumAt(at, middle) > width {
			high = middle
		} else {
			low = middle
		}
	}
	wide, sum = at(low)
	if sum > width {
		// Not even the longest words fit beside each other: all give way alike.
		for i := range wide {
			wide[i] *= width / sum
		}
	}
	return wide
}

func sumAt(at func(float64) ([]float64, float64), level float64) float64 {
	_, sum := at(level)
	return sum
}

// spread shares what is left over among the columns without a greatest width.
func spread(columns []Column, wide []float64, width float64) {
	left, n := width, 0
	for i, w := range wide {
		left -= w
		if columns[i].Most == 0 {
			n++
		}
	}
	if left <= 0 || n == 0 {
		return
	}
	for i := range wide {
		if columns[i].Most == 0 {
			wide[i] += left / float64(n)
		}
	}
}
