package render

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/render/format"
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/render/sheets"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rules"
)

// Options of a packet. The zero Options draw every sheet as SVG on A4, with lengths as they
// were written.
type Options struct {
	Paper   frame.Paper      // zero: A4
	Units   quantity.System  // of lengths and torques
	Sheets  []string         // ids, numbers or titles of the sheets that are wanted, without regard to case; empty: all
	Formats []*format.Format // empty: SVG
}

// Files is where a packet goes.
type Files = format.Files

// A SheetError says that a sheet was asked for which the job does not have.
type SheetError = sheet.WantedError

// Stamped reports whether a file was written by [Packet] and has not been changed since.
// Line ends do not count: version control may have turned them.
func Stamped(file []byte) bool { return format.Stamped(file) }

// Compose lays out the sheets of a harness, for those who write them in their own way.
// What was found is taken to be the answer of all rules.
//
// The error is a *SheetError, that of ctx, or a fault of the drawing itself.
func Compose(ctx context.Context, h *wiring.Harness, found report.Job, o Options) (*sheet.Document, error) {
	book := sheet.NewBook(ctx, h, sheet.Found{Rules: rules.All(), Findings: found.Findings, NotChecked: found.NotChecked})
	d, err := sheet.Compose(book, sheets.All(), sheet.Options{Paper: o.Paper, Units: o.Units, Wanted: o.Sheets})
	if err != nil {
		return nil, fmt.Errorf("render: %w", err)
	}
	return d, nil
}

// Packet draws a harness and puts the sheets among files, in every form that is wanted, and
// beside them the list of what was found: open, waived and not checked. Open errors and
// warnings stand on the sheets that people build from too, and so does what the job waives,
// with the reason. Every file ends in a stamp; see [Stamped].
//
// An error is that of [Compose], or of files; files may then have been put and should not be
// kept. A sheet of the document that is not whole must not be built from; it says so itself.
func Packet(ctx context.Context, h *wiring.Harness, found report.Job, files Files, o Options) (*sheet.Document, error) {
	d, err := Compose(ctx, h, found, o)
	if err != nil {
		return nil, err
	}
	if len(o.Formats) == 0 {
		o.Formats = []*format.Format{format.SVG()}
	}
	for _, f := range o.Formats {
		if err := f.Write(d, files); err != nil {
			return d, fmt.Errorf("render: %s: %w", f.ID, err)
		}
	}
	return d, format.PutFindings(d.Name(), found, files)
}
