package sheet

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
)

// hazard is what can hurt people, and the parts that it comes with.
type hazard struct {
	text string
	of   func(*wiring.Part) bool
}

// hazards lists them, most serious first. Each is a WARNING of ANSI Z535.6: it could cause
// death or serious injury. Which there are is common practice of the trade; there is no
// published list for carts.
func hazards() []hazard {
	return []hazard{
		{"Arc and burns: the pack drives thousands of amperes. Cover both posts.", has[*wiring.Source]},
		{"Charge stays after pack off: measure under 5 V before touching.", has[*wiring.Capacitor]},
		{"The cart can roll or start: chock it.", func(p *wiring.Part) bool { return p.Kind.Traction }},
		{"Mains in the charger: pull the plug.", has[*wiring.Mains]},
	}
}

// has reports whether an element of one sort is inside a part.
func has[E wiring.Element](p *wiring.Part) bool {
	return slices.ContainsFunc(p.Elements, func(e wiring.Element) bool { _, ok := e.(E); return ok })
}

// cautions is what a cart's own parts call for. It is one text under one signal word, since
// every line of it is taken from the drawing.
func cautions(h *wiring.Harness) []frame.Caution {
	var texts []string
	for _, one := range hazards() {
		if slices.ContainsFunc(h.Parts, one.of) {
			texts = append(texts, one.text)
		}
	}
	if texts == nil {
		return nil
	}
	return []frame.Caution{{Word: frame.Warning, Text: strings.Join(texts, " ")}}
}
