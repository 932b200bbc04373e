package report

import (
	"encoding/json"
	"io"

	"github.com/lugwright/lugwright/wiring/diag"
)

// The names that a program checks before it reads on. A change that adds keys keeps the
// version; one that removes or redefines a key raises it.
const (
	jsonFormat  = "lugwright findings"
	jsonVersion = 1
)

// JSON writes the report for a program. The shape is described by findings.schema.json
// beside this file, which [Schema] returns. Findings below r.Least are left out and still
// counted; waived ones are always there. The error is that of w.
func JSON(w io.Writer, r Report) error {
	doc := jsonReport{
		Format:  jsonFormat,
		Version: jsonVersion,
		Program: jsonProgram{Name: "lugwright", Version: r.Version},
		Jobs:    []jsonJob{},
		Count:   jsonCount(r.Count()),
	}
	for _, job := range r.Jobs {
		doc.Jobs = append(doc.Jobs, r.jsonJob(job))
	}
	return writeJSON(w, doc)
}

// writeJSON writes one indented document; text is UTF-8, nothing is escaped for HTML.
func writeJSON(w io.Writer, doc any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(doc)
}

type jsonReport struct {
	Format  string      `json:"format"`
	Version int         `json:"version"`
	Program jsonProgram `json:"program"`
	Jobs    []jsonJob   `json:"jobs"`
	Count   jsonCount   `json:"count"`
}

type jsonProgram struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

type jsonJob struct {
	File       string           `json:"file"`
	Number     string           `json:"number,omitempty"`
	Title      string           `json:"title,omitempty"`
	Usable     bool             `json:"usable"`
	Findings   []jsonFinding    `json:"findings"`
	NotChecked []jsonNotChecked `json:"notChecked"`
	Count      jsonCount        `json:"count"`
}

type jsonFinding struct {
	Rule     string        `json:"rule"`
	Level    string        `json:"level"`
	Message  string        `json:"message"`
	Detail   string        `json:"detail,omitempty"`
	Advice   string        `json:"advice,omitempty"`
	At       *jsonPlace    `json:"at,omitempty"`
	Related  []jsonRelated `json:"related,omitempty"`
	Subjects []string      `json:"subjects,omitempty"`
	States   []string      `json:"states,omitempty"`
	Waived   *jsonWaiver   `json:"waived,omitempty"`
}

type jsonNotChecked struct {
	Rule string     `json:"rule"`
	What string     `json:"what"`
	Why  string     `json:"why"`
	At   *jsonPlace `json:"at,omitempty"`
}

// jsonPlace is a stretch of one line: lines and columns count from 1, columns in
// characters; endColumn is the one behind the last character.
type jsonPlace struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndColumn int    `json:"endColumn"`
}

type jsonRelated struct {
	Label string     `json:"label"`
	At    *jsonPlace `json:"at,omitempty"`
}

type jsonWaiver struct {
	Reason string     `json:"reason"`
	By     string     `json:"by,omitempty"`
	At     *jsonPlace `json:"at,omitempty"`
}

type jsonCount struct {
	Errors     int `json:"errors"`
	Warnings   int `json:"warnings"`
	Notes      int `json:"notes"`
	Waived     int `json:"waived"`
	NotChecked int `json:"notChecked"`
}

func (r Report) jsonJob(job Job) jsonJob {
	out := jsonJob{
		File:       job.File,
		Number:     job.Number,
		Title:      job.Title,
		Usable:     !job.Unusable,
		Findings:   []jsonFinding{},
		NotChecked: []jsonNotChecked{},
		Count:      jsonCount(job.Count()),
	}
	for _, f := range job.Findings {
		if f.Waived != nil || r.shown(f) {
			out.Findings = append(out.Findings, asJSON(f))
		}
	}
	for _, n := range job.NotChecked {
		out.NotChecked = append(out.NotChecked, jsonNotChecked{Rule: n.Rule, What: n.What, Why: n.Why, At: placeJSON(n.At)})
	}
	return out
}

func asJSON(f diag.Finding) jsonFinding {
	out := jsonFinding{
		Rule:     f.Rule,
		Level:    f.Level.String(),
		Message:  f.Message,
		Detail:   f.Detail,
		Advice:   f.Advice,
		At:       placeJSON(f.At),
		Subjects: f.Subjects,
		States:   f.States,
	}
	for _, place := range f.Related {
		out.Related = append(out.Related, jsonRelated{Label: place.Label, At: placeJSON(place.Span)})
	}
	if f.Waived != nil {
		out.Waived = &jsonWaiver{Reason: f.Waived.Reason, By: f.Waived.By, At: placeJSON(f.Waived.Span)}
	}
	return out
}

// placeJSON is nil for a span that points nowhere.
func placeJSON(at diag.Span) *jsonPlace {
	if !at.Known() {
		return nil
	}
	return &jsonPlace{File: at.File, Line: at.Line, Column: at.Col, EndColumn: max(at.EndCol, at.Col)}
}
