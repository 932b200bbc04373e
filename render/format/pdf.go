package format

import (
	"bytes"
	"strconv"
	"strings"
	"time"

	"github.com/lugwright/lugwright/render/pdf"
	"github.com/lugwright/lugwright/render/sheet"
)

// PDF writes all sheets as one file, one a page.
func PDF() *Format {
	return &Format{ID: "pdf", About: "all sheets in one file, to print or to attach", Write: writePDF}
}

func writePDF(d *sheet.Document, files Files) error {
	var out bytes.Buffer
	file := pdf.New(&out, pdfOptions(d))
	for _, s := range d.Sheets {
		s.Draw(file.Page(d.Paper.Width, d.Paper.Height, strconv.Itoa(s.Number)+" "+s.Name()))
	}
	if err := file.Finish(); err != nil {
		return err
	}
	return files.Put(d.Name()+".pdf", stampPDF(out.Bytes()))
}

// pdfOptions say what the document is. Its date is that of the last revision, so that the
// same job is the same file.
func pdfOptions(d *sheet.Document) pdf.Options {
	h := d.Book.Harness
	o := pdf.Options{
		Title:   titleOf(d),
		Author:  h.Shop.Name,
		Subject: h.Identity.About,
		Job:     h.Identity.Number,
		Indexes: []pdf.Index{{Title: "wires", Class: "wire"}, {Title: "parts", Class: "part"}},
	}
	if n := len(h.Identity.History); n > 0 {
		last := h.Identity.History[n-1]
		o.Revision = last.Index
		// A date that is none leaves the file without one.
		o.Made, _ = time.Parse(time.DateOnly, last.Date)
	}
	return o
}

// titleOf names the whole document: "TP-14 Lithium conversion".
func titleOf(d *sheet.Document) string {
	id := d.Book.Harness.Identity
	return strings.TrimSpace(id.Number + " " + id.Title)
}
