package symbol

import "github.com/lugwright/lugwright/render/ink"

// horn is a horn: a sounder with a curved bell (IEC 60617 08-10-05; IEEE 315 10.1.2).
func horn() entry {
	return entry{
		name: "horn", iec: "08-10-05", ieee: "10.1.2",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(4.2, 3, func(d *drawing) {
					inner := *d
					inner.origin.X -= 1
					drawHorn(&inner)
				}))
			}
			return upright(ask, 0.75, 2.95, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1.3)
				d.line(outline, 0, 2.7, 0, 4)
				drawHorn(d)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

func drawHorn(d *drawing) {
	d.rect(outline, -0.7, 1.3, 0.7, 2.7)
	var p ink.Path
	p = p.Move(0.7, 1.75).Curve(ink.At(1.8, 1.75), ink.At(2.4, 1.5), 2.9, 0.7)
	p = p.Line(2.9, 3.3).Curve(ink.At(2.4, 2.5), ink.At(1.8, 2.25), 0.7, 2.25)
	d.path(p, ink.Pen(outline).Rounded())
}
