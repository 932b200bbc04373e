package symbol

// diode is a semiconductor diode (IEC 60617 05-03-01; IEEE 315 8.5.1). The terminal called
// k or cathode is the bar; where names say nothing, current flows from the first to the
// second.
func diode() entry {
	return entry{
		name: "diode", iec: "05-03-01", ieee: "8.5.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(2, 4, func(d *drawing) { drawDiode(d, false) }))
			}
			up := reversed(ask)
			return upright(ask, 0.9, 0.9, func(d *drawing) { drawDiode(d, up) })
		},
		examples: []example{{"", Ask{Terminals: named("a", "k")}}},
	}
}

// drawDiode points downwards, or upwards.
func drawDiode(d *drawing, up bool) {
	d.line(outline, 0, 0, 0, 4)
	base, point := 1.3, 2.7
	if up {
		base, point = point, base
	}
	d.solid(-0.8, base, 0.8, base, 0, point)
	d.line(outline, -0.8, point, 0.8, point)
}
