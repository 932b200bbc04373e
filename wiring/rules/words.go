package rules

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// mostNamed is how many names a sentence lists before it counts the rest.
const mostNamed = 6

// list writes names as a sentence does: "A, B and C".
func list(names []string) string {
	if len(names) > mostNamed {
		rest := len(names) - mostNamed + 1
		names = append(append([]string(nil), names[:mostNamed-1]...), fmt.Sprintf("%d more", rest))
	}
	switch len(names) {
	case 0:
		return "nothing"
	case 1:
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// natural sorts names in the natural order of designations and drops doubles.
func natural(names []string) []string {
	sorted := append([]string(nil), names...)
	sort.Slice(sorted, func(i, j int) bool { return wiring.Less(sorted[i], sorted[j]) })
	var kept []string
	for i, n := range sorted {
		if i == 0 || n != sorted[i-1] {
			kept = append(kept, n)
		}
	}
	return kept
}

// titled is a part with what it is: "E1 (Light bar, LED)".
func titled(p *wiring.Part) string {
	if name := p.Name(); name != "" {
		return p.Designation + " (" + name + ")"
	}
	return p.Designation
}

// wireNames lists the names of wires.
func wireNames(ws []*wiring.Wire) []string {
	names := make([]string, len(ws))
	for i, w := range ws {
		names[i] = w.Name()
	}
	return names
}

// volts prints a voltage to a tenth, as meters show it.
func volts(v quantity.Volt) string { return fmt.Sprintf("%.1f V", float64(v)) }

// defined is a related place: where a part or a wire was defined.
func defined(name string, at diag.Span) []diag.Place {
	if !at.Known() {
		return nil
	}
	return []diag.Place{{Span: at, Label: name + " is defined here"}}
}

// waySubjects names all that a way passes: its wires and the parts of its elements; and
// the part that it begins at.
func waySubjects(g *path.Graph, p path.Path) []string {
	var names []string
	for _, s := range p.Steps {
		if s.Edge.Wire != nil {
			names = append(names, s.Edge.Wire.Name())
		} else {
			names = append(names, s.Edge.Part().Designation)
		}
	}
	if begin := g.Harness.Nodes[p.Begin].Part; begin != nil {
		names = append(names, begin.Designation)
	}
	return names
}

// subjects joins lists of names and keeps the first of each.
func subjects(lists ...[]string) []string {
	seen := map[string]bool{}
	var all []string
	for _, names := range lists {
		for _, n := range names {
			if n != "" && !seen[n] {
				seen[n] = true
				all = append(all, n)
			}
		}
	}
	return all
}

// upper begins a text with a capital, unless its first word is a name.
func upper(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// placeOfState is where a state is written; of those that are built in, the top of the job.
func placeOfState(p *rule.Pass, s *wiring.State) diag.Span {
	if s.At.Known() && !s.Stock {
		return s.At
	}
	return p.Harness.Identity.At
}

// movedParts names the parts whose controls a state has away from rest.
func movedParts(p *rule.Pass, s *wiring.State) []string {
	var names []string
	for _, c := range position.Moved(p.Harness, s) {
		names = append(names, c.Part.Designation)
	}
	return natural(names)
}

// batteryNames names the batteries of a cart.
func batteryNames(p *rule.Pass) []string {
	var names []string
	for _, s := range p.Supplies() {
		if s.Battery() {
			names = append(names, s.Element.Base().Part.Designation)
		}
	}
	return natural(names)
}
