package symbol

// busBar is a bar with studs (IEC 60617 03-02-03; IEEE 315 5.1): a thick line that is one
// conductor. Its terminals leave downwards, or upwards if they wish.
func busBar() entry {
	return entry{
		name: "bus-bar", iec: "03-02-03", ieee: "5.1",
		build:    func(ask Ask) Shape { return bar(ask, true) },
		examples: []example{{"", Ask{Terminals: []Terminal{{"1", "", Top}, {"2", "", Bottom}, {"3", "", Bottom}, {"4", "", Bottom}}}}},
	}
}

// bar draws a conductor along y = 2 with pins above and below it, with or without studs.
func bar(ask Ask, studs bool) Shape {
	pins := make([]Pin, len(ask.Terminals))
	ups, downs := 0, 0
	for i, t := range ask.Terminals {
		if t.Side == Top {
			pins[i] = Pin{At: Cell{2 * ups, 1}, Side: Top}
			ups++
			continue
		}
		pins[i] = Pin{At: Cell{2 * downs, 3}, Side: Bottom}
		downs++
	}
	last := float64(2 * (max(ups, downs, 1) - 1))
	s := fixed(ask, pins, func(d *drawing) {
		if last == 0 {
			d.line(power, -0.6, 2, 0.6, 2)
		} else {
			d.line(power, -0.5, 2, last+0.5, 2)
		}
		for _, pin := range pins {
			x, y := float64(pin.At.X), float64(pin.At.Y)
			d.line(outline, x, y, x, 2)
		}
		for i := range max(ups, downs) {
			if studs {
				d.ring(outline, float64(2*i), 2, 0.35)
			} else {
				d.dot(float64(2*i), 2, 0.3)
			}
		}
	}, Box{-0.75, 1.5, last + 0.75, 2.5})
	s.beside = []Side{Right, Left}
	return s
}
