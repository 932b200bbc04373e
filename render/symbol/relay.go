package symbol

// relay is a coil with a changeover contact, or with a make contact if it has no terminal
// for the resting side (IEC 60617 07-15-01 with 07-02-04; IEEE 315 4.30). Terminals are
// known by the numbers of DIN 72552 (30, 85, 86, 87, 87a) or EN 50005 (11, 12, 14, A1, A2).
func relay() entry {
	return entry{
		name: "relay", iec: "07-15-01", ieee: "4.30",
		build: relayFor,
		examples: []example{
			{"changeover", Ask{Terminals: named("30", "85", "86", "87", "87a")}},
			{"make contact", Ask{Terminals: named("30", "85", "86", "87")}},
		},
	}
}

func relayFor(ask Ask) Shape {
	coil, ok := coilPair(ask)
	common := index(ask, "30", "com", "common", "c", "11", "in")
	work := index(ask, "87", "no", "14", "out")
	rest := index(ask, "87a", "nc", "12")
	want := 4
	if rest >= 0 {
		want = 5
	}
	if !ok || common < 0 || work < 0 || len(ask.Terminals) != want {
		return boxed(ask, relayMark(ask))
	}
	// 86 stands above 85: by DIN 72552 it is the coil's beginning.
	if plain(ask.Terminals[coil[0]].Name) == "85" {
		coil[0], coil[1] = coil[1], coil[0]
	}
	if rest < 0 {
		return makeRelay(ask, coil, common, work)
	}
	return changeoverRelay(ask, coil, common, work, rest)
}

func relayPins(ask Ask, coil [2]int, common, work int) []Pin {
	pins := make([]Pin, len(ask.Terminals))
	pins[coil[0]] = Pin{At: Cell{-coilApart, 0}, Side: Top}
	pins[coil[1]] = Pin{At: Cell{-coilApart, 4}, Side: Bottom}
	pins[common] = Pin{At: Cell{0, 0}, Side: Top}
	pins[work] = Pin{At: Cell{0, 4}, Side: Bottom}
	return pins
}

func makeRelay(ask Ask, coil [2]int, common, work int) Shape {
	s := fixed(ask, relayPins(ask, coil, common, work), func(d *drawing) {
		d.link(-coilApart+coilHalf, linkY, bladeX(ask.Closed), linkY)
		drawCoil(d, -coilApart, ask.Electronic)
		drawContact(d, 0, ask.Closed, nil)
	}, coilBox(-coilApart, ask.Electronic), Box{-coilApart + coilHalf, 1.5, -0.9, 2.5}, contactBox(0))
	s.beside = []Side{Right, Left}
	return s
}

// changeoverRelay has the blade's pivot on top, so that current flows downwards: at rest
// to the right, to the hook of the resting side; operated, straight down.
func changeoverRelay(ask Ask, coil [2]int, common, work, rest int) Shape {
	pins := relayPins(ask, coil, common, work)
	pins[rest] = Pin{At: Cell{2, 4}, Side: Bottom}
	s := fixed(ask, pins, func(d *drawing) {
		d.line(outline, 0, 0, 0, 1)
		d.line(outline, 0, 4, 0, 3)
		d.line(outline, 2, 4, 2, 3, 0.75, 3)
		tip := 0.95
		if ask.Closed {
			tip = -0.1
			d.line(outline, 0, 3, -0.25, 3)
		}
		d.line(outline, 0, 1, tip, 3.25)
		d.link(-coilApart+coilHalf, linkY, tip*(linkY-1)/2.25, linkY)
		drawCoil(d, -coilApart, ask.Electronic)
	}, coilBox(-coilApart, ask.Electronic), Box{-coilApart + coilHalf, 1.5, -0.25, 2.5}, Box{-0.4, 0.5, 2.25, 3.5})
	s.beside = []Side{Right, Left}
	return s
}

// relayMark is the relay in small.
func relayMark(ask Ask) mark {
	return symbolMark(5.4, 4, func(d *drawing) {
		inner := *d
		inner.origin.X += 1.7
		drawContact(&inner, 0, ask.Closed, nil)
		inner.rect(outline, -4.2, 1.5, -2.6, 2.5)
		inner.link(-2.6, linkY, bladeX(ask.Closed), linkY)
	})
}
