package symbol

import "strings"

// contactor is a main contact that a coil closes (IEC 60617 07-13-02 with 07-15-01; IEEE
// 315 4.29): the main solenoid of a cart. Coil and contact stand apart, joined by a link,
// so that what hangs on either has room.
func contactor() entry {
	return entry{
		name: "contactor", iec: "07-13-02", ieee: "4.29",
		build: contactorFor,
		examples: []example{
			{"main solenoid", Ask{Terminals: named("in", "out", "coil+", "coil-")}},
			{"with economiser", Ask{Terminals: named("in", "out", "coil+", "coil-"), Electronic: true}},
		},
	}
}

// coilApart is the distance of a coil from the contact that it moves.
const coilApart = 6

// coilPair finds the two terminals of a coil; the first is the positive one, if they say.
func coilPair(ask Ask) (pair [2]int, ok bool) {
	var found []int
	for i, t := range ask.Terminals {
		n := plain(t.Name)
		if strings.HasPrefix(n, "coil") || n == "a1" || n == "a2" || n == "85" || n == "86" || n == "x1" || n == "x2" {
			found = append(found, i)
		}
	}
	if len(found) != 2 {
		return pair, false
	}
	return [2]int{found[0], found[1]}, true
}

func contactorFor(ask Ask) Shape {
	coil, ok := coilPair(ask)
	n := len(ask.Terminals)
	if n == 4 && !ok {
		coil, ok = [2]int{2, 3}, true
	}
	if !ok || n < 4 || n > 2+2*mostPoles || n%2 != 0 {
		return boxed(ask, contactorMark(ask))
	}
	pins := make([]Pin, n)
	pins[coil[0]] = Pin{At: Cell{-coilApart, 0}, Side: Top}
	pins[coil[1]] = Pin{At: Cell{-coilApart, 4}, Side: Bottom}
	body := []Box{coilBox(-coilApart, ask.Electronic), {-coilApart + coilHalf, 1.5, -0.9, 2.5}}
	poles, next := 0, 0
	for i := range ask.Terminals {
		if i == coil[0] || i == coil[1] {
			continue
		}
		x := 4 * (next / 2)
		pins[i] = Pin{At: Cell{x, 0}, Side: Top}
		if next%2 == 1 {
			pins[i] = Pin{At: Cell{x, 4}, Side: Bottom}
			poles++
			body = append(body, contactBox(float64(x)))
		}
		next++
	}
	if poles > 1 {
		body = append(body, Box{0.75, 1.5, float64(4*(poles-1)) - 0.9, 2.5})
	}
	s := fixed(ask, pins, func(d *drawing) {
		d.link(-coilApart+coilHalf, linkY, float64(4*(poles-1))+bladeX(ask.Closed), linkY)
		drawCoil(d, -coilApart, ask.Electronic)
		for i := range poles {
			tip := contactorTip
			if i > 0 {
				tip = nil // auxiliary contacts switch signals
			}
			drawContact(d, float64(4*i), ask.Closed, tip)
		}
	}, body...)
	s.beside = []Side{Right, Left}
	return s
}

// contactorMark is the contactor in small.
func contactorMark(ask Ask) mark {
	return symbolMark(5.4, 4, func(d *drawing) {
		inner := *d
		inner.origin.X += 1.7
		drawContact(&inner, 0, ask.Closed, contactorTip)
		inner.rect(outline, -4.2, 1.5, -2.6, 2.5)
		inner.link(-2.6, linkY, bladeX(ask.Closed), linkY)
	})
}
