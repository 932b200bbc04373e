package symbol

// fuseBlock is a block of fuses as one box, for sheets that do not unfold it into its
// fuses (07-21-01 in a box).
func fuseBlock() entry {
	return entry{
		name: "fuse-block", iec: "07-21-01", ieee: "9.1",
		build: func(ask Ask) Shape {
			return boxed(ask, symbolMark(3.2, 2.4, func(d *drawing) {
				for _, x := range []float64{-1.2, 0, 1.2} {
					d.rect(detail, x-0.3, 1.3, x+0.3, 2.7)
					d.line(detail, x, 0.8, x, 3.2)
				}
			}))
		},
		examples: []example{{"", Ask{Lines: []string{"A1"}, Terminals: []Terminal{{"+", "+", Top}, {"-", "−", Bottom},
			{"1", "1", Left}, {"2", "2", Left}, {"3", "3", Right}, {"4", "4", Right}}}}},
	}
}
