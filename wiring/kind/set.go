package kind

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// Set is a family of kinds that stand on equal terms and may copy from each other by
// `like`, in any order; a kind that copies from itself in the end is a finding. Kinds are
// found without regard to case, and are read when they are first asked for. A Set may be
// used by several goroutines once [Set.Findings] has read all of it, and not before.
type Set struct {
	below    Lookup
	entries  map[string]*entry // by folded name
	findings []diag.Finding
}

// entry is one kind of a set, read or not yet.
type entry struct {
	name, body *source.Node
	file       bool // body is a whole document
	reading    bool
	done       bool
	definition *Definition // nil: it cannot be used, which has been reported
}

// NewSet makes an empty set. Names that it does not hold are looked up in below, which may
// be nil.
func NewSet(below Lookup) *Set { return &Set{below: below, entries: map[string]*entry{}} }

// AddFile adds a kind file and returns its name. A name that the set or the one below has
// already is a finding.
func (s *Set) AddFile(root *source.Node) (name string, findings []diag.Finding) {
	header, _ := source.Header(root)
	if !isKindHeader(header) {
		_, findings = Read(root, nil)
		return "", findings
	}
	return header.Value.Text, s.add(&entry{name: header.Value, body: root, file: true})
}

// AddNamed adds a kind of a layer's `kinds` map.
func (s *Set) AddNamed(name, body *source.Node) []diag.Finding {
	return s.add(&entry{name: name, body: body})
}

func (s *Set) add(e *entry) []diag.Finding {
	name := e.name.Text
	if old, taken := s.entries[wiring.Fold(name)]; taken {
		f := source.Fault(e.name.Span, fmt.Sprintf("the kind %s is found twice", name), "Give one of them another name")
		f.Related = []diag.Place{{Span: old.name.Span, Label: "first here"}}
		return []diag.Finding{f}
	}
	if s.below != nil {
		if d, taken := s.below(name); taken {
			f := source.Fault(e.name.Span, fmt.Sprintf("the kind %s is built in already", name),
				"Give yours another name; it may say like: "+d.Name)
			f.Related = []diag.Place{{Span: d.At, Label: "built in here"}}
			return []diag.Finding{f}
		}
	}
	s.entries[wiring.Fold(name)] = e
	return nil
}

// Get finds a kind of this set or of the one below.
func (s *Set) Get(name string) (*Definition, bool) {
	d, _ := s.lookup(name)
	return d, d != nil
}

// lookup finds a kind. It may be there and not be usable, which has been reported.
func (s *Set) lookup(name string) (d *Definition, there bool) {
	e, ok := s.entries[wiring.Fold(name)]
	switch {
	case ok:
		s.read(e)
		return e.definition, true
	case s.below != nil:
		return s.below(name)
	}
	return nil, false
}

// read reads an entry once.
func (s *Set) read(e *entry) {
	switch {
	case e.done:
		return
	case e.reading:
		s.findings = append(s.findings, source.Fault(e.name.Span, "the kind "+e.name.Text+" is like itself in the end"))
		return
	}
	e.reading = true
	var findings []diag.Finding
	if e.file {
		e.definition, findings = Read(e.body, s.lookup)
	} else {
		e.definition, findings = ReadNamed(e.name, e.body, s.lookup)
	}
	e.reading, e.done = false, true
	s.findings = append(s.findings, findings...)
}

// Names lists the kinds of this set, sorted; those of the one below are not among them.
func (s *Set) Names() []string {
	names := sortedKeys(s.entries)
	for i, key := range names {
		names[i] = s.entries[key].name.Text
	}
	return names
}

// Findings reads every kind that was not asked for yet and returns what is wrong with any,
// sorted by place. What a kind has from another by `like` is said once.
func (s *Set) Findings() []diag.Finding {
	for _, key := range sortedKeys(s.entries) {
		s.read(s.entries[key])
	}
	all := slices.Clone(s.findings)
	diag.Sort(all)
	return slices.CompactFunc(all, func(a, b diag.Finding) bool { return a.At == b.At && a.Message == b.Message })
}
