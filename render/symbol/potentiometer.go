package symbol

// potentiometer is a resistor with a moving contact (IEC 60617 04-01-07; IEEE 315 2.1.10).
func potentiometer() entry {
	return entry{
		name: "potentiometer", iec: "04-01-07", ieee: "2.1.10",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 3 {
				return boxed(ask, symbolMark(1.2, 4, drawResistor))
			}
			return potentiometerFor(ask)
		},
		examples: []example{{"", Ask{Terminals: named("t+", "ts", "t-")}}},
	}
}

// potentiometerFor takes the terminal that names itself as the moving contact, or the
// second of the three.
func potentiometerFor(ask Ask) Shape {
	moving := index(ask, "ts", "w", "wiper", "signal", "sig", "thr", "s")
	if moving < 0 {
		moving = 1
	}
	pins := make([]Pin, 3)
	end := 0
	for i := range pins {
		if i == moving {
			pins[i] = Pin{At: Cell{2, 2}, Side: Right}
			continue
		}
		pins[i] = Pin{At: Cell{0, end}, Side: Top}
		if end > 0 {
			pins[i].Side = Bottom
		}
		end = 4
	}
	s := fixed(ask, pins, func(d *drawing) {
		drawResistor(d)
		drawWiper(d, 2, linkY, 0.5)
	}, Box{-0.5, 0.5, 1.5, 3.5})
	s.beside = []Side{Left, Right}
	return s
}
