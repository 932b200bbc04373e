package report

import (
	"bytes"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// checkSchema validates a document by an independent implementation of JSON Schema, and
// makes sure that the schema refuses the document once something in it is replaced.
func checkSchema(t *testing.T, schema, text []byte, damages ...[2]string) {
	t.Helper()
	compiled := compile(t, schema)
	for _, damage := range append([][2]string{{}}, damages...) {
		damaged := text
		if damage[0] != "" {
			if damaged = bytes.Replace(text, []byte(damage[0]), []byte(damage[1]), 1); bytes.Equal(damaged, text) {
				continue
			}
		}
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(damaged))
		if err != nil {
			t.Fatal(err)
		}
		if err := compiled.Validate(value); (err == nil) != (damage[0] == "") {
			t.Errorf("with %q for %q: %v", damage[1], damage[0], err)
		}
	}
}

// compile reads a schema by an independent implementation of JSON Schema.
func compile(t *testing.T, schema []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("schema", doc); err != nil {
		t.Fatal(err)
	}
	return compiler.MustCompile("schema")
}
