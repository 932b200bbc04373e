package job

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

// Every key says what it takes, and says it in one line.
func TestKeysAreDescribed(t *testing.T) {
	for _, s := range sections() {
		seen := map[string]bool{}
		for _, k := range s.keys {
			if seen[k.Name] {
				t.Errorf("%s: %s is there twice", s.title, k.Name)
			}
			seen[k.Name] = true
			if k.Shape == "" || !strings.HasSuffix(k.Doc, ".") || strings.ContainsAny(k.Shape+k.Doc+k.Example, "\n|") {
				t.Errorf("%s: %s is not described: %+v", s.title, k.Name, k)
			}
		}
	}
}

// Every example of a key is YAML, and of the shape that it is to show.
func TestKeyExamplesParse(t *testing.T) {
	for _, s := range sections() {
		for _, k := range s.keys {
			if k.Example == "" {
				continue
			}
			root, findings := source.Parse("example", []byte(k.Name+": "+k.Example+"\n"))
			if len(findings) > 0 || root == nil {
				t.Errorf("%s: %s: %s: %v", s.title, k.Name, k.Example, findings)
				continue
			}
			want := source.Scalar
			switch {
			case strings.HasPrefix(k.Shape, "map"):
				want = source.Map
			case strings.HasPrefix(k.Shape, "list"):
				want = source.List
			}
			if got := root.Get(k.Name).Kind; got != want {
				t.Errorf("%s: %s is shown as %v, its shape is %s", s.title, k.Name, got, k.Shape)
			}
		}
	}
}

// A reader that knows none of the keys of a table would call them unknown: each key of
// each table is taken where the table says that it stands.
func TestKeysAreTaken(t *testing.T) {
	r := newReading(&store{fsys: fstest.MapFS{}}, Options{}.catalog())
	for _, s := range sections() {
		var b strings.Builder
		for _, k := range s.keys {
			b.WriteString(k.Name + ": x\n")
		}
		root, findings := source.Parse("keys", []byte(b.String()))
		if len(findings) > 0 {
			t.Fatal(findings)
		}
		if f := r.fields(root, s.keys, "in a test"); len(f) != len(s.keys) || len(r.findings) > 0 {
			t.Errorf("%s: %d of %d keys are taken: %v", s.title, len(f), len(s.keys), r.findings)
		}
	}
}

// The keys of a list are those of a wire and of its extension.
func TestListColumnsAreKeys(t *testing.T) {
	have := map[string]bool{}
	for _, c := range listColumns[1:] {
		name := strings.ReplaceAll(c, " ", "-")
		if rest, ok := strings.CutPrefix(c, "extend "); ok {
			if _, known := extendKeys.find(rest); !known {
				t.Errorf("%s is no key of extend", rest)
			}
			name = "extend"
		} else if _, known := wireKeys.find(name); !known {
			t.Errorf("%s is no key of a wire", name)
		}
		have[name] = true
	}
	for _, k := range wireKeys {
		if !have[k.Name] {
			t.Errorf("no column for %s", k.Name)
		}
	}
}

// The kinds know which keys every part has, so that no rating is called like one.
func TestPartKeysOfKinds(t *testing.T) {
	ours := partKeys.names("")
	for _, name := range ours {
		if !slices.Contains(kind.PartKeys, name) {
			t.Errorf("package kind does not know that every part has %s", name)
		}
	}
	for _, name := range kind.PartKeys {
		if !slices.Contains(ours, name) {
			t.Errorf("package kind reserves %s, which is no key of a part", name)
		}
	}
}

func TestArticles(t *testing.T) {
	tests := map[string]string{article("lamp"): "a lamp", article("inlet-ac"): "an inlet-ac", orList([]string{"a", "b", "c"}): "a, b or c", orList(nil): "", plural(1, "wire"): "1 wire", plural(2, "wire"): "2 wires"}
	for got, want := range tests {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestTerminalList(t *testing.T) {
	p := &wiring.Part{}
	for _, name := range []string{"+", "-", "1", "2", "3", "a1", "a2", "b1", "n", "7"} {
		p.Terminals = append(p.Terminals, &wiring.Terminal{Name: name})
	}
	if got, want := terminalList(p), "+ - 1..3 a1 a2 b1 n 7"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
