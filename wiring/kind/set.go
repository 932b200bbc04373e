package kind

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// Set is a family of kinds that stand on equal terms and may copy from each other by
// `like`, in any order; a kind that copies from itself in the end is a finding. Kinds are
// read when they are first asked for. A Set is not safe for concurrent use.
type Set struct{}

// NewSet makes an empty set. Names that it does not hold are looked up in below, which may
// be nil.
func NewSet(below Lookup) *Set { return &Set{} }

// AddFile adds a kind file and returns its name. A name that the set or the one below has
// already is a finding.
func (s *Set) AddFile(root *source.Node) (name string, findings []diag.Finding) { return "", nil }

// AddNamed adds a kind of a layer's `kinds` map.
func (s *Set) AddNamed(name, body *source.Node) []diag.Finding { return nil }

// Get finds a kind of this set or of the one below.
func (s *Set) Get(name string) (*Definition, bool) { return nil, false }

// Names lists the kinds of this set, sorted; those of the one below are not among them.
func (s *Set) Names() []string { return nil }

// Findings reads every kind that was not asked for yet and returns what is wrong with any,
// sorted by place.
func (s *Set) Findings() []diag.Finding { return nil }
