// Package svg writes a page as SVG: real text in the faces of package ink, one element a
// mark, groups with classes and data attributes, nothing that runs or loads anything.
//
// It is the only package that imports the SVG writer. That library escapes the bodies of
// elements but neither attributes nor styles, so every attribute here is made of constants,
// of numbers, or of text that has been cleaned and escaped.
package svg

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"github.com/lugwright/lugwright/render/ink"
)

// Options of a file. The zero value makes a stand-alone file that names its fonts.
type Options struct {
	Title       string // what the sheet is, for the browser's tab and for screen readers
	Description string // a sentence or two more; may be empty
	Language    string // of the words on the sheet, as BCP 47 writes it; empty: "en"

	// Link says where a link of a group leads, "#wire-W37" or "other.svg#wire-W37"; empty for
	// one that leads nowhere. Nil: the file has no links. See [ID].
	Link func(link string) string

	// Inside leaves out the XML declaration, for an <svg> inside an HTML page.
	Inside bool
	// EmbedFonts carries the glyphs that are used inside the file, some 10 kB a face. Without
	// it a viewer that lacks the faces takes one of Arial's width or, at worst, one that is
	// ink.Slack wider. Some programs ignore embedded faces in either case.
	EmbedFonts bool
}

// Page is a sheet that becomes an SVG file. One unit of its coordinates is a millimetre.
type Page struct {
	*ink.Checked
	raw *raw
}

// New begins a file for paper of a size in millimetres. Nothing that goes wrong on the way
// stops the drawing: Finish reports the first fault.
func New(w io.Writer, widthMM, heightMM float64, opt Options) *Page {
	out := bufio.NewWriter(w) // which also keeps the first error, as the library does not
	r := &raw{out: out, svg: svgo.New(out), width: widthMM, height: heightMM, opt: opt, ids: map[string]bool{}}
	r.svg.Decimals = ink.Decimals
	r.begin()
	return &Page{Checked: ink.Check(r), raw: r}
}

// Finish ends the file. It returns the first fault of the drawing (see ink.Checked) or of
// the writer; the file is whole either way, unless the writer failed. It must be called
// once, after the last group is closed.
func (p *Page) Finish() error {
	err := p.Checked.Err()
	fontErr := p.raw.end()
	for _, err := range []error{p.raw.out.Flush(), err, fontErr} {
		if err != nil {
			return fmt.Errorf("svg: %w", err)
		}
	}
	return nil
}

// raw writes marks that have passed the checks.
type raw struct {
	out           *bufio.Writer
	svg           *svgo.SVG
	width, height float64
	opt           Options
	open          []bool           // whether each open group is a link
	ids           map[string]bool  // that are given
	used          [3]map[rune]bool // characters by face, if the faces are embedded
}

func (r *raw) Size() (width, height float64) { return r.width, r.height }

// begin writes the root element, a group with what all marks share, and the paper.
func (r *raw) begin() {
	if !r.opt.Inside {
		fmt.Fprintln(r.out, `<?xml version="1.0" encoding="UTF-8"?>`)
	}
	language := ink.Clean(r.opt.Language)
	if language == "" {
		language = "en"
	}
	w, h := ink.Decimal(r.width), ink.Decimal(r.height)
	fmt.Fprintf(r.out, "<svg xmlns=\"http://www.w3.org/2000/svg\" %s>\n", attributes(
		attr{"version", "1.1"}, attr{"width", w + "mm"}, attr{"height", h + "mm"},
		attr{"viewBox", "0 0 " + w + " " + h}, attr{"xml:lang", language},
		attr{"role", "graphics-document document"}))
	if title := ink.Clean(r.opt.Title); title != "" {
		r.svg.Title(title)
	}
	if description := ink.Clean(r.opt.Description); description != "" {
		r.svg.Desc(description)
	}
	r.svg.Group(attributes(
		attr{"fill", "none"}, attr{"font-family", families[ink.Regular]},
		// These two have no attribute of their own.
		attr{"style", "font-kerning:none;font-variant-ligatures:none"}))
	r.svg.Rect(0, 0, r.width, r.height, attributes(attr{"class", "paper"}, attr{"fill", "#fff"}))
}

// end closes what is open and adds the faces, whose characters are known only now.
func (r *raw) end() error {
	for len(r.open) > 0 {
		r.Close()
	}
	r.svg.Gend()
	err := r.embedFonts()
	r.svg.End()
	return err
}

func (r *raw) Path(p ink.Path, s ink.Style) {
	if data := pathData(p); data != "" {
		r.svg.Path(data, attributes(styleOf(s)...))
	}
}

func (r *raw) Text(t ink.Text) {
	r.note(t)
	r.svg.Text(t.At.X, t.At.Y, t.String, attributes(textStyle(t)...))
}

func (r *raw) Open(g ink.Group) {
	list := []attr{{"class", g.Class}}
	if id := r.idFor(g); id != "" {
		list = append(list, attr{"id", id})
	}
	if g.Name != "" {
		list = append(list, attr{"data-name", ink.Clean(g.Name)})
	}
	for _, key := range slices.Sorted(maps.Keys(g.Data)) {
		if key == "name" {
			continue // Group.Name has that attribute
		}
		list = append(list, attr{"data-" + key, ink.Clean(g.Data[key])})
	}
	r.svg.Group(attributes(list...))
	if title := ink.Clean(g.Title); title != "" {
		r.svg.Title(title)
	}
	r.open = append(r.open, r.openLink(g.Link))
}

func (r *raw) Close() {
	last := len(r.open) - 1
	if r.open[last] {
		r.svg.LinkEnd()
	}
	r.open = r.open[:last]
	r.svg.Gend()
}

// attr is one attribute; its name is a constant of this package or a checked plain word.
type attr struct{ name, value string }

// attributes joins and escapes.
func attributes(list ...attr) string {
	var b strings.Builder
	for i, a := range list {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(a.name)
		b.WriteString(`="`)
		escape(&b, a.value)
		b.WriteByte('"')
	}
	return b.String()
}
