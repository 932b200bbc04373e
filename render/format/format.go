// Package format writes a document of sheets in the forms that people ask for: one file
// each, and one line in the list of [All].
//
// A form is a value: its word at --as, and a function that puts files. Every file ends in a
// stamp by which it is known as our own; see [Stamped].
package format

import (
	"strings"

	"github.com/lugwright/lugwright/render/sheet"
)

// Files is where a packet goes. Put is called once for each file, with a name that every
// file system takes and a content that does not change afterwards.
type Files interface {
	Put(name string, content []byte) error
}

// Format is one form in which a packet is written.
type Format struct {
	ID    string // as --as takes it: "svg"
	About string // what comes out, in a line

	// Write puts the whole document among files. The error is that of files, or a fault of
	// the drawing; files may then have been put and should not be kept.
	Write func(d *sheet.Document, files Files) error
}

// Named finds a form by its word, without regard to case; nil if there is none.
func Named(word string) *Format {
	for _, f := range All() {
		if strings.EqualFold(f.ID, word) {
			return f
		}
	}
	return nil
}
