package rule

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

const asFoundText = "As found: this is the platform's own wiring, which the work has not touched."

// asFound lowers to a warning what lies wholly on wiring that the work did not touch.
// Factory carts break half of the rules and drive; the installer is told, and decides.
func asFound(h *wiring.Harness, fs []diag.Finding) {
	for i := range fs {
		f := &fs[i]
		if f.Level != diag.Error || !untouched(h, f.Subjects) {
			continue
		}
		f.Level = diag.Warning
		f.Detail = strings.TrimSpace(f.Detail + " " + asFoundText)
	}
}

// untouched reports whether all subjects are parts, wires or terminals of parts that are
// as the platform had them. A wire whose end was left on nothing is not.
func untouched(h *wiring.Harness, subjects []string) bool {
	for _, name := range subjects {
		if !untouchedOne(h, name) {
			return false
		}
	}
	return len(subjects) > 0
}

func untouchedOne(h *wiring.Harness, name string) bool {
	if w := h.Wire(name); w != nil {
		return w.Untouched() && w.From.Loose == "" && w.To.Loose == ""
	}
	part, _, _ := strings.Cut(name, ".")
	p := h.Part(part)
	return p != nil && p.Origin != nil && p.Origin.Kind == wiring.PlatformLayer && len(p.Changed) == 0
}
