package symbol

// frame is a bond to the vehicle's frame (IEC 60617 02-15-04; IEEE 315 3.9).
func frame() entry {
	return entry{
		name: "frame", iec: "02-15-04", ieee: "3.9.2",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 1 {
				return boxed(ask, symbolMark(3, 1.2, func(d *drawing) {
					inner := *d
					inner.origin.Y += 0.5
					drawFrame(&inner)
				}))
			}
			return fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}}, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1.2)
				inner := *d
				inner.origin.Y += 0.2
				drawFrame(&inner)
			}, Box{-1.75, 0.5, 1.25, 2.25})
		},
		examples: []example{{"", Ask{Terminals: named("f")}}},
	}
}

func drawFrame(d *drawing) {
	d.line(outline, -1.1, 1, 1.1, 1)
	for _, x := range []float64{-1, 0, 1} {
		d.line(outline, x, 1, x-0.6, 1.9)
	}
}
