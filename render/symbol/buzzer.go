package symbol

// buzzer is a buzzer: a dome over its terminals (IEC 60617 08-10-10; IEEE 315 10.1.1).
func buzzer() entry {
	return entry{
		name: "buzzer", iec: "08-10-10", ieee: "10.1.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(2.6, 2.6, func(d *drawing) {
					inner := *d
					inner.origin.X -= 0.6
					drawDome(&inner)
				}))
			}
			return upright(ask, 0.25, 2.1, func(d *drawing) {
				const dome, stub = 0.6, 0.764 // left edge of the dome, and where the leads meet it
				d.line(outline, 0, 0, 0, 1.4, stub, 1.4)
				d.line(outline, 0, 4, 0, 2.6, stub, 2.6)
				inner := *d
				inner.origin.X += dome
				drawDome(&inner)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

// drawDome is a half circle whose flat side faces away from the leads; a bell's faces them.
func drawDome(d *drawing) {
	const r = 1.3
	d.arc(outline, r, 2, r, 90, 270)
	d.line(outline, r, 2-r, r, 2+r)
}
