package report

import (
	_ "embed"
	"io"
	"slices"

	"github.com/lugwright/lugwright/wiring/diagnosis"
)

const (
	diagnosisFormat  = "lugwright diagnosis"
	diagnosisVersion = 1
)

//go:embed diagnosis.schema.json
var diagnosisSchema []byte

// DiagnosisSchema returns the JSON Schema (draft 2020-12) of what [DiagnosisJSON] writes.
func DiagnosisSchema() []byte { return slices.Clone(diagnosisSchema) }

type jsonDiagnosis struct {
	Format      string          `json:"format"`
	Version     int             `json:"version"`
	Program     jsonProgram     `json:"program"`
	Job         jsonJobName     `json:"job"`
	Saw         []string        `json:"saw"`
	SawNot      []string        `json:"sawNot"`
	Readings    []jsonTaken     `json:"readings"`
	Candidates  []jsonCandidate `json:"candidates"`
	Contradicts []string        `json:"contradicts,omitempty"`
	Next        *jsonNext       `json:"next,omitempty"`
}

type jsonTaken struct {
	jsonQuest
	Volts *float64 `json:"volts"`
}

type jsonCandidate struct {
	Fault      string   `json:"fault"`
	Occurrence string   `json:"occurrence,omitempty"`
	Share      *float64 `json:"share"` // of the likelihood of all that fit
}

type jsonNext struct {
	jsonQuest
	Bits     *float64      `json:"bits"`
	Outcomes []jsonOutcome `json:"outcomes,omitempty"`
}

type jsonOutcome struct {
	Low    *float64 `json:"low"`
	High   *float64 `json:"high"`
	Faults []string `json:"faults"`
}

// DiagnosisJSON writes where the search stands for a program. The shape is described by
// diagnosis.schema.json beside this file. The error is that of w.
func DiagnosisJSON(w io.Writer, d Diagnosis) error {
	t := d.Case.Table
	doc := jsonDiagnosis{
		Format: diagnosisFormat, Version: diagnosisVersion, Program: jsonProgram{Name: "lugwright", Version: d.Version},
		Job: jsonJobName{File: d.File, Number: t.Cart.Harness.Identity.Number},
		Saw: []string{}, SawNot: []string{}, Readings: []jsonTaken{}, Candidates: []jsonCandidate{},
	}
	for _, k := range d.Case.Saw {
		doc.Saw = append(doc.Saw, k.Key())
	}
	for _, k := range d.Case.SawNot {
		doc.SawNot = append(doc.SawNot, k.Key())
	}
	for _, r := range d.Case.Readings {
		doc.Readings = append(doc.Readings, jsonTaken{jsonQuestOf(t, diagnosis.Step{Measurement: r.Measurement}), thousandths(float64(r.Volts))})
	}
	for _, r := range d.Case.Contradicts() {
		doc.Contradicts = append(doc.Contradicts, r.Name())
	}
	fit := d.Case.Candidates()
	total := 0.0
	for _, k := range fit {
		total += k.Weight()
	}
	for _, k := range fit {
		one := jsonCandidate{Fault: k.Name(), Share: thousandths(k.Weight() / total)}
		if len(k.Faults) > 0 {
			one.Occurrence = k.Faults[0].Mode.Class.String()
		}
		doc.Candidates = append(doc.Candidates, one)
	}
	doc.Next = jsonNextOf(d.Case)
	return writeJSON(w, doc)
}

// jsonNextOf is what to do next; nil: nothing tells the candidates apart.
func jsonNextOf(c *diagnosis.Case) *jsonNext {
	step, ok := c.Next()
	if !ok {
		return nil
	}
	next := &jsonNext{jsonQuest: jsonQuestOf(c.Table, step), Bits: thousandths(step.Bits)}
	if step.Question != nil {
		return next
	}
	for _, o := range c.Outcomes(step.Measurement) {
		one := jsonOutcome{Low: thousandths(float64(o.Low)), High: thousandths(float64(o.High)), Faults: []string{}}
		for _, k := range o.Candidates {
			one.Faults = append(one.Faults, k.Name())
		}
		next.Outcomes = append(next.Outcomes, one)
	}
	return next
}
