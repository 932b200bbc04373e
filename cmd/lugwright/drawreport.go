package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"github.com/lugwright/lugwright/render/proof"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/svg"
)

// reportWords are the forms of the report about drawn schematics.
var reportWords = []string{"none", "text", "json"}

// sheetQuality is how well one sheet of the schematic reads.
type sheetQuality struct {
	Sheet  int         `json:"sheet"`
	Title  string      `json:"title"`
	Table  []proof.Row `json:"table"`
	Faults []string    `json:"faults"` // what could be misread
}

// qualities reads every sheet of the schematic back from its file, as the paper shows it.
func qualities(d *sheet.Document) ([]sheetQuality, error) {
	all := []sheetQuality{}
	for _, s := range d.Sheets {
		if s.Kind.ID != "schematic" {
			continue
		}
		var file bytes.Buffer
		page := svg.New(&file, s.Area().Width(), s.Area().Height(), svg.Options{})
		s.Laid.Draw(page)
		if err := page.Finish(); err != nil {
			return nil, fmt.Errorf("sheet %d: %w", s.Number, err)
		}
		drawing, err := proof.Read(file.Bytes())
		if err != nil {
			return nil, fmt.Errorf("sheet %d: %w", s.Number, err)
		}
		r := drawing.Judge(nil)
		one := sheetQuality{Sheet: s.Number, Title: s.Name(), Table: r.Soft.Table(), Faults: []string{}}
		for _, f := range r.Faults {
			one.Faults = append(one.Faults, f.String())
		}
		all = append(all, one)
	}
	return all, nil
}

// tellQuality writes the report in a form of reportWords.
func tellQuality(w io.Writer, d *sheet.Document, form string) error {
	if form == "none" {
		return nil
	}
	all, err := qualities(d)
	if err != nil {
		return err
	}
	if form == "json" {
		out := json.NewEncoder(w)
		out.SetIndent("", "  ")
		return out.Encode(all)
	}
	for _, q := range all {
		if err := q.write(w); err != nil {
			return err
		}
	}
	return nil
}

func (q *sheetQuality) write(w io.Writer) error {
	if _, err := fmt.Fprintf(w, "sheet %d, %s\n", q.Sheet, q.Title); err != nil {
		return err
	}
	for _, r := range q.Table {
		line := fmt.Sprintf("  %-30s %s", r.Name, r.Have)
		if r.Missed {
			line += ", missed: " + r.Limit
		}
		if _, err := fmt.Fprintln(w, line); err != nil {
			return err
		}
	}
	for _, f := range q.Faults {
		if _, err := fmt.Fprintln(w, "  fault: "+f); err != nil {
			return err
		}
	}
	return nil
}
