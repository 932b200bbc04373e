// Package flow sets words and tables on pages: paragraphs, headings and tables one below the
// other, in one column or several, with a new page where one is full and the heads of tables
// repeated there. Nothing is wider than its column, whatever it says.
//
// A [Flow] is filled from the top and then broken into pages, each of which knows how to
// draw itself.
package flow

import (
	"github.com/lugwright/lugwright/render/ink"
)

// Measures in millimetres.
const (
	Letter = 2.5                      // height of capitals of all that a reader needs (ISO 3098)
	Line   = Letter * ink.LineSpacing // from one baseline to the next
	Title  = 3.5                      // height of capitals of headings
	pad    = 1.2                      // from a rule to the words beside it
	gutter = 6.0                      // between columns
)

// strip is what is not divided between two pages, as high as it has to be.
type strip struct {
	high float64
	draw func(page ink.Page, x, y float64) // from its upper left corner
	head *strip                            // repeated over it at the top of a column; nil: nothing
	keep bool                              // never the last in a column: it belongs to the next one
	gap  bool                              // empty room, which is dropped at the top of a column
	last bool                              // what follows begins a column
}

// Flow is a sequence of things to be set in columns of one width.
type Flow struct {
	width  float64
	strips []*strip
}

// New begins a flow for columns of a width in millimetres.
func New(width float64) *Flow { return &Flow{width: width} }

// ColumnWidth is how wide each of a number of columns is that share a width in millimetres.
func ColumnWidth(width float64, columns int) float64 {
	return (width - gutter*float64(columns-1)) / float64(columns)
}

// Width is that of the columns, in millimetres.
func (f *Flow) Width() float64 { return f.width }

func (f *Flow) add(s *strip) { f.strips = append(f.strips, s) }

// Space leaves room, but not at the top of a column.
func (f *Flow) Space(high float64) {
	f.add(&strip{high: high, gap: true, draw: func(ink.Page, float64, float64) {}})
}

// Break ends the column.
func (f *Flow) Break() {
	f.add(&strip{last: true, gap: true, draw: func(ink.Page, float64, float64) {}})
}

// Figure adds something that draws itself below a point, in the width of the column.
func (f *Flow) Figure(high float64, draw func(page ink.Page, x, y float64)) {
	f.add(&strip{high: high, draw: draw})
}

// Heading adds a line in large letters that stays with what follows.
func (f *Flow) Heading(text string) {
	text = ink.Clean(text)
	f.add(&strip{high: Title * 1.9, keep: true, draw: func(page ink.Page, x, y float64) {
		capital, s := ink.Fit(text, ink.Bold, Title, Letter, f.width/(1+ink.Slack))
		write(page, x, y+Title*1.35, s, ink.Bold, capital)
	}})
}

// Paragraph adds words, broken into lines.
func (f *Flow) Paragraph(text string, face ink.Face) { f.Hanging("", text, face) }

// Hanging adds words behind a mark, their lines one below the other: "1." or a bullet.
func (f *Flow) Hanging(mark, text string, face ink.Face) {
	mark = ink.Clean(mark)
	indent := 0.0
	if mark != "" {
		indent = max(6, ink.Width(mark+" ", ink.Bold, Letter)*(1+ink.Slack))
	}
	lines := Wrap(text, face, f.width-indent, 0)
	for i, line := range lines {
		f.add(&strip{high: Line + 0.4, keep: i == 0 && len(lines) > 1, draw: func(page ink.Page, x, y float64) {
			if i == 0 {
				write(page, x, y+Line, mark, ink.Bold, Letter)
			}
			write(page, x+indent, y+Line, line, face, Letter)
		}})
	}
}

// Wrap breaks words into lines of a width in millimetres, with room for a replaced font; most
// is how many there may be, 0 any number.
func Wrap(text string, face ink.Face, width float64, most int) []string {
	return ink.Wrap(ink.Clean(text), face, Letter, width/(1+ink.Slack), most)
}

func write(page ink.Page, x, y float64, s string, face ink.Face, capital float64) {
	if s != "" {
		page.Text(ink.Text{At: ink.At(x, y), String: s, Capital: capital, Face: face})
	}
}

// placed is a strip with its place on a page.
type placed struct {
	strip *strip
	x, y  float64
}

// Pages breaks the flow into pages of a height in millimetres with a number of columns side
// by side, and returns how to draw each; none for an empty flow. The origin is the upper left
// corner. A strip that is higher than a page has one for itself and reaches over its foot:
// do not make any.
func (f *Flow) Pages(high float64, columns int) []func(ink.Page) {
	b := breaker{high: high, columns: columns, step: f.width + gutter}
	for i := 0; i < len(f.strips); {
		// What is kept together moves together.
		end := i
		for end < len(f.strips)-1 && f.strips[end].keep {
			end++
		}
		b.put(f.strips[i : end+1])
		i = end + 1
	}
	var pages []func(ink.Page)
	for _, list := range b.pages {
		pages = append(pages, func(page ink.Page) {
			for _, p := range list {
				p.strip.draw(page, p.x, p.y)
			}
		})
	}
	return pages
}

// breaker fills columns, and pages with columns.
type breaker struct {
	high, step float64
	columns    int
	pages      [][]placed
	column     int
	y          float64
}

func (b *breaker) put(group []*strip) {
	need := 0.0
	for _, s := range group {
		need += s.high
	}
	if len(b.pages) == 0 {
		b.pages = append(b.pages, nil)
	} else if b.y+need > b.high+1e-6 && b.y > 0 {
		b.next()
	}
	for _, s := range group {
		if s.last && b.y > 0 {
			b.next()
			continue
		}
		if s.gap && b.y == 0 {
			continue
		}
		if s.head != nil && b.y == 0 {
			b.place(s.head)
		}
		b.place(s)
	}
}

func (b *breaker) place(s *strip) {
	last := len(b.pages) - 1
	b.pages[last] = append(b.pages[last], placed{s, b.step * float64(b.column), b.y})
	b.y += s.high
}

// next begins a column, or a page.
func (b *breaker) next() {
	b.y = 0
	if b.column++; b.column >= b.columns {
		b.column = 0
		b.pages = append(b.pages, nil)
	}
}
