package job

import (
	"fmt"
	"path"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

// kindFolder holds a shop's own kinds, under the root.
const kindFolder = "kinds"

// readKinds collects the kinds of the root's folder and of every layer.
func (r *reading) readKinds() {
	r.kinds = kind.NewSet(r.catalog.Kind)
	for _, name := range r.store.list(kindFolder, ".yaml") {
		r.readKindFile(path.Join(kindFolder, name+".yaml"))
	}
	seen := map[*source.Node]bool{}
	for _, l := range r.layers {
		n := l.get("kinds")
		if n == nil || seen[n] {
			continue
		}
		seen[n] = true
		for _, e := range r.entries(n, "kinds") {
			r.findings = append(r.findings, r.kinds.AddNamed(e.Key, e.Value)...)
		}
	}
}

func (r *reading) readKindFile(name string) {
	shown := r.store.shown(name)
	text, err := r.store.read(name)
	if err != nil {
		r.fault(topOf(shown), plain(err, shown).Error())
		return
	}
	r.files.Add(shown, text)
	root, findings := source.Parse(shown, text)
	r.took(root, findings)
	if root != nil {
		_, findings = r.kinds.AddFile(root)
		r.findings = append(r.findings, findings...)
	}
}

// buildParts gives every part its terminals and what is inside. Parts that are gone get
// nodes of their own, which are no part of the harness.
func (r *reading) buildParts() {
	for _, d := range r.allParts() {
		h := r.h
		if d.gone != still {
			h = r.removed
		}
		r.build(h, d)
		r.built[d.part] = d
		if d.gone == still {
			r.h.Parts = append(r.h.Parts, d.part)
		}
	}
	r.findings = append(r.findings, r.kinds.Findings()...)
	if len(r.h.Nodes) == 0 {
		r.h.Nodes = []wiring.Node{{Name: "frame"}}
	}
}

// allParts lists every part that there ever was, by designation, the older first.
func (r *reading) allParts() []*draftPart {
	all := make([]*draftPart, 0, r.count)
	for _, list := range r.parts {
		all = append(all, list...)
	}
	sort.Slice(all, func(i, j int) bool {
		a, b := all[i], all[j]
		if a.part.Designation != b.part.Designation {
			return wiring.Less(a.part.Designation, b.part.Designation)
		}
		return a.born < b.born
	})
	return all
}

func (r *reading) build(h *wiring.Harness, d *draftPart) {
	name := r.text(d.kind, "kind")
	if name == "" {
		return
	}
	definition, ok := r.kinds.Get(name)
	if !ok {
		r.lost(d.kind.Span, fmt.Sprintf("no kind %s%s", name, r.meant(name, r.kindNames)), "Kinds: lugwright kinds")
		return
	}
	where := d.part.Where
	findings := definition.Build(h, d.part, d.given)
	if d.part.Where == nil {
		d.part.Where = map[string]diag.Span{}
	}
	for key, at := range where {
		d.part.Where[key] = at
	}
	if d.gone == still {
		r.findings = append(r.findings, findings...)
	}
	d.built = true
}

// kindNames lists all kinds, sorted.
func (r *reading) kindNames() []string {
	names := append(r.kinds.Names(), r.catalog.Names()...)
	sort.Strings(names)
	return names
}
