package format

import (
	"bytes"

	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/wiring/job"
)

// CSV writes the wire list as a file that a job can use again and a spreadsheet can open;
// see job.WriteCSV. Its stamp is a line that begins with #, which jobs pass over.
func CSV() *Format {
	return &Format{ID: "csv", About: "the wire list, for spreadsheets and jobs", Write: writeCSV}
}

func writeCSV(d *sheet.Document, files Files) error {
	var out bytes.Buffer
	if err := job.WriteCSV(&out, d.Book.Harness.Wires); err != nil {
		return err
	}
	return files.Put(d.Name()+"-wires.csv", stamp(out.Bytes(), plain))
}
