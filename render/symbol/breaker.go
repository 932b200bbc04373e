package symbol

// breaker is a circuit breaker that a hand can also open (IEC 60617 07-13-05; IEEE 315
// 9.4).
func breaker() entry {
	return entry{
		name: "breaker", iec: "07-13-05", ieee: "9.4",
		build: func(ask Ask) Shape {
			operator := ask.Operator
			if operator == AnyOperator {
				operator = Hand
			}
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(2, 4, func(d *drawing) {
					inner := *d
					inner.origin.X += 0.2
					drawContact(&inner, 0, ask.Closed, breakerTip)
				}))
			}
			s := fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}, {At: Cell{0, 4}, Side: Bottom}}, func(d *drawing) {
				d.link(-2.25, linkY, bladeX(ask.Closed), linkY)
				drawContact(d, 0, ask.Closed, breakerTip)
				drawOperator(d, -2.25, operator)
			}, contactBox(0), Box{-2.25 - operatorWide, 1.15, -0.75, 2.85})
			s.beside = []Side{Right, Left}
			return s
		},
		examples: []example{{"", Ask{Terminals: named("in", "out")}}},
	}
}
