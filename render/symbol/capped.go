package symbol

import "github.com/lugwright/lugwright/render/ink"

// capped is the insulated end of a lead that is not used: a cap over the end of the
// conductor. It has no number in IEC 60617.
func capped() entry {
	return entry{
		name: "capped", iec: "", ieee: "",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 1 {
				return boxed(ask, mark{})
			}
			return fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}}, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1.1)
				p := ink.Path(nil).Move(0.45, 0.6).Line(0.45, 1.2).Arc(ink.At(0, 1.2), 0.45, 0, 180).Line(-0.45, 0.6)
				d.path(p, ink.Pen(outline))
			}, Box{-0.5, 0.5, 0.5, 1.75})
		},
		examples: []example{{"lead not used", Ask{Terminals: named("end")}}},
	}
}
