package format

import (
	"os"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/wiring/job"
)

// one keeps the last file.
type one struct {
	name    string
	content []byte
}

func (o *one) Put(name string, content []byte) error { o.name, o.content = name, content; return nil }

// What is written can be read: every row is a wire of the cart, and the stamp is none.
func TestCSVIsReadBack(t *testing.T) {
	h, found, err := job.Load("jobs/tern-point-14.yaml", job.Options{FS: os.DirFS("../../examples/tern-point")})
	if err != nil || h == nil {
		t.Fatalf("%v %v", err, found)
	}
	var file one
	if err := CSV().Write(&sheet.Document{Book: sheet.NewBook(t.Context(), h, sheet.Found{})}, &file); err != nil {
		t.Fatal(err)
	}
	if file.name != "TP-14-wires.csv" || !Stamped(file.content) {
		t.Errorf("%s is not a stamped list", file.name)
	}
	_, again, err := job.Load("job.yaml", job.Options{FS: fstest.MapFS{
		"job.yaml": {Data: []byte("job: X-1\nwires: list.csv\n")},
		"list.csv": {Data: file.content},
	}})
	if err != nil {
		t.Fatal(err)
	}
	if len(again) == 0 {
		t.Error("a list without the parts that it names is found whole")
	}
	for _, f := range again {
		if f.At.File == "list.csv" && f.At.Line > len(h.Wires)+1 {
			t.Errorf("the stamp is taken for a wire: %s", f.Message)
		}
	}
}
