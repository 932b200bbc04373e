package symbol

// converter turns one direct voltage into another, as a 48-to-12 V reducer does (IEC 60617
// 06-14-02).
func converter() entry {
	return entry{
		name: "converter", iec: "06-14-02", ieee: "",
		build: func(ask Ask) Shape { return boxed(ask, convertMark(directCurrent, directCurrent)) },
		examples: []example{{"DC to DC", Ask{Lines: []string{"T2"}, Terminals: []Terminal{{"in+", "IN+", Top}, {"in-", "IN−", Bottom},
			{"enable", "EN", Left}, {"out", "12+", Right}, {"memory", "MEM", Right}}}}},
	}
}
