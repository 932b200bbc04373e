package symbol

// controller feeds a motor as its inputs tell it (IEC 60617 02-01-01, a box whose pins say
// what they do).
func controller() entry {
	return entry{
		name: "controller", iec: "02-01-01", ieee: "",
		build: func(ask Ask) Shape { return boxed(ask, mark{}) },
		examples: []example{{"", Ask{Lines: []string{"U1", "controller"}, Terminals: []Terminal{{"B+", "B+", Top}, {"B-", "B−", Bottom},
			{"key", "KEY", Left}, {"pedal", "PED", Left}, {"ts", "THR", Left}, {"M-", "M−", Right}, {"coil", "COIL", Right}}}}},
	}
}
