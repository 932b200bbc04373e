package symbol

// socket is an outlet that gives power to what is plugged in (IEC 60617 11-13-01): of 12 V
// or of USB.
func socket() entry {
	return entry{
		name: "socket", iec: "11-13-01", ieee: "5.3.2",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 || len(ask.Lines) > 0 {
				return boxed(ask, symbolMark(2.6, 1.6, drawOutlet))
			}
			return upright(ask, 1.5, 1.5, func(d *drawing) {
				d.line(outline, 0, 0, 0, 0.5)
				d.line(outline, 0, 3.5, 0, 4)
				d.rect(outline, -1.5, 0.5, 1.5, 3.5)
				drawOutlet(d)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

// drawOutlet is a half circle over its base line.
func drawOutlet(d *drawing) {
	d.arc(outline, 0, 2.5, 1, 180, 360)
	d.line(outline, -1.2, 2.5, 1.2, 2.5)
	d.line(outline, 0, 1.5, 0, 1)
}
