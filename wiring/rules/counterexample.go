package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/rule"
)

// atRest is what package position calls the position in which no control is moved.
const atRest = "everything at rest"

// counterexample begins a finding about a position that breaks a property: the way by which
// it comes about, the switches that make it, and the wire on that way that the latest layer
// laid, which is where the finding points. Message and advice are the rule's.
func counterexample(p *rule.Pass, x position.Counterexample) diag.Finding {
	f := diag.Finding{Detail: x.Says, States: []string{x.State.Name}}
	var part *wiring.Part
	if x.Element != nil {
		part = x.Element.Base().Part
		f.Subjects = []string{part.Designation, x.Element.Base().Ref()}
		f.At, f.Related = part.At, defined(part.Designation, part.At)
	}
	if len(x.Ways) > 0 {
		f.Detail += " " + wayWords(x.Ways[0])
		if w, n := newestOf(p, x.Ways[0]); w != nil {
			f.At = landing(w, n)
			f.Subjects = subjects([]string{w.Name()}, f.Subjects)
		}
	}
	for _, way := range x.Ways {
		f.Subjects = subjects(f.Subjects, waySubjects(p.Graph, way.Feed), waySubjects(p.Graph, way.Back))
	}
	f.Detail += fmt.Sprintf(" Found with %s.", positionWords(x.State))
	return f
}

// positionWords is a position as a sentence says it.
func positionWords(s *wiring.State) string {
	if s.Name == atRest {
		return "all switches at rest"
	}
	return s.Name
}

// wayWords tells how current comes somewhere and goes back.
func wayWords(w position.Way) string {
	text := "The way is " + w.Feed.String()
	if len(w.Back.Steps) > 0 {
		text += ", and back by " + w.Back.String()
	}
	return text + "."
}

// newestOf is the wire of a feed and its return that the latest layer laid.
func newestOf(p *rule.Pass, way position.Way) (*wiring.Wire, wiring.NodeID) {
	w, n := newest(p.Harness, way.Feed)
	if back, m := newest(p.Harness, way.Back); back != nil && (w == nil || latest(p.Harness, back) > latest(p.Harness, w)) {
		return back, m
	}
	return w, n
}

// because tells the further ways of a counterexample, which explain why the first is closed.
func because(x position.Counterexample) string {
	text := ""
	for i, way := range x.Ways {
		if i > 0 && i < mostReasons && way.What != "" {
			text += fmt.Sprintf(" %s is fed by %s.", way.What, way.Feed)
		}
	}
	return text
}

// mostReasons is how many links of a chain a finding tells.
const mostReasons = 4

// fusesOn lists the fuses of a way.
func fusesOn(way path.Path) []*wiring.Fuse {
	var fuses []*wiring.Fuse
	for _, e := range way.Elements(path.Fuse) {
		fuses = append(fuses, e.(*wiring.Fuse))
	}
	return fuses
}
