package report

import (
	"bytes"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// TestJSONKeepsItsSchema validates what is written by an independent implementation of
// JSON Schema, and makes sure that the schema refuses what it should.
func TestJSONKeepsItsSchema(t *testing.T) {
	compiled := compile(t, Schema())
	validate := func(text []byte) error {
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		return compiled.Validate(value)
	}
	for name, r := range map[string]Report{"sample": sampleReport(), "broken": sampleBroken(), "empty": {Version: "0"}} {
		var text bytes.Buffer
		if err := JSON(&text, r); err != nil {
			t.Fatal(err)
		}
		if err := validate(text.Bytes()); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for _, damage := range [][2]string{
			{`"version": 1,`, `"version": 2,`},
			{`"format": "lugwright findings"`, `"format": "other"`},
			{`"program"`, `"programme"`},
			{`"level": "error"`, `"level": "fatal"`},
			{`"column": `, `"column": -`},
			{`"notChecked": [`, `"unchecked": [`},
		} {
			damaged := bytes.Replace(text.Bytes(), []byte(damage[0]), []byte(damage[1]), 1)
			if !bytes.Equal(damaged, text.Bytes()) && validate(damaged) == nil {
				t.Errorf("%s: the schema accepts %s", name, damage[1])
			}
		}
	}
}

func TestSchemaIsTheCallersOwn(t *testing.T) {
	Schema()[0] = 'x'
	if Schema()[0] != '{' {
		t.Error("a caller can change the schema for others")
	}
}
