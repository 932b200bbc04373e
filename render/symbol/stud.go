package symbol

// stud is a terminal by itself, such as the end of the factory harness (IEC 60617
// 03-02-02; IEEE 315 5.1).
func stud() entry {
	return entry{
		name: "stud", iec: "03-02-02", ieee: "5.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 1 {
				return bar(ask, true)
			}
			return fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}}, func(d *drawing) {
				d.line(outline, 0, 0, 0, 0.6)
				d.ring(outline, 0, 1, 0.4)
			}, Box{-0.45, 0.5, 0.45, 1.45})
		},
		examples: []example{{"", Ask{Terminals: named("1")}}},
	}
}
