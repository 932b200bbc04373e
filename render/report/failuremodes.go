package report

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/failuremode"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// FailureModes is an analysis of failure modes and effects.
type FailureModes struct {
	Version string // of the program
	File    string // the job's
	Harness *wiring.Harness
	Of      *wiring.Part // what it was narrowed to; nil: the whole cart
	Rows    []failuremode.Row
}

const (
	failureModesFormat  = "lugwright failure modes"
	failureModesVersion = 1
)

//go:embed failuremodes.schema.json
var failureModesSchema []byte

// FailureModesSchema returns the JSON Schema (draft 2020-12) of what [FailureModesJSON]
// writes.
func FailureModesSchema() []byte { return slices.Clone(failureModesSchema) }

// failureColumns are the columns of the worksheet, after IEC 60812.
var failureColumns = []string{
	"item", "is", "failure mode", "failure", "cause", "local effect", "final effect",
	"detection", "compensating provision", "severity", "occurrence",
}

func failureCells(r failuremode.Row) []string {
	return []string{
		r.Item, r.Is, r.Mode, r.Failure, r.Cause, r.Local, r.End,
		r.Detection, r.Limits, r.Severity.String(), r.Occurrence.String(),
	}
}

// FailureModesCSV writes an analysis for a spreadsheet: UTF-8 with commas, one row a fault.
// Cells that a spreadsheet would take for a formula begin with '. The error is that of w.
func FailureModesCSV(w io.Writer, f FailureModes) error {
	out := csv.NewWriter(w)
	rows := [][]string{failureColumns}
	for _, r := range f.Rows {
		cells := failureCells(r)
		for i := range cells {
			cells[i] = unformula(cells[i])
		}
		rows = append(rows, cells)
	}
	if err := out.WriteAll(rows); err != nil {
		return err
	}
	return out.Error()
}

// FailureModesText writes an analysis for a person: faults by severity, gravest first. The
// error is that of w.
func FailureModesText(w io.Writer, f FailureModes, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := newPrinter(o, nil)
	p.line(p.bold(oneLine(f.Harness.Identity.Number)) + "  " + oneLine(f.Harness.Identity.Title))
	what := "the whole cart"
	if f.Of != nil {
		what = f.Of.Designation + " and its wires"
	}
	p.entry("", oneLine(fmt.Sprintf("Failure modes and effects of %s, one fault at a time, settled in every state. Columns after IEC 60812; severity and occurrence are classes of our own.", what)))
	for s := symptom.Hazard; s >= symptom.None; s-- {
		rows := slices.DeleteFunc(slices.Clone(f.Rows), func(r failuremode.Row) bool { return r.Severity != s })
		if len(rows) == 0 {
			continue
		}
		p.line("")
		p.line(p.bold(fmt.Sprintf("%s: %d", sentence(s.String()), len(rows))))
		if s == symptom.None {
			p.entry("  ", "Nothing changes in any state, so nothing shows these but a look.")
		}
		for _, r := range rows {
			p.failure(r)
		}
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// failure sets one row.
func (p *printer) failure(r failuremode.Row) {
	p.entry(fmt.Sprintf("  %-10s  ", r.Occurrence), p.bold(oneLine(r.Failure)))
	const margin = "              "
	for _, line := range []string{r.End, r.Local, r.Limits} {
		if line != "" {
			p.entry(margin, oneLine(line))
		}
	}
	if r.Severity == symptom.Latent {
		p.entry(margin, oneLine("found by "+r.Detection))
	}
}

type jsonFailureModes struct {
	Format  string        `json:"format"`
	Version int           `json:"version"`
	Program jsonProgram   `json:"program"`
	Job     jsonJobName   `json:"job"`
	Of      string        `json:"of,omitempty"`
	Rows    []jsonFailure `json:"failureModes"`
}

type jsonFailure struct {
	Item       string `json:"item"`
	Is         string `json:"is"`
	Mode       string `json:"mode"`
	Failure    string `json:"failure"`
	Cause      string `json:"cause"`
	Local      string `json:"localEffect,omitempty"`
	End        string `json:"finalEffect,omitempty"`
	Detection  string `json:"detection"`
	Limits     string `json:"compensatingProvision,omitempty"`
	Severity   string `json:"severity"`
	Occurrence string `json:"occurrence"`
}

// FailureModesJSON writes an analysis for a program. The shape is described by
// failuremodes.schema.json beside this file. The error is that of w.
func FailureModesJSON(w io.Writer, f FailureModes) error {
	doc := jsonFailureModes{
		Format: failureModesFormat, Version: failureModesVersion, Program: jsonProgram{Name: "lugwright", Version: f.Version},
		Job:  jsonJobName{File: f.File, Number: f.Harness.Identity.Number},
		Rows: []jsonFailure{},
	}
	if f.Of != nil {
		doc.Of = f.Of.Designation
	}
	for _, r := range f.Rows {
		doc.Rows = append(doc.Rows, jsonFailure{
			r.Item, r.Is, r.Mode, r.Failure, r.Cause, r.Local, r.End, r.Detection, r.Limits, r.Severity.String(), r.Occurrence.String(),
		})
	}
	return writeJSON(w, doc)
}
