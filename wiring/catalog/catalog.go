// Package catalog holds the kinds of device and the operating states that ship with the
// program, as YAML files like those that a shop writes itself.
package catalog

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
)

// Kind finds a shipped kind by name.
func Kind(name string) (*kind.Definition, bool) { return nil, false }

// Kinds lists every shipped kind, sorted by name.
func Kinds() []*kind.Definition { return nil }

// Names lists the names of the shipped kinds, sorted.
func Names() []string { return nil }

// Text returns the file of a shipped kind as it stands, and its name as spans call it.
func Text(name string) (file string, text []byte, ok bool) { return "", nil, false }

// States returns the layer of built-in operating states and its name as spans call it.
func States() (file string, text []byte) { return "", nil }

// AddTo remembers every shipped file, so that a finding can quote its line.
func AddTo(files *diag.Files) {}
