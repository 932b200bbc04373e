package format

import (
	"bytes"

	"github.com/lugwright/lugwright/render/report"
)

// PutFindings puts the list of what was found among files, under the name that the files of
// a document begin with.
func PutFindings(name string, found report.Job, files Files) error {
	var list bytes.Buffer
	if err := report.Text(&list, report.Report{Jobs: []report.Job{found}}, report.TextOptions{}); err != nil {
		return err
	}
	return files.Put(name+"-findings.txt", stamp(list.Bytes(), plain))
}
