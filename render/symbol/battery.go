package symbol

// battery is a battery of cells (IEC 60617 06-15-02; IEEE 315 2.5). With words inside, or
// more than its two poles, it is a box, as a pack with a display port needs.
func battery() entry {
	return entry{
		name: "battery", iec: "06-15-02", ieee: "2.5",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 || len(ask.Lines) > 0 {
				return boxed(ask, symbolMark(3.4, 2.6, func(d *drawing) { drawCells(d, false, false) }))
			}
			down := reversed(ask)
			return upright(ask, 1.5, 1.75, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1.25)
				d.line(outline, 0, 2.75, 0, 4)
				drawCells(d, down, true)
			})
		},
		examples: []example{
			{"single", Ask{Terminals: named("+", "-")}},
			{"pack", Ask{Lines: []string{"G1", "48 V pack"}, Terminals: []Terminal{{"+", "+", Top}, {"-", "−", Bottom}, {"display", "DISP", Right}, {"radio", "RADIO", Right}}}},
		},
	}
}

// drawCells draws two cells from y = 1.25 to 2.75; the long plate is positive and carries a
// plus sign if asked for. Turned over, the positive plate is the lowest.
func drawCells(d *drawing, over, plus bool) {
	y := func(v float64) float64 {
		if over {
			return 4 - v
		}
		return v
	}
	for _, at := range []float64{1.25, 2.25} {
		d.line(outline, -1.4, y(at), 1.4, y(at))
		d.line(power, -0.6, y(at+0.5), 0.6, y(at+0.5))
	}
	if plus {
		drawPlus(d, 1.1, y(0.85))
	}
}

// drawPlus draws a plus sign of half a unit and a bit.
func drawPlus(d *drawing, x, y float64) {
	const arm = 0.3
	d.line(detail, x-arm, y, x+arm, y)
	d.line(detail, x, y-arm, x, y+arm)
}
