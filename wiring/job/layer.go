package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// layer is one file at one place in the order of layers.
type layer struct {
	*wiring.Layer
	index     int                     // place in the order, the lowest has 0
	path      string                  // below the root; empty: built in
	keys      map[string]source.Entry // its top-level keys
	user      *layer                  // whose `use` lists it; nil: the file that was asked for, or a base layer
	given     map[string]source.Entry // points that its user gives it, by name
	own       map[string]bool         // folded names that its suffix is put on
	looms     map[string]bool         // folded names of looms that its suffix is put on
	column    map[*source.Node]string // a CSV list: the column of a cell
	goneNames map[string]diag.Span    // the same by folded name
	numbers   map[string]string       // the wires it speaks of, by folded number; nil: not asked for yet
	highest   map[string]string       // of them by the letters in front
	gone      []goneName              // names of its `remove` list that are no parts
}

// goneName is a name of a `remove` list.
type goneName struct {
	text  string
	at    diag.Span
	group bool // it stands in a group
}

// get returns the value of a top-level key, nil if the layer has none.
func (l *layer) get(key string) *source.Node { return l.keys[key].Value }

// String is the layer as messages speak of it: "kit 16S LFP 110 Ah".
func (l *layer) String() string {
	switch l.Kind {
	case wiring.ListLayer:
		return "the wire list " + l.File
	case "":
		return l.File
	}
	return spoken(l.Kind) + " " + l.Title
}

// spoken is a sort of layer as people say it.
func spoken(k wiring.LayerKind) string {
	if k == wiring.AddonLayer {
		return "add-on"
	}
	return string(k)
}

// name puts the layer's suffix on a part, wire or terminal that the layer itself defines.
func (l *layer) name(text string) string {
	if l.Suffix == "" {
		return text
	}
	base, terminal, dotted := strings.Cut(text, ".")
	if !l.own[wiring.Fold(base)] {
		return text
	}
	if dotted {
		return base + l.Suffix + "." + terminal
	}
	return base + l.Suffix
}

// loom puts the layer's suffix on a loom that the layer itself defines: C1R, "work light R".
func (l *layer) loom(text string) string {
	if l.Suffix == "" || !l.looms[wiring.Fold(text)] {
		return text
	}
	if last := text[len(text)-1]; '0' <= last && last <= '9' {
		return text + l.Suffix
	}
	return text + " " + l.Suffix
}

// where is a place in words: "jobs/tp-14.yaml:13".
func where(at diag.Span) string {
	if !at.Known() {
		return "built in"
	}
	return fmt.Sprintf("%s:%d", at.File, at.Line)
}
