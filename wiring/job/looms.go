package job

import (
	"fmt"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// coverWords are what may be round a loom.
var coverWords = []string{"split tube", "tape", "braid", "lacing", "sheath", "none"}

// looms merges the looms of all layers and checks those that wires name.
func (r *reading) looms() {
	r.loomOf = map[string]*wiring.Loom{}
	for _, l := range r.layers {
		r.eachNamed(l, "looms", r.readLoom)
	}
	if r.alone() {
		return
	}
	for _, w := range r.laid {
		name := w.wire.Loom
		if w.gone || name == "" {
			continue
		}
		if l := r.loomOf[wiring.Fold(name)]; l != nil {
			w.wire.Loom = l.Name
			continue
		}
		r.lost(w.wire.Span("loom"), fmt.Sprintf("no loom %s%s", name, r.meant(name, r.loomNames)))
	}
}

func (r *reading) loomNames() []string {
	names := make([]string, 0, len(r.h.Looms))
	for _, l := range r.h.Looms {
		names = append(names, l.Name)
	}
	sort.Strings(names)
	return names
}

func (r *reading) readLoom(l *layer, e source.Entry) {
	name := l.loom(e.Key.Text)
	loom := r.loomOf[wiring.Fold(name)]
	if loom == nil {
		loom = &wiring.Loom{Name: name, At: e.Key.Span}
		r.loomOf[wiring.Fold(name)] = loom
		r.h.Looms = append(r.h.Looms, loom)
	}
	f := r.fields(e.Value, loomKeys, "in loom "+name)
	if v, ok := f["cover"]; ok {
		loom.Cover = r.word(v.Value, "cover", coverWords...)
	}
	if v, ok := f["colour"]; ok {
		loom.Colour = r.colour(v.Value, "colour")
	}
	if v, ok := f["twisted"]; ok {
		loom.Twisted = r.truth(v.Value, "twisted")
	}
	if v, ok := f["runs"]; ok {
		loom.Runs = nil
		for _, item := range r.items(v.Value, "runs") {
			if run := r.knownRun(item); run != nil {
				loom.Runs = append(loom.Runs, run)
			}
		}
	}
}

func (r *reading) knownRun(n *source.Node) *wiring.Run {
	name := r.text(n, "runs")
	if name == "" {
		return nil
	}
	run := r.runOf[wiring.Fold(name)]
	if run == nil {
		r.lost(n.Span, fmt.Sprintf("no run %s%s", name, r.meant(name, r.runNames)))
	}
	return run
}

func (r *reading) runNames() []string {
	names := make([]string, 0, len(r.h.Runs))
	for _, run := range r.h.Runs {
		names = append(names, run.Name)
	}
	sort.Strings(names)
	return names
}
