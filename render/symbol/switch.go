package symbol

import (
	"regexp"

	"github.com/lugwright/lugwright/render/ink"
)

// switches is a hand-operated switch (IEC 60617 07-07-01; IEEE 315 4.6): one make contact,
// several that move together, or one that selects. Other sets of terminals, such as those
// of a reversing drum, become a box with a switch in it.
func switches() entry {
	return entry{
		name: "switch", iec: "07-07-01", ieee: "4.6",
		build: func(ask Ask) Shape { return switchFor(ask, Hand) },
		examples: []example{
			{"one pole", Ask{Terminals: named("in", "out")}},
			{"closed at rest", Ask{Terminals: named("in", "out"), Closed: true}},
			{"two poles", Ask{Terminals: named("in", "out", "in2", "out2"), Operator: Pedal}},
			{"direction", Ask{Terminals: named("in", "forward", "reverse"), Operator: Turn}},
			{"reversing drum", Ask{Lines: []string{"S3"}, Operator: Turn, Terminals: []Terminal{{"1", "1", Left}, {"2", "2", Left}, {"3", "3", Left},
				{"4", "4", Right}, {"5", "5", Right}, {"6", "6", Right}}}},
		},
	}
}

// keySwitch is a switch that is turned with a key (07-07-01 with 02-13-13).
func keySwitch() entry {
	return entry{
		name: "key-switch", iec: "02-13-13", ieee: "4.6",
		build:    func(ask Ask) Shape { return switchFor(ask, Key) },
		examples: []example{{"", Ask{Terminals: named("in", "out")}}},
	}
}

// pushButton is a switch that opens again by itself (07-07-02; IEEE 315 4.7).
func pushButton() entry {
	return entry{
		name: "push-button", iec: "07-07-02", ieee: "4.7",
		build:    func(ask Ask) Shape { return switchFor(ask, Push) },
		examples: []example{{"", Ask{Terminals: named("in", "out")}}},
	}
}

// named makes terminals without labels or wishes.
func named(names ...string) []Terminal {
	var list []Terminal
	for _, n := range names {
		list = append(list, Terminal{Name: n})
	}
	return list
}

// mostPoles and mostThrows bound the forms that are drawn as contacts.
const (
	mostPoles  = 4
	mostThrows = 6
)

func switchFor(ask Ask, usual Operator) Shape {
	if ask.Operator == AnyOperator {
		ask.Operator = usual
	}
	if s, ok := pedalBox(ask); ok {
		return s
	}
	if poles, ok := polesOf(ask); ok {
		return poleSwitch(ask, poles)
	}
	if common, throws, ok := throwsOf(ask); ok {
		return selector(ask, common, throws)
	}
	return boxed(ask, symbolMark(4.2, 4, func(d *drawing) {
		inner := *d
		inner.origin.X += 1.2 // the operator reaches to the left
		drawContact(&inner, 0, ask.Closed, nil)
		inner.link(-2, linkY, bladeX(ask.Closed), linkY)
		drawOperator(&inner, -2, ask.Operator)
	}))
}

var poleName = regexp.MustCompile(`^(in|out)(\d*)$`)

// polesOf pairs in, out, in2, out2 and so on; any two terminals are one pole.
func polesOf(ask Ask) (pairs [][2]int, ok bool) {
	n := len(ask.Terminals)
	if n == 2 {
		return [][2]int{{0, 1}}, true
	}
	if n == 0 || n%2 != 0 || n > 2*mostPoles {
		return nil, false
	}
	for i, t := range ask.Terminals {
		m := poleName.FindStringSubmatch(plain(t.Name))
		if m == nil {
			return nil, false
		}
		if m[1] == "out" {
			continue
		}
		out := index(ask, "out"+m[2])
		if out < 0 {
			return nil, false
		}
		pairs = append(pairs, [2]int{i, out})
	}
	return pairs, len(pairs) == n/2
}

// poleSwitch draws contacts side by side that one operator moves.
func poleSwitch(ask Ask, poles [][2]int) Shape {
	const apart = 4
	pins := make([]Pin, len(ask.Terminals))
	body := []Box{{-2.25 - operatorWide, 1.15, -0.75, 2.85}}
	for n, pole := range poles {
		pins[pole[0]] = Pin{At: Cell{apart * n, 0}, Side: Top}
		pins[pole[1]] = Pin{At: Cell{apart * n, 4}, Side: Bottom}
		body = append(body, contactBox(float64(apart*n)))
		if n > 0 {
			// the link to the contact on the left
			body = append(body, Box{float64(apart*n-apart) + 0.75, 1.5, float64(apart*n) - 0.9, 2.5})
		}
	}
	s := fixed(ask, pins, func(d *drawing) {
		last := float64(apart*(len(poles)-1)) + bladeX(ask.Closed)
		d.link(-2.25, linkY, last, linkY)
		for n := range poles {
			drawContact(d, float64(apart*n), ask.Closed, nil)
		}
		drawOperator(d, -2.25, ask.Operator)
	}, body...)
	s.beside = []Side{Right, Left}
	return s
}

// throwsOf finds the terminal that the others are chosen for: one called in or common, or
// the first of three.
func throwsOf(ask Ask) (common int, throws []int, ok bool) {
	n := len(ask.Terminals)
	if n < 3 || n > mostThrows+1 {
		return 0, nil, false
	}
	common = index(ask, "in", "com", "common", "c", "feed", "30")
	if common < 0 {
		if n != 3 {
			return 0, nil, false
		}
		common = 0
	}
	for i, t := range ask.Terminals {
		if i == common {
			continue
		}
		if m := poleName.FindStringSubmatch(plain(t.Name)); m != nil && m[1] == "in" {
			return 0, nil, false
		}
		throws = append(throws, i)
	}
	return common, throws, true
}

// selector draws one blade and the contacts that it may reach. Of two, the blade rests
// between them (changeover with off position, 07-02-05); of more, left of them all; drawn
// closed, it rests on the first.
func selector(ask Ask, common int, throws []int) Shape {
	n := len(throws)
	const top, low = 1.0, 2.9 // ends of the blade
	first := 0                // of the contacts
	pivot := n - 2
	off := -2.0
	if n == 2 {
		first, pivot, off = -1, 0, 0
	}
	pins := make([]Pin, len(ask.Terminals))
	pins[common] = Pin{At: Cell{pivot, 0}, Side: Top}
	for i, t := range throws {
		pins[t] = Pin{At: Cell{first + 2*i, 4}, Side: Bottom}
	}
	operator := min(off, float64(first)) - 2
	last := float64(first + 2*(n-1))
	s := fixed(ask, pins, func(d *drawing) {
		x := float64(pivot)
		d.line(outline, x, 0, x, top)
		target := off
		if ask.Closed {
			target = float64(first)
		}
		for i := range throws {
			at := float64(first + 2*i)
			d.line(outline, at, 4, at, 3.2)
			d.ring(outline, at, low+0.1, 0.2)
		}
		blade := ink.At(x+(target-x)*0.86, top+(low-top)*0.86)
		d.line(outline, x, top, blade.X, blade.Y)
		d.link(operator, linkY, x+(target-x)*(linkY-top)/(low-top), linkY)
		drawOperator(d, operator, ask.Operator)
	}, Box{operator - operatorWide, 0.5, max(last, float64(pivot)) + 0.4, 3.5})
	s.beside = []Side{Right, Left}
	return s
}
