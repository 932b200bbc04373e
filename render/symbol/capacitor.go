package symbol

// capacitor is a capacitor, with a plus sign if its terminals have polarity (IEC 60617
// 04-02-01 and 04-02-05; IEEE 315 2.2).
func capacitor() entry {
	return entry{
		name: "capacitor", iec: "04-02-01", ieee: "2.2",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(2.4, 4, drawCapacitor))
			}
			polarised := isPositive(ask.Terminals[0].Name) || isPositive(ask.Terminals[1].Name)
			plusY := 1.2
			if reversed(ask) {
				plusY = 2.8
			}
			return upright(ask, 1.25, 1.25, func(d *drawing) {
				drawCapacitor(d)
				if polarised {
					drawPlus(d, 0.75, plusY)
				}
			})
		},
		examples: []example{{"", Ask{Terminals: named("1", "2")}}},
	}
}

func drawCapacitor(d *drawing) {
	d.line(outline, 0, 0, 0, 1.7)
	d.line(outline, -1.1, 1.7, 1.1, 1.7)
	d.line(outline, -1.1, 2.3, 1.1, 2.3)
	d.line(outline, 0, 2.3, 0, 4)
}
