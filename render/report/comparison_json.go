package report

import (
	_ "embed"
	"io"
	"slices"

	"github.com/lugwright/lugwright/wiring/difference"
)

const (
	comparisonFormat  = "lugwright comparison"
	comparisonVersion = 1
)

//go:embed comparison.schema.json
var comparisonSchema []byte

// ComparisonSchema returns the JSON Schema (draft 2020-12) of what [ComparisonJSON] writes.
func ComparisonSchema() []byte { return slices.Clone(comparisonSchema) }

// ComparisonJSON writes a comparison for a program. The shape is described by
// comparison.schema.json beside this file. The error is that of w.
func ComparisonJSON(w io.Writer, c Comparison) error {
	marks := c.Marks()
	doc := jsonComparison{
		Format: comparisonFormat, Version: comparisonVersion,
		Program: jsonProgram{Name: "lugwright", Version: c.Version},
		Old:     c.Old.json(), New: c.New.json(),
		Changes: []jsonChange{},
		Marks:   jsonMarks{marks.Parts, marks.Wires},
		Next:    jsonRevision{c.nextRevision(), c.Note(noteWidth)},
	}
	for _, one := range c.Changes {
		doc.Changes = append(doc.Changes, jsonChange{
			What: string(one.What), Name: one.Name, Class: string(one.Class), Key: one.Key, Old: one.Old, New: one.New,
		})
	}
	return writeJSON(w, doc)
}

func (c Compared) json() jsonCompared {
	return jsonCompared{jsonJobName{File: c.File, Number: c.Harness.Identity.Number}, c.AsFound}
}

type jsonComparison struct {
	Format  string       `json:"format"`
	Version int          `json:"version"`
	Program jsonProgram  `json:"program"`
	Old     jsonCompared `json:"old"`
	New     jsonCompared `json:"new"`
	Changes []jsonChange `json:"changes"`
	Marks   jsonMarks    `json:"marks"`
	Next    jsonRevision `json:"revision"`
}

type jsonCompared struct {
	jsonJobName
	AsFound bool `json:"asFound"`
}

type jsonChange struct {
	What  string `json:"what"`
	Name  string `json:"name"`
	Class string `json:"class"`
	Key   string `json:"key,omitempty"`
	Old   string `json:"old,omitempty"`
	New   string `json:"new,omitempty"`
}

// jsonMarks are written in the order of their names, which is that of encoding/json.
type jsonMarks struct {
	Parts map[string]difference.Mark `json:"parts"`
	Wires map[string]difference.Mark `json:"wires"`
}

type jsonRevision struct {
	Index string `json:"index"`
	Note  string `json:"note"`
}
