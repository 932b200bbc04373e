package report

import (
	_ "embed"
	"io"
	"slices"

	"github.com/lugwright/lugwright/wiring/diagnosis"
)

const (
	symptomsFormat  = "lugwright symptoms"
	symptomsVersion = 1
)

//go:embed symptoms.schema.json
var symptomsSchema []byte

// SymptomsSchema returns the JSON Schema (draft 2020-12) of what [SymptomsJSON] writes.
func SymptomsSchema() []byte { return slices.Clone(symptomsSchema) }

type jsonSymptoms struct {
	Format   string          `json:"format"`
	Version  int             `json:"version"`
	Program  jsonProgram     `json:"program"`
	Job      jsonJobName     `json:"job"`
	Symptoms []jsonComplaint `json:"symptoms"`
}

type jsonComplaint struct {
	ID     string      `json:"id"`
	About  string      `json:"about,omitempty"`
	Text   string      `json:"text"`
	State  string      `json:"state"`
	Causes []jsonCause `json:"causes"`
	More   int         `json:"more,omitempty"`
}

type jsonCause struct {
	Faults     []string   `json:"faults"`
	Occurrence string     `json:"occurrence,omitempty"`
	Clues      []jsonClue `json:"clues"`
}

type jsonClue struct {
	jsonQuest
	Volts *float64 `json:"volts,omitempty"`
	Yes   *bool    `json:"yes,omitempty"`
}

// jsonQuest is a measurement or a question.
type jsonQuest struct {
	Question string   `json:"question,omitempty"`
	Measure  string   `json:"measure,omitempty"` // as --read writes it, without the value
	State    string   `json:"state,omitempty"`
	Red      string   `json:"red,omitempty"`
	Black    string   `json:"black,omitempty"`
	Healthy  *float64 `json:"healthyVolts,omitempty"`
}

// SymptomsJSON writes a symptom chart for a program. The shape is described by
// symptoms.schema.json beside this file. The error is that of w.
func SymptomsJSON(w io.Writer, s Symptoms) error {
	doc := jsonSymptoms{
		Format: symptomsFormat, Version: symptomsVersion, Program: jsonProgram{Name: "lugwright", Version: s.Version},
		Job:      jsonJobName{File: s.File, Number: s.Table.Cart.Harness.Identity.Number},
		Symptoms: []jsonComplaint{},
	}
	for _, e := range s.Entries {
		one := jsonComplaint{
			ID: e.Complaint.Symptom.ID, About: e.Complaint.Ref, Text: e.Complaint.Text(), State: e.Complaint.State.Name,
			Causes: []jsonCause{},
		}
		causes, more := s.shown(e)
		one.More = more
		for _, c := range causes {
			one.Causes = append(one.Causes, jsonCauseOf(s.Table, c))
		}
		doc.Symptoms = append(doc.Symptoms, one)
	}
	return writeJSON(w, doc)
}

func jsonCauseOf(t *diagnosis.Table, c diagnosis.Cause) jsonCause {
	one := jsonCause{Faults: []string{}, Occurrence: occurrence(c), Clues: []jsonClue{}}
	for _, k := range c.Candidates {
		one.Faults = append(one.Faults, k.Name())
	}
	for _, clue := range c.Clues {
		k := jsonClue{jsonQuest: jsonQuestOf(t, clue.Step)}
		if clue.Question != nil {
			k.Yes = &clue.Yes
		} else {
			k.Volts = thousandths(float64(clue.Volts))
		}
		one.Clues = append(one.Clues, k)
	}
	return one
}

func jsonQuestOf(t *diagnosis.Table, s diagnosis.Step) jsonQuest {
	if s.Question != nil {
		return jsonQuest{Question: s.Question.Text()}
	}
	m := s.Measurement
	red, black := t.Probes(m)
	return jsonQuest{
		Measure: m.Name(), State: m.State.Name, Red: red, Black: black, Healthy: thousandths(float64(t.Healthy(m))),
	}
}
