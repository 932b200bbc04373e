package report

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/sizing"
)

// keepsSchema validates what a writer writes by an independent implementation of JSON
// Schema, and makes sure that the schema refuses it once damaged.
func keepsSchema(t *testing.T, schema []byte, write func(io.Writer) error, damages map[string]string) {
	t.Helper()
	compiled := compile(t, schema)
	var text bytes.Buffer
	if err := write(&text); err != nil {
		t.Fatal(err)
	}
	damages[""] = ""
	for was, is := range damages {
		if !strings.Contains(text.String(), was) {
			t.Errorf("%q is not in\n%s", was, text.String())
			continue
		}
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(strings.Replace(text.String(), was, is, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if err := compiled.Validate(value); (err == nil) != (was == "") {
			t.Errorf("with %q in the place of %q: %v", is, was, err)
		}
	}
}

func TestChoicesKeepTheirSchema(t *testing.T) {
	c, err := sizing.Choose(nil, sizing.Run{Amps: 10, Loop: quantity.Feet(20), Volts: 12, Drop: 0.1, Insulation: 105})
	if err != nil {
		t.Fatal(err)
	}
	keepsSchema(t, ChoiceSchema(), func(w io.Writer) error { return ChoiceJSON(w, Choice{Choice: c}) },
		map[string]string{`"version": 1,`: `"version": 2,`, `"what": "drop"`: `"what": "taste"`, `"faults": []`: `"faults": null`})
	cord := Cord{Amps: 10, Length: quantity.Feet(50), Size: quantity.Gauge(14)}
	keepsSchema(t, ChoiceSchema(), func(w io.Writer) error { return CordJSON(w, cord) },
		map[string]string{`"what": "cord"`: `"what": "rope"`})
	for name, write := range map[string]func(io.Writer) error{
		"text": func(w io.Writer) error { return ChoiceText(w, Choice{Choice: c}, TextOptions{}) },
		"json": func(w io.Writer) error { return ChoiceJSON(w, Choice{Choice: c}) },
		"cord": func(w io.Writer) error { return CordText(w, cord) },
	} {
		if err := write(failing{}); err != io.ErrShortWrite {
			t.Errorf("%s: error %v is lost", name, err)
		}
	}
}
