package symbol

// fuse is a fuse (IEC 60617 07-21-01; IEEE 315 9.1).
func fuse() entry {
	return entry{
		name: "fuse", iec: "07-21-01", ieee: "9.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(1.2, 4, drawFuse))
			}
			return upright(ask, 0.5, 0.5, drawFuse)
		},
		examples: []example{{"", Ask{Terminals: named("in", "out")}}},
	}
}

func drawFuse(d *drawing) {
	d.rect(outline, -0.5, 1, 0.5, 3)
	d.line(outline, 0, 0, 0, 4)
}
