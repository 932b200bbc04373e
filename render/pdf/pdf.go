// Package pdf writes pages into one PDF file (ISO 32000-1): vectors, real text in the faces
// of package ink, cut down to their used characters and embedded, bookmarks, and links from
// group to group. Paper of any size; a page is drawn at its true size, 1:1.
//
// The writer is our own. The library that was tried first, fpdf 0.12, names cut-down faces
// without the tag that the standard demands (9.6.4), puts bookmarks of sheets of several
// sizes in wrong places, describes no link, and panics on characters above the basic plane;
// what is left of the format is less than the code around these.
//
// The same pages give the same bytes: there is no clock in it, and the file's identifier is
// a digest of what it holds.
package pdf

import (
	"fmt"
	"io"
	"time"

	"github.com/lugwright/lugwright/render/ink"
)

// Options of a file. Words are for the viewer's window, for searching in an archive, and
// for screen readers.
type Options struct {
	Title    string // of the whole document
	Author   string // who answers for it; may be empty
	Subject  string // a sentence more; may be empty
	Job      string // number of the job; may be empty
	Revision string // its index; may be empty
	Language string // of the words on the sheets, as BCP 47 writes it; empty: "en"

	// Made is the date that the file carries. The zero time: none, since a date of printing
	// would make the same sheets another file every day.
	Made time.Time

	// Indexes are lists of bookmarks behind those of the pages.
	Indexes []Index
}

// Index is a bookmark for each thing of a class, in the order of the document: all wires.
type Index struct {
	Title string // "wires"
	Class string // of the groups that are listed
}

// Document is a file that pages are added to. It keeps everything until Finish.
type Document struct {
	w     io.Writer
	opt   Options
	pages []*raw
	fonts []*font // by face
	page  *Page   // the one that is drawn on
	err   error   // the first fault
}

// New begins a file.
func New(w io.Writer, opt Options) *Document {
	if opt.Language = ink.Clean(opt.Language); opt.Language == "" {
		opt.Language = "en"
	}
	d := &Document{w: w, opt: opt}
	for _, face := range ink.Faces() {
		d.fonts = append(d.fonts, newFont(face))
	}
	return d
}

// Page is one page of a document.
type Page struct{ *ink.Checked }

// Page begins the next page, on paper of a size in millimetres. Its title becomes a
// bookmark. The page before must be complete; what went wrong on it, Finish reports.
func (d *Document) Page(widthMM, heightMM float64, title string) *Page {
	d.settle()
	r := newRaw(d.fonts, len(d.pages), widthMM, heightMM, ink.Clean(title))
	d.pages = append(d.pages, r)
	d.page = &Page{ink.Check(r)}
	return d.page
}

// settle keeps the first fault of the page that was drawn on.
func (d *Document) settle() {
	if d.page == nil {
		return
	}
	if err := d.page.Err(); err != nil && d.err == nil {
		d.err = fmt.Errorf("page %d: %w", len(d.pages), err)
	}
	d.page = nil
}

// Finish writes the file. It returns the first fault of a drawing (see ink.Checked) or of
// the writer; the file is whole either way, unless the writer failed or there is no page. It
// must be called once.
func (d *Document) Finish() error {
	d.settle()
	if len(d.pages) == 0 {
		return fmt.Errorf("pdf: a document needs a page")
	}
	file, err := d.assemble()
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if _, err := d.w.Write(file); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if d.err != nil {
		return fmt.Errorf("pdf: %w", d.err)
	}
	return nil
}
