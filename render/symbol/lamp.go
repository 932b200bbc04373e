package symbol

// lamp is a lamp, of any sort (IEC 60617 08-10-01; IEEE 315 11.1).
func lamp() entry {
	return entry{
		name: "lamp", iec: "08-10-01", ieee: "11.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(2.6, 2.6, drawLamp))
			}
			return upright(ask, lampRadius, lampRadius, func(d *drawing) {
				d.line(outline, 0, 0, 0, 2-lampRadius)
				d.line(outline, 0, 2+lampRadius, 0, 4)
				drawLamp(d)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

const lampRadius = 1.25

func drawLamp(d *drawing) {
	const arm = lampRadius * 0.7071
	d.circle(outline, 0, 2, lampRadius)
	d.line(outline, -arm, 2-arm, arm, 2+arm)
	d.line(outline, -arm, 2+arm, arm, 2-arm)
}
