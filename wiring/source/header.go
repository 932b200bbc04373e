package source

import (
	"fmt"
	"strconv"

	"github.com/lugwright/lugwright/wiring/diag"
)

// Format is the version of the file format that this program reads.
const Format = 1

// Header returns the first entry of a file, which says what sort of file it is
// ("job: TP-14"), and checks a `format` key in front of it. The zero Entry means that
// there is none.
func Header(root *Node) (Entry, []diag.Finding) {
	var findings []diag.Finding
	if root == nil {
		return Entry{}, nil
	}
	for _, e := range root.Entries {
		if e.Key.Text != "format" {
			return e, findings
		}
		findings = append(findings, checkFormat(e.Value)...)
	}
	return Entry{}, findings
}

func checkFormat(value *Node) []diag.Finding {
	if value.Kind == Null {
		return nil
	}
	n, err := strconv.Atoi(value.Text)
	switch {
	case value.Kind != Scalar || err != nil || n < 1:
		return []diag.Finding{Fault(value.Span, "format is a whole number, such as format: 1")}
	case n > Format:
		return []diag.Finding{Fault(value.Span,
			fmt.Sprintf("this file asks for format %d, this program reads %d", n, Format))}
	}
	return nil
}
