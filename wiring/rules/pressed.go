package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func (t *pressed) name() string { return t.element.Base().Ref() }

func (t *pressed) report(p *rule.Pass, all []*pressed) {
	switch {
	case len(t.over) > 0:
		t.reportOver(p, all)
	case t.most > 0 && t.worst > 0 && float64(t.most) < 1.05*float64(t.worst) && risesWithPack(p, t):
		t.reportNarrow(p)
	}
	if len(t.under) > 0 {
		t.reportUnder(p)
	}
}

// risesWithPack reports whether the worst voltage is that of the pack at end of charge.
func risesWithPack(p *rule.Pass, t *pressed) bool {
	pack := highest(p)
	return pack != nil && float64(t.worst) > 0.95*float64(pack.Top().Full)
}

func (t *pressed) reportOver(p *rule.Pass, all []*pressed) {
	part := t.element.Base().Part
	way, ok := wayIn(p, t)
	f := diag.Finding{
		Message:  fmt.Sprintf("%s sees %s, and stands %v", titled(part), volts(t.worst), t.most),
		Detail:   fmt.Sprintf("Across %s to %s.", p.Graph.Name(t.a), p.Graph.Name(t.b)),
		Advice:   "Move it to the bus that it is made for.",
		At:       part.At,
		Subjects: []string{part.Designation},
		States:   once(t.over),
	}
	if ok {
		f.Detail += fmt.Sprintf(" The voltage comes by %s.", way)
		f.Subjects = subjects(f.Subjects, waySubjects(p.Graph, way))
		if w, at := strayWire(p, way, all); w != nil {
			f.Message = fmt.Sprintf("%s puts %s on %s, which stands %v", w.Name(), volts(t.worst), titled(part), t.most)
			f.At, f.Related = landing(w, at), defined(part.Designation, part.At)
			f.Subjects = subjects([]string{w.Name(), p.Graph.Name(at)}, f.Subjects)
			if channel := freeChannel(p, t.a); channel != "" {
				f.Advice = fmt.Sprintf("Move %s to a free channel of the right bus, %s.", w.Name(), channel)
			}
		}
	}
	p.Report(f)
}

// strayWire is the wire by which a way leaves the last place where something hangs that
// stands the voltage there; without such a place, the newest of the way.
func strayWire(p *rule.Pass, way path.Path, all []*pressed) (*wiring.Wire, wiring.NodeID) {
	content := map[wiring.NodeID]bool{}
	for _, t := range all {
		if len(t.over) == 0 {
			content[t.a], content[t.b] = true, true
		}
	}
	for i := len(way.Steps) - 1; i >= 0; i-- {
		s := way.Steps[i]
		if s.Edge.Wire != nil && suits(p, way, s.From, content) {
			return s.Edge.Wire, s.From
		}
	}
	return newest(p.Harness, way)
}

// suits reports whether something that stands the voltage hangs on a node of the way, or
// on wires that leave the way there.
func suits(p *rule.Pass, way path.Path, n wiring.NodeID, content map[wiring.NodeID]bool) bool {
	if content[n] {
		return true
	}
	on := map[*path.Edge]bool{}
	for _, s := range way.Steps {
		on[s.Edge] = true
	}
	copper := path.Through{Sorts: path.Conductors}.Only(func(e *path.Edge) bool { return !on[e] })
	_, found := p.Graph.From(copper, n).First(func(m wiring.NodeID) bool { return content[m] })
	return found
}

// wayIn is how the highest supply that can reaches the thing's positive side, in the state
// in which it saw most.
func wayIn(p *rule.Pass, t *pressed) (path.Path, bool) {
	through := path.Through{Sorts: path.Conducting | path.Resistor, Setting: path.InState(t.overAt.State, t.overAt.Holds)}
	var best path.Path
	top, found := quantity.Volt(0), false
	for _, s := range p.Supplies() {
		reach := p.Graph.From(through.Until(p.Negative), s.Plus)
		for _, n := range []wiring.NodeID{t.a, t.b} {
			if way, ok := reach.To(n); ok && !p.Negative(n) && s.Top().Full > top {
				best, top, found = way, s.Top().Full, true
			}
		}
	}
	return best, found
}

func (t *pressed) reportNarrow(p *rule.Pass) {
	part := t.element.Base().Part
	p.Report(diag.Finding{
		Level:    diag.Note,
		Message:  fmt.Sprintf("%s stands %v, less than 5 %% above the full pack", t.name(), t.most),
		Detail:   fmt.Sprintf("At the end of charge it sees %s; braking lifts the pack further.", volts(t.worst)),
		Advice:   "Set the controller's upper voltage limit below it.",
		At:       part.At,
		Subjects: []string{part.Designation, t.name()},
	})
}

func (t *pressed) reportUnder(p *rule.Pass) {
	part := t.element.Base().Part
	p.Report(diag.Finding{
		Level:    diag.Warning,
		Message:  fmt.Sprintf("%s is switched on and sees %s, below the %v that it needs", t.name(), volts(t.low), t.works.Low),
		Detail:   fmt.Sprintf("Worst in the state %s.", t.lowName),
		Advice:   "Feed it from the bus that it is made for, by wire large enough.",
		At:       part.At,
		Subjects: []string{part.Designation, t.name()},
		States:   once(t.under),
	})
}

// once drops doubles and keeps the order.
func once(names []string) []string { return subjects(names) }
