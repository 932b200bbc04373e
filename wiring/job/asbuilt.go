package job

import (
	"fmt"
	"maps"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// readAsBuilt changes wires to what was built, where that is not what was planned, and
// remembers the plan.
func (r *reading) readAsBuilt(l *layer) {
	n := l.get("as-built")
	if n == nil {
		return
	}
	seen := map[string]diag.Span{}
	for _, e := range r.entries(n, "as-built") {
		for _, one := range r.wireEntries(l, e) {
			if !r.twice(seen, one.name, one.key.Span) {
				r.buildOtherwise(&one)
			}
		}
	}
}

func (r *reading) buildOtherwise(e *entry) {
	w, lead := r.asBuiltWire(e)
	if w == nil {
		r.lost(e.key.Span, fmt.Sprintf("as-built: no wire %s", e.name), "Plan it first, among the wires; as-built says what was built otherwise")
		return
	}
	plan, wire := *w, *w.wire
	wire.Where = maps.Clone(wire.Where)
	plan.wire = &wire
	r.planned = append(r.planned, plannedWire{built: w, plan: &plan})
	r.changeWire(e, w, lead)
}

// asBuiltWire finds a wire by its number, or the wire of a lead and at which side that is.
func (r *reading) asBuiltWire(e *entry) (w *draftWire, lead int) {
	if !strings.Contains(e.name, ".") {
		return r.findWire(e.name), -1
	}
	for _, w := range r.laid {
		for s, end := range w.end {
			if !w.gone && end.isLead() && wiring.Fold(end.terminal.Ref()) == wiring.Fold(e.name) {
				return w, s
			}
		}
	}
	return nil, -1
}

// plannedWire is a wire that was built otherwise than planned.
type plannedWire struct{ built, plan *draftWire }

// finishPlanned gives each wire that was built otherwise its plan.
func (r *reading) finishPlanned() {
	for _, p := range r.planned {
		r.finishEnds(p.plan)
		p.plan.wire.Pieces = r.pieces(p.plan, false)
		p.built.wire.Planned = p.plan.wire
	}
}
