package symbol

// radio is a box with an antenna (IEC 60617 10-04-01; IEEE 315 2.4).
func radio() entry {
	return entry{
		name: "radio", iec: "10-04-01", ieee: "2.4",
		build: func(ask Ask) Shape {
			return boxed(ask, symbolMark(2.2, 2.6, func(d *drawing) {
				d.line(outline, 0, 3.3, 0, 0.7)
				d.line(outline, -1, 0.7, 0, 1.8, 1, 0.7)
			}))
		},
		examples: []example{{"", Ask{Lines: []string{"U2"}, Terminals: []Terminal{{"data", "DATA", Left}}}}},
	}
}
