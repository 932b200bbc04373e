package symbol

// loudspeaker is a loudspeaker (IEC 60617 09-09-01; IEEE 315 10.1.3); with more than two
// terminals, as an amplifier has, it is a box with one inside.
func loudspeaker() entry {
	return entry{
		name: "loudspeaker", iec: "09-09-01", ieee: "10.1.3",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 || len(ask.Lines) > 0 {
				return boxed(ask, symbolMark(2.6, 3, func(d *drawing) {
					inner := *d
					inner.origin.X -= 0.75
					drawLoudspeaker(&inner)
				}))
			}
			return upright(ask, 0.6, 2.1, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1.2)
				d.line(outline, 0, 2.8, 0, 4)
				drawLoudspeaker(d)
			})
		},
		examples: []example{
			{"", Ask{Terminals: named("+", "-")}},
			{"sound bar", Ask{Lines: []string{"P4"}, Terminals: []Terminal{{"+", "+", Top}, {"-", "−", Bottom}, {"memory", "MEM", Left}}}},
		},
	}
}

func drawLoudspeaker(d *drawing) {
	d.rect(outline, -0.5, 1.2, 0.5, 2.8)
	d.shape(outline, 0.5, 1.2, 2, 0.6, 2, 3.4, 0.5, 2.8)
}
