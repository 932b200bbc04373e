package job_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
)

// Every layer of the examples can be loaded alone: a platform is a cart, and what a kit or
// an add-on needs of a platform is a note.
func TestLayersAlone(t *testing.T) {
	for _, pattern := range []string{"platforms/*.yaml", "kits/*.yaml", "addons/*.yaml", "shop.yaml"} {
		names, err := filepath.Glob("testdata/format-examples/" + pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for _, name := range names {
			name = strings.TrimPrefix(filepath.ToSlash(name), "testdata/format-examples/")
			h, findings, err := job.Load(name, examples())
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			if h == nil {
				t.Errorf("%s:\n%s", name, listing(findings))
				continue
			}
			checkHarness(t, h)
			for _, f := range findings {
				if f.Level != diag.Note || !strings.Contains(f.Message, "needs the point") && !strings.Contains(f.Message, "removes old ") {
					t.Errorf("%s: %s", name, f.Message)
				}
			}
		}
	}
}

// Layers that ship are found behind those under the root, and may use each other, but no
// files.
func TestBuiltInLayers(t *testing.T) {
	c := &job.Catalog{Kind: catalog.Kind, Names: catalog.Names, States: catalog.States, AddTo: catalog.AddTo,
		Layers: fstest.MapFS{
			"platforms/stock.yaml": {Data: []byte("platform: stock\nuse: [helper]\nparts:\n  K1: {kind: solenoid}\n")},
			"kits/helper.yaml":     {Data: []byte("kit: helper\nparts:\n  X1: {kind: splice}\n")},
			"kits/both.yaml":       {Data: []byte("kit: built in\n")},
			"kits/reader.yaml":     {Data: []byte("kit: reader\nuse: [helper.yaml]\n")},
		}}
	files := fstest.MapFS{
		"job.yaml":       {Data: []byte("job: T\nuse: [Stock, both]\n")},
		"kits/both.yaml": {Data: []byte("kit: the shop's\n")},
		"bad.yaml":       {Data: []byte("job: T\nuse: [reader, stok]\n")},
	}
	h, findings, err := job.Load("job.yaml", job.Options{FS: files, Catalog: c})
	if err != nil || h == nil {
		t.Fatalf("%v\n%s", err, listing(findings))
	}
	if h.Part("K1") == nil || h.Part("X1") == nil {
		t.Error("the built-in layers bring no parts")
	}
	if got := strings.Join(layerFiles(h), " "); got != "built-in/kits/helper.yaml built-in/platforms/stock.yaml kits/both.yaml job.yaml" {
		t.Errorf("layers: %s", got)
	}
	_, findings, err = job.Load("bad.yaml", job.Options{FS: files, Catalog: c})
	if err != nil {
		t.Fatal(err)
	}
	want := "bad.yaml:2:15-19: error: no layer stok in platforms/, kits/, addons/ or built in: did you mean stock?\n" +
		"built-in/kits/reader.yaml:2:7-18: error: a built-in layer names no files\n"
	if got := listing(findings); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Lines that findings speak of can be quoted, those of shipped files too.
func TestFilesCanBeQuoted(t *testing.T) {
	h, findings, err := job.Load("jobs/tern-point-14.yaml", job.Options{FS: os.DirFS("testdata/format-examples")})
	if err != nil || h == nil {
		t.Fatalf("%v\n%s", err, listing(findings))
	}
	for _, p := range h.Parts {
		if line, ok := h.Files.Line(p.At.File, p.At.Line); !ok || !strings.Contains(line, p.Designation[:1]) {
			t.Errorf("%s: line %q", p.Designation, line)
		}
		if _, ok := h.Files.Line(p.Kind.At.File, p.Kind.At.Line); !ok {
			t.Errorf("%s: the line of its kind %v is not there", p.Designation, p.Kind.At)
		}
	}
	for _, s := range h.States {
		if _, ok := h.Files.Line(s.At.File, s.At.Line); !ok {
			t.Errorf("state %s: %v is not there", s.Name, s.At)
		}
	}
}
