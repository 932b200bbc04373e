package report

import (
	_ "embed"
	"io"
	"slices"
)

const (
	choiceFormat  = "lugwright size"
	choiceVersion = 1
)

//go:embed size.schema.json
var choiceSchema []byte

// ChoiceSchema returns the JSON Schema (draft 2020-12) of what [ChoiceJSON] and [CordJSON]
// write.
func ChoiceSchema() []byte { return slices.Clone(choiceSchema) }

type jsonChoice struct {
	Format  string      `json:"format"`
	Version int         `json:"version"`
	Program jsonProgram `json:"program"`
	Size    string      `json:"size"`
	Fuse    *jsonFuse   `json:"fuse,omitempty"`
	Carries float64     `json:"carriesAmps,omitempty"`
	Most    float64     `json:"mostFuseAmps,omitempty"`
	Loss    *float64    `json:"dropVolts,omitempty"`
	Needs   []jsonNeed  `json:"needs"`
	Faults  []string    `json:"faults"`
}

type jsonFuse struct {
	Style string  `json:"style"`
	Amps  float64 `json:"amps"`
}

type jsonNeed struct {
	What    string `json:"what"`
	Size    string `json:"size,omitempty"`
	Why     string `json:"why"`
	Source  string `json:"source"`
	Decides bool   `json:"decides"`
}

// ChoiceJSON writes a choice for a program. The shape is described by size.schema.json
// beside this file. The error is that of w.
func ChoiceJSON(w io.Writer, c Choice) error {
	doc := jsonChoice{
		Format: choiceFormat, Version: choiceVersion, Program: jsonProgram{Name: "lugwright", Version: c.Version},
		Size: c.Size.String(), Fuse: &jsonFuse{c.Style, float64(c.Fuse)},
		Carries: *thousandths(float64(c.Carries.Amps)), Most: *thousandths(float64(c.Most)),
		Needs: []jsonNeed{}, Faults: append([]string{}, c.Faults...),
	}
	if c.Run.Loop > 0 {
		doc.Loss = thousandths(float64(c.Loss))
	}
	for _, n := range c.Needs {
		one := jsonNeed{What: n.What, Why: n.Text, Source: n.Source, Decides: n.Decides}
		if n.Size.Known() {
			one.Size = n.Size.String()
		}
		doc.Needs = append(doc.Needs, one)
	}
	return writeJSON(w, doc)
}

// CordJSON writes a cord for a program, in the same shape. The error is that of w.
func CordJSON(w io.Writer, c Cord) error {
	return writeJSON(w, jsonChoice{
		Format: choiceFormat, Version: choiceVersion, Program: jsonProgram{Name: "lugwright", Version: c.Version},
		Size: c.Size.String(), Faults: []string{},
		Needs: []jsonNeed{{
			What: "cord", Size: c.Size.String(), Decides: true, Source: "UL 1236, as chargers print it in their manuals",
			Why: c.Amps.String() + " AC on " + c.Length.String(),
		}},
	})
}
