// Package catalog holds the kinds of device and the operating states that ship with the
// program, as YAML files like those that a shop writes itself.
package catalog

import (
	"embed"
	"path"
	"strings"
	"sync"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

// files are named as spans call them: "built-in/kinds/reducer.yaml".
//
//go:embed kinds/*.yaml states.yaml
var files embed.FS

// prefix stands before the names of shipped files, so that nobody looks for them beside
// the job.
const prefix = "built-in/"

// shipped is every kind, read once. The files do not change, so neither does it.
var shipped = sync.OnceValue(func() *kind.Set {
	set := kind.NewSet(nil)
	entries, err := files.ReadDir("kinds")
	if err != nil {
		panic("catalog: " + err.Error()) // the files are part of the program
	}
	for _, e := range entries {
		name, text, _ := Text(strings.TrimSuffix(e.Name(), ".yaml"))
		root, _ := source.Parse(name, text)
		set.AddFile(root)
	}
	set.Findings()
	return set
})

// Kind finds a shipped kind by name.
func Kind(name string) (*kind.Definition, bool) { return shipped().Get(name) }

// Kinds lists every shipped kind, sorted by name.
func Kinds() []*kind.Definition {
	var all []*kind.Definition
	for _, name := range Names() {
		d, _ := Kind(name)
		all = append(all, d)
	}
	return all
}

// Names lists the names of the shipped kinds, sorted.
func Names() []string { return shipped().Names() }

// Findings is what is wrong with the shipped kinds; a test holds it empty.
func Findings() []diag.Finding { return shipped().Findings() }

// Text returns the file of a shipped kind as it stands, and its name as spans call it.
func Text(name string) (file string, text []byte, ok bool) {
	text, err := files.ReadFile(path.Join("kinds", name+".yaml"))
	return prefix + "kinds/" + name + ".yaml", text, err == nil
}

// States returns the layer of built-in operating states and its name as spans call it.
func States() (file string, text []byte) {
	text, err := files.ReadFile("states.yaml")
	if err != nil {
		panic("catalog: " + err.Error())
	}
	return prefix + "states.yaml", text
}

// AddTo remembers every shipped file, so that a finding can quote its line.
func AddTo(f *diag.Files) {
	for _, name := range Names() {
		file, text, _ := Text(name)
		f.Add(file, text)
	}
	f.Add(States())
}
