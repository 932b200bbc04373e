package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
)

// alive is something that has voltage and should not have it, at a node that gives it.
type alive struct {
	parts   []*wiring.Part
	element wiring.Element
	at      wiring.NodeID
	wire    *wiring.Wire // by which loads are grouped
	level   diag.Level
	message string
}

// group adds a load to those that hang on the same wire of the same supply.
func (o *off) group(groups []alive, c consumer, l *wiring.Load) []alive {
	way, _ := o.way(l.A)
	wire, _ := newest(o.pass.Harness, way)
	for i := range groups {
		if wire != nil && groups[i].wire == wire {
			groups[i].parts = append(groups[i].parts, c.part)
			return groups
		}
	}
	return append(groups, alive{parts: []*wiring.Part{c.part}, element: l, at: l.A, wire: wire})
}

func aliveNames(parts []*wiring.Part) string {
	if len(parts) == 1 {
		return titled(parts[0])
	}
	return list(natural(designations(parts)))
}

func designations(parts []*wiring.Part) []string {
	names := make([]string, len(parts))
	for i, p := range parts {
		names[i] = p.Designation
	}
	return names
}

func isOrAre(parts []*wiring.Part) string {
	if len(parts) == 1 {
		return "is"
	}
	return "are"
}

// report reports what is alive, at the wire to move: for a lead that only tells a device
// to run, the last one before the device; else the one that the latest layer laid.
func (o *off) report(a alive) {
	for _, part := range a.parts {
		o.named[part] = true
	}
	f := diag.Finding{
		Level:    a.level,
		Message:  a.message,
		Detail:   fmt.Sprintf("%s %s reads %s; %s", upper(o.when), o.pass.Graph.Name(a.at), volts(o.at.Reading(a.at)), o.cost()),
		Advice:   "Feed it from a point that the key switches, or declare always-on with the reason.",
		At:       a.parts[0].At,
		Related:  defined(a.parts[0].Designation, a.parts[0].At),
		Subjects: subjects(natural(designations(a.parts)), []string{o.pass.Graph.Name(a.at)}),
		States:   []string{o.at.State.Name},
	}
	if way, ok := o.way(a.at); ok && !pulledLow(a.element) {
		f.Detail += fmt.Sprintf(" It is live by %s.", way)
		if from := o.pass.Harness.Nodes[way.Begin].Part; from != nil {
			o.named[from] = true // a converter that feeds what was told is told with it
		}
		f.Subjects = subjects(f.Subjects, waySubjects(o.pass.Graph, way))
		o.blame(&f, way, a.element)
	}
	o.pass.Report(f)
}

// pulledLow reports whether something is told to run by a low voltage, not by a high one.
func pulledLow(el wiring.Element) bool {
	s, ok := el.(*wiring.Sense)
	return ok && s.Above == 0
}

// cost says what the battery that is drained most gives, and how long it lasts.
func (o *off) cost() string {
	battery, total := drained(o.pass, o.at)
	if battery == nil {
		return "no battery feeds it."
	}
	text := fmt.Sprintf("%s gives %v", battery.Part.Designation, total)
	if days, ok := o.daysLeft(battery, total); ok {
		text += fmt.Sprintf(" in all, and is at its floor after %.0f days", days)
	}
	return text + "."
}

// way is how a supply makes a node live in this state, a battery if one does.
func (o *off) way(n wiring.NodeID) (path.Path, bool) {
	for _, batteries := range []bool{true, false} {
		for _, s := range o.pass.Supplies() {
			if s.Battery() != batteries {
				continue
			}
			if way, ok := o.pass.Graph.From(o.through(), s.Plus).To(n); ok {
				return way, true
			}
		}
	}
	return path.Path{}, false
}

func (o *off) through() path.Through {
	return path.Through{Sorts: path.Conducting | path.Resistor, Setting: path.InState(o.at.State, o.at.Holds)}.Until(o.pass.Negative)
}

// fedByAlwaysOn reports whether a load hangs on a supply that is itself declared always
// on, or reported already: one cause is told once.
func (o *off) fedByAlwaysOn(l *wiring.Load) bool {
	for _, s := range o.pass.Supplies() {
		part := s.Element.Base().Part
		if (part.AlwaysOn != "" || o.named[part]) && o.pass.Graph.From(o.through(), s.Plus).Has(l.A) {
			return true
		}
	}
	return false
}

// blame points the finding at the wire to move.
func (o *off) blame(f *diag.Finding, way path.Path, el wiring.Element) {
	_, tells := el.(*wiring.Sense)
	wire, landed := newest(o.pass.Harness, way)
	if tells {
		wire, landed = tap(o.pass.Harness, way)
	}
	if wire == nil {
		return
	}
	f.At = landing(wire, landed)
	f.Subjects = subjects([]string{wire.Name(), o.pass.Graph.Name(landed)}, f.Subjects)
	t, ok := pointTerminal(o.pass.Harness, "live-when-on")
	if !ok || !tells { // a load does not belong behind a pre-charge resistor
		return
	}
	if o.pass.Graph.SameCopper(t.Node, landed) {
		f.Advice = fmt.Sprintf("%s is called live-when-on here, and is live with the key off: correct the point, then move %s there.", t.Ref(), wire.Name())
		return
	}
	f.Advice = fmt.Sprintf("Move %s from %s to this platform's switched point, %s.", wire.Name(), o.pass.Graph.Name(landed), t.Ref())
}

// tap is the wire by which a way leaves the last thing on it that is more than an inline
// fuse, and the node that it leaves; nil if the way has no wire.
func tap(h *wiring.Harness, way path.Path) (*wiring.Wire, wiring.NodeID) {
	var wire *wiring.Wire
	at := way.Begin
	for i := len(way.Steps) - 1; i >= 0; i-- {
		s := way.Steps[i]
		if s.Edge.Wire == nil {
			continue
		}
		wire, at = s.Edge.Wire, s.From
		if !inlineFuse(h.Nodes[s.From].Part) {
			break
		}
	}
	return wire, at
}

func inlineFuse(p *wiring.Part) bool {
	if p == nil || len(p.Elements) != 1 {
		return false
	}
	_, ok := p.Elements[0].(*wiring.Fuse)
	return ok
}
