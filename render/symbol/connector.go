package symbol

import (
	"regexp"
)

// connector is a plug in its socket (IEC 60617 03-03-05; IEEE 315 5.3): ways side by side
// that part together, the fixed half (a1, a2, a+) on top and the free half (b1, b2, b-)
// below. Terminals that do not pair are one half of a connector.
func connector() entry {
	return entry{
		name: "connector", iec: "03-03-05", ieee: "5.3",
		build: func(ask Ask) Shape {
			pairs, ok := waysOf(ask)
			if !ok {
				return inletFor(ask)
			}
			return connectorFor(ask, pairs)
		},
		examples: []example{{"mated, two ways", Ask{Terminals: named("a1", "a2", "b1", "b2")}}},
	}
}

var wayName = regexp.MustCompile(`^[ab](.+)$`)

// waysOf pairs a1 with b1 and so on; any two terminals are one way.
func waysOf(ask Ask) (pairs [][2]int, ok bool) {
	if len(ask.Terminals) == 2 {
		return [][2]int{{0, 1}}, true
	}
	for i, t := range ask.Terminals {
		n := plain(t.Name)
		if !wayName.MatchString(n) || n[0] == 'b' {
			continue
		}
		if other := index(ask, "b"+n[1:]); other >= 0 {
			pairs = append(pairs, [2]int{i, other})
		}
	}
	return pairs, len(pairs) > 0 && 2*len(pairs) == len(ask.Terminals)
}

// waysApart is the distance of neighbouring ways.
const waysApart = 2

func connectorFor(ask Ask, pairs [][2]int) Shape {
	pins := make([]Pin, len(ask.Terminals))
	for i, pair := range pairs {
		pins[pair[0]] = Pin{At: Cell{waysApart * i, 0}, Side: Top}
		pins[pair[1]] = Pin{At: Cell{waysApart * i, 4}, Side: Bottom}
	}
	last := float64(waysApart * (len(pairs) - 1))
	s := fixed(ask, pins, func(d *drawing) {
		for i := range pairs {
			drawWay(d, float64(waysApart*i))
			if i > 0 {
				d.link(float64(waysApart*(i-1))+0.7, 2.35, float64(waysApart*i)-0.7, 2.35)
			}
		}
	}, Box{-0.8, 0.5, last + 0.8, 3.5})
	s.beside = []Side{Right, Left}
	return s
}

// drawWay is a pin, coming from below, in the cup of a socket.
func drawWay(d *drawing, x float64) {
	d.line(outline, x, 0, x, 1.4)
	d.arc(outline, x, 2.1, 0.7, 180, 360)
	const half = 0.22
	d.solid(x-half, 2, x+half, 2, x+half, 3.1, x-half, 3.1)
	d.line(outline, x, 2, x, 4)
}
