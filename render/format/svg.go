package format

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/svg"
)

// SVG writes each sheet as a file of its own. Links lead from file to file.
func SVG() *Format {
	return &Format{ID: "svg", About: "a drawing for each sheet", Write: writeSVG}
}

func writeSVG(d *sheet.Document, files Files) error {
	for _, s := range d.Sheets {
		drawing, err := drawSVG(d, s)
		if err != nil {
			return fmt.Errorf("sheet %d: %w", s.Number, err)
		}
		if err := files.Put(d.FileName(s, "svg"), stamp(drawing, markup)); err != nil {
			return err
		}
	}
	return nil
}

func drawSVG(d *sheet.Document, s *sheet.Sheet) ([]byte, error) {
	var out bytes.Buffer
	page := svg.New(&out, d.Paper.Width, d.Paper.Height, svg.Options{
		Title:      strings.TrimSpace(d.Book.Harness.Identity.Number + " " + s.Name()),
		EmbedFonts: true,
		Link:       func(link string) string { return href(d, s, link) },
	})
	s.Draw(page)
	if err := page.Finish(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// href is where a link on a sheet leads: to a place on the same sheet, or on that of another
// file.
func href(d *sheet.Document, from *sheet.Sheet, link string) string {
	to, ok := d.Find(link)
	if !ok {
		return ""
	}
	place := "#" + svg.ID(link)
	if to.Sheet == from {
		return place
	}
	return d.FileName(to.Sheet, "svg") + place
}
