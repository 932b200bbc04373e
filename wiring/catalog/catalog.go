// Package catalog holds the kinds of device, the operating states, and the platforms, kits
// and add-ons that ship with the program, as YAML files like those that a shop writes
// itself. They are data: to change what a device is, change its file.
package catalog

import (
	"embed"
	"strings"
	"sync"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

//go:embed kinds/*.yaml states.yaml
var files embed.FS

// prefix stands before the names of shipped files where spans call them, so that nobody
// looks for them beside the job: "built-in/kinds/reducer.yaml".
const prefix = "built-in/"

const (
	folder     = "kinds"
	extension  = ".yaml"
	statesFile = "states.yaml"
)

// shipped is every kind, read once. The files do not change, so neither does it.
var shipped = sync.OnceValue(func() *kind.Set {
	set := kind.NewSet(nil)
	entries, err := files.ReadDir(folder)
	if err != nil {
		panic("catalog: " + err.Error()) // the files are part of the program
	}
	for _, e := range entries {
		file, text, _ := Text(strings.TrimSuffix(e.Name(), extension))
		root, _ := source.Parse(file, text)
		set.AddFile(root)
	}
	set.Findings() // reads them all: from here on the set may be shared
	return set
})

// Kind finds a shipped kind by name, without regard to case.
func Kind(name string) (*kind.Definition, bool) { return shipped().Get(name) }

// Kinds lists every shipped kind, sorted by name.
func Kinds() []*kind.Definition {
	names := Names()
	all := make([]*kind.Definition, 0, len(names))
	for _, name := range names {
		if d, ok := Kind(name); ok {
			all = append(all, d)
		}
	}
	return all
}

// Names lists the names of the shipped kinds, sorted.
func Names() []string { return shipped().Names() }

// Text returns the file of a shipped kind as it stands, and its name as spans call it.
func Text(name string) (file string, text []byte, ok bool) {
	file = folder + "/" + name + extension // not joined: a name is no path
	text, err := files.ReadFile(file)
	if err != nil {
		return "", nil, false
	}
	return prefix + file, text, true
}

// States returns the layer of built-in operating states and its name as spans call it.
func States() (file string, text []byte) {
	text, err := files.ReadFile(statesFile)
	if err != nil {
		panic("catalog: " + err.Error()) // the file is part of the program
	}
	return prefix + statesFile, text
}

// AddTo remembers every shipped file, so that a finding can quote its line.
func AddTo(f *diag.Files) {
	for _, name := range Names() {
		file, text, _ := Text(name)
		f.Add(file, text)
	}
	f.Add(States())
	addLayersTo(f)
}
