package kind

import (
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestReference(t *testing.T) {
	golden := filepath.Join("testdata", "reference.md")
	got := Reference()
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("run with -update if this is meant (-want +got)\n%s", diff)
	}
}

// Everything that a person may write is documented, and every table row has the columns of
// its table.
func TestReferenceIsWhole(t *testing.T) {
	text := Reference()
	for _, typ := range elementTypes {
		if typ.doc == "" || !strings.HasSuffix(typ.doc, ".") {
			t.Errorf("%s: the doc is no sentence: %q", typ.name, typ.doc)
		}
		for _, p := range typ.params {
			if p.doc == "" || p.need && p.def != "" {
				t.Errorf("%s %s: doc %q, needed with default %q", typ.name, p.name, p.doc, p.def)
			}
			if !strings.Contains(text, "| `"+p.name+"` |") {
				t.Errorf("%s %s is not in the reference", typ.name, p.name)
			}
		}
	}
	width := 0
	for _, line := range strings.Split(text, "\n") {
		if !strings.HasPrefix(line, "|") {
			width = 0
			continue
		}
		if n := strings.Count(line, "|"); width != 0 && n != width {
			t.Errorf("%d columns of %d: %s", n-1, width-1, line)
		} else {
			width = n
		}
	}
}

// Every sort of element that the model has can be written in a kind, under its own name.
func TestElementTypesMatchTheModel(t *testing.T) {
	model := []wiring.Element{
		&wiring.Resistor{}, &wiring.Link{}, &wiring.Fuse{}, &wiring.Switch{}, &wiring.Coil{}, &wiring.Contact{},
		&wiring.Diode{}, &wiring.Capacitor{}, &wiring.Source{}, &wiring.Mains{}, &wiring.Charger{}, &wiring.Converter{},
		&wiring.Load{}, &wiring.Sense{}, &wiring.Driver{},
	}
	var want []string
	for _, e := range model {
		want = append(want, e.Type())
		if typ := findElementType(e.Type()); typ == nil {
			t.Errorf("no file reads %s", e.Type())
		} else if name := strings.ToLower(reflect.TypeOf(e).Elem().Name()); name != typ.name {
			t.Errorf("%s is read by %s", name, typ.name)
		}
	}
	if diff := cmp.Diff(want, elementTypeNames()); diff != "" {
		t.Error(diff)
	}
}
