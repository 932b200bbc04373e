package symbol

// resistor is a resistor (IEC 60617 04-01-01; IEEE 315 2.1). With a third terminal it is a
// potentiometer.
func resistor() entry {
	return entry{
		name: "resistor", iec: "04-01-01", ieee: "2.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) == 3 {
				return potentiometerFor(ask)
			}
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(1.2, 4, drawResistor))
			}
			return upright(ask, 0.5, 0.5, drawResistor)
		},
		examples: []example{{"", Ask{Terminals: named("1", "2")}}},
	}
}

func drawResistor(d *drawing) {
	d.line(outline, 0, 0, 0, 1)
	d.rect(outline, -0.5, 1, 0.5, 3)
	d.line(outline, 0, 3, 0, 4)
}
