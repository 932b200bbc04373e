package symbol

// lampLED is a lamp of light-emitting diodes: the circle of a lamp round the diode that
// shines (IEC 60617 08-10-01 with 05-03-02; IEEE 315 8.5.4.2).
func lampLED() entry {
	return entry{
		name: "lamp-led", iec: "05-03-02", ieee: "8.5.4.2",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(4.2, 3, func(d *drawing) {
					inner := *d
					inner.origin.X -= 0.6
					drawLED(&inner, false)
				}))
			}
			up := reversed(ask)
			return upright(ask, lampRadius, 2.75, func(d *drawing) {
				d.line(outline, 0, 0, 0, 4)
				drawLED(d, up)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

func drawLED(d *drawing, up bool) {
	d.circle(outline, 0, 2, lampRadius)
	d.line(outline, 0, 2-lampRadius, 0, 2+lampRadius)
	base, point := 1.5, 2.5
	if up {
		base, point = point, base
	}
	d.solid(-0.6, base, 0.6, base, 0, point)
	d.line(outline, -0.6, point, 0.6, point)
	for _, y := range []float64{1.6, 2.3} {
		drawRay(d, 1.25, y)
	}
}

// drawRay is one of the two arrows of light (02-09-01), from (x, y) to the upper right.
func drawRay(d *drawing, x, y float64) {
	const run, rise = 1.2, -0.9
	d.line(detail, x, y, x+run*0.8, y+rise*0.8)
	d.solid(x+run, y+rise, x+run*0.72-0.13, y+rise*0.72-0.17, x+run*0.72+0.13, y+rise*0.72+0.17)
}
