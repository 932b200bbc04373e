package symbol

// charger turns alternating voltage into direct voltage (IEC 60617 06-14-03, a rectifier).
func charger() entry {
	return entry{
		name: "charger", iec: "06-14-03", ieee: "",
		build: func(ask Ask) Shape { return boxed(ask, convertMark(alternatingCurrent, directCurrent)) },
		examples: []example{{"AC to DC", Ask{Lines: []string{"T1"}, Terminals: []Terminal{{"+", "+", Top}, {"-", "−", Bottom},
			{"L", "L", Left}, {"N", "N", Left}, {"PE", "PE", Left}}}}},
	}
}
