package symbol

// reference ends a wire that goes on elsewhere: an arrow beside which sheet and zone are
// written (IEC 61082-1; IEEE 315 A4.10).
func reference() entry {
	return entry{
		name: "reference", iec: "", ieee: "",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 1 {
				return boxed(ask, mark{})
			}
			return fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}}, func(d *drawing) {
				d.line(outline, 0, 0, 0, 1)
				d.solid(-0.4, 0.6, 0.4, 0.6, 0, 1.7)
			}, Box{-0.45, 0.5, 0.45, 1.75})
		},
		examples: []example{{"to another sheet", Ask{Terminals: named("to")}}},
	}
}
