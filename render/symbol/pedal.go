package symbol

// pedal is a start switch and a throttle potentiometer that one pedal moves (07-02-01 and
// 04-01-07 with 02-13-10). Without the three terminals of the throttle it is a switch.
func pedal() entry {
	return entry{
		name: "pedal", iec: "02-13-10", ieee: "2.1.10",
		build:    func(ask Ask) Shape { return switchFor(ask, Pedal) },
		examples: []example{{"", Ask{Terminals: named("in", "out", "t+", "ts", "t-")}}},
	}
}

// pedalBox draws a pedal if the terminals are those of one: throttle supply, signal and
// return, and perhaps the two of a switch.
func pedalBox(ask Ask) (Shape, bool) {
	supply, signal, ret := index(ask, "t+", "thr+"), index(ask, "ts", "thr"), index(ask, "t-", "thr-")
	if supply < 0 || signal < 0 || ret < 0 || len(ask.Terminals) != 3 && len(ask.Terminals) != 5 {
		return Shape{}, false
	}
	pins := make([]Pin, len(ask.Terminals))
	pins[supply] = Pin{At: Cell{6, 0}, Side: Top}
	pins[signal] = Pin{At: Cell{4, 4}, Side: Bottom}
	pins[ret] = Pin{At: Cell{6, 4}, Side: Bottom}
	body := []Box{{3.5, 0.5, 6.6, 3.5}}
	from, contact := 1.75, false
	if len(ask.Terminals) == 5 {
		contact, from = true, -2.25
		body = append(body, contactBox(0), Box{0.75, 1.5, 3.75, 2.5}, Box{from - operatorWide, 1.15, -0.75, 2.85})
		top := true
		for i := range ask.Terminals {
			if i == supply || i == signal || i == ret {
				continue
			}
			pins[i] = Pin{At: Cell{0, 4}, Side: Bottom}
			if top {
				pins[i] = Pin{At: Cell{0, 0}, Side: Top}
			}
			top = false
		}
	} else {
		body = append(body, Box{from - operatorWide, 1.15, 3.75, 2.85})
	}
	s := fixed(ask, pins, func(d *drawing) {
		d.link(from, linkY, 4, linkY)
		if contact {
			drawContact(d, 0, ask.Closed, nil)
		}
		d.line(outline, 6, 0, 6, 1)
		d.line(outline, 6, 3, 6, 4)
		d.rect(outline, 5.5, 1, 6.5, 3)
		drawWiper(d, 4, 4, 5.5)
		drawOperator(d, from, Pedal)
	}, body...)
	s.beside = []Side{Right, Left}
	return s, true
}

// drawWiper draws the moving contact of a potentiometer: from a pin at (x, y) to the height
// linkY and with an arrow to the edge of the resistor.
func drawWiper(d *drawing, x, y, to float64) {
	const long, half = 0.7, 0.28
	back := -long
	if to < x {
		back = long
	}
	d.line(outline, x, y, x, linkY, to+back, linkY)
	d.solid(to, linkY, to+back, linkY-half, to+back, linkY+half)
}
