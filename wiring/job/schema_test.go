package job_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/source"
)

// plain is a file as a program that reads YAML would hand it to a validator.
func plain(n *source.Node) any {
	switch n.Kind {
	case source.Map:
		m := map[string]any{}
		for _, e := range n.Entries {
			m[e.Key.Text] = plain(e.Value)
		}
		return m
	case source.List:
		all := []any{}
		for _, item := range n.Items {
			all = append(all, plain(item))
		}
		return all
	}
	return n.Text
}

// The schema takes every file that ships, and refuses mistakes, by an independent
// implementation of JSON Schema.
func TestSchema(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(job.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("layer", doc); err != nil {
		t.Fatal(err)
	}
	schema := c.MustCompile("layer")
	validate := func(text []byte) error {
		root, _ := source.Parse("", text)
		return schema.Validate(plain(root))
	}
	good := map[string][]byte{}
	for _, l := range catalog.Layers("") {
		good[l.File] = l.Text
	}
	for _, sort := range []string{"platform", "kit"} {
		good["template "+sort], _ = catalog.Template(sort)
	}
	for _, pattern := range []string{"*.yaml", "*/*.yaml"} {
		names, _ := filepath.Glob("../../examples/tern-point/" + pattern)
		for _, name := range names {
			if good[name], err = os.ReadFile(name); err != nil {
				t.Fatal(err)
			}
		}
	}
	if len(good) < 20 {
		t.Fatalf("%d files are no test", len(good))
	}
	for name, text := range good {
		if err := validate(text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, bad := range []string{
		"tilte: x\n", "job: 1\nlenght: 3\n", "kit: a\naddress: b\n", "job: 1\nkit: 2\n",
		"job: 1\nwires:\n  W1: {from: a, lenght: 3 ft}\n", "job: 1\nwires:\n  W1: {length: 14}\n",
		"job: 1\nwires:\n  W1: {extend: {colour: BK, at: to, kolour: x}}\n", "job: 1\nuse: 48v-ac\n",
		"job: 1\nparts: []\n", "job: 1\nassume: {slack: 12}\n", "job: 1\nlimits: {lugs: four}\n",
		"job: 1\nas-built:\n  W1: {size: 2}\n", "kit: 1\nas-built: {}\n",
	} {
		if validate([]byte(bad)) == nil {
			t.Errorf("%q is let pass", bad)
		}
	}
}
