package job

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/sizing"
)

// fillAuto computes the sizes and ratings that the files leave to the program. A harness
// with input errors is thrown away, so that nothing is computed for it.
func (r *reading) fillAuto() {
	if diag.Worst(r.findings) == diag.Error {
		return
	}
	for _, g := range sizing.Fill(r.h, nil) {
		r.cannotFill(g)
	}
	for _, p := range r.h.Parts {
		for _, e := range p.Elements {
			if f, ok := e.(*wiring.Fuse); ok && f.Auto && f.Rating > 0 && f.Ohms == 0 {
				f.Ohms = kind.FuseOhms(f.Style, f.Rating)
			}
		}
	}
}

// cannotFill notes a size or rating that cannot be computed: it stays unknown.
func (r *reading) cannotFill(g sizing.Gap) {
	if g.Wire != nil {
		r.note(g.Wire.Span("size"), fmt.Sprintf("the size of %s cannot be computed: %s", g.Wire.Name(), g.Why), "State it")
		return
	}
	f := g.Fuse
	at, name := f.Part.Span("rating"), f.Part.Designation
	if f.Channel > 0 {
		at, name = f.Part.Span(fmt.Sprintf("fuses.%d", f.Channel)), f.Ref()
	}
	r.note(at, fmt.Sprintf("the rating of %s cannot be computed: %s", name, g.Why), "State it")
}
