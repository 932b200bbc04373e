package format

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/png"
	"github.com/lugwright/lugwright/render/sheet"
)

// PNG writes each sheet as a picture of its own.
func PNG() *Format {
	return &Format{ID: "png", About: "a picture of each sheet, to send or to preview", Write: writePNG}
}

func writePNG(d *sheet.Document, files Files) error {
	for _, s := range d.Sheets {
		var out bytes.Buffer
		page := png.New(&out, d.Paper.Width, d.Paper.Height, png.Options{
			Title: strings.TrimSpace(d.Book.Harness.Identity.Number + " " + s.Name()),
		})
		s.Draw(page)
		if err := page.Finish(); err != nil {
			return fmt.Errorf("sheet %d: %w", s.Number, err)
		}
		if err := files.Put(d.FileName(s, "png"), stampPNG(out.Bytes())); err != nil {
			return err
		}
	}
	return nil
}
