// Package kind reads descriptions of devices ("kinds") and builds parts from them: their
// terminals, ratings, controls, and the electrical elements inside.
package kind

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// Definition is a kind as its file describes it, checked and ready to build parts from.
// It is not changed after it was read and may be used by many goroutines at once.
type Definition struct {
	wiring.Kind
}

// Lookup finds a kind by its name, for `like`.
type Lookup func(name string) (*Definition, bool)

// Read reads the document of a kind file, whose header is `kind: NAME`. like may be nil. A
// definition is returned whenever parts can be built from it, even beside findings.
func Read(root *source.Node, like Lookup) (*Definition, []diag.Finding) { return nil, nil }

// ReadNamed reads a kind that stands inside a layer: `kinds: {NAME: {…}}`.
func ReadNamed(name, body *source.Node, like Lookup) (*Definition, []diag.Finding) { return nil, nil }

// Rating finds one of the kind's parameters by name.
func (d *Definition) Rating(name string) (wiring.RatingSpec, bool) { return wiring.RatingSpec{}, false }

// RatingNames lists the kind's parameters in the order of its file.
func (d *Definition) RatingNames() []string { return nil }

// Build fills a part of this kind: Kind, Ratings, Terminals, Controls, Elements, Hidden,
// and Where for each rating and lead that was given ("rating", "fuses.3",
// "leads.enable.colour"). It appends the part's nodes to h.Nodes and makes Nodes[0] the
// frame if it is missing. p.Designation and p.At must be set.
//
// given holds what the layers wrote for this part that is not a key of every part; a name
// that is no rating of the kind is a finding. After findings the part still has every
// terminal and every element that could be built.
func (d *Definition) Build(h *wiring.Harness, p *wiring.Part, given Given) []diag.Finding {
	return nil
}
