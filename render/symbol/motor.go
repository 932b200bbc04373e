package symbol

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// motor is an electric motor (IEC 60617 06-04-01; IEEE 315 13.1): a circle with M. Three
// terminals are those of a three-phase machine (06-08-01); of four, two belong to the
// field winding (06-05-01, 06-05-02), which is drawn beside the armature.
func motor() entry {
	return entry{
		name: "motor", iec: "06-04-01", ieee: "13.1",
		build: motorFor,
		examples: []example{
			{"two terminals", Ask{Terminals: named("+", "-")}},
			{"three-phase", Ask{Terminals: named("U", "V", "W")}},
			{"series", Ask{Terminals: named("A1", "A2", "S1", "S2")}},
			{"separately excited", Ask{Terminals: named("A1", "A2", "F1", "F2")}},
		},
	}
}

func motorFor(ask Ask) Shape {
	switch len(ask.Terminals) {
	case 2:
		return upright(ask, dialRadius, dialRadius, func(d *drawing) {
			d.line(outline, 0, 0, 0, 2-dialRadius)
			d.line(outline, 0, 2+dialRadius, 0, 4)
			drawMachine(d, 0, 2)
		})
	case 3:
		return threePhaseMotor(ask)
	case 4:
		return woundMotor(ask)
	}
	return boxed(ask, mark{wide: 3, high: 3, draw: drawMachine})
}

func drawMachine(d *drawing, x, y float64) {
	d.circle(outline, x, y, dialRadius)
	d.sign(x, y, "M", ink.Bold, 1)
}

func threePhaseMotor(ask Ask) Shape {
	const r, x, y = 2.25, 2.0, 3.75
	pins := []Pin{{At: Cell{0, 0}, Side: Top}, {At: Cell{2, 0}, Side: Top}, {At: Cell{4, 0}, Side: Top}}
	s := fixed(ask, pins, func(d *drawing) {
		d.circle(outline, x, y, r)
		d.line(outline, x, 0, x, y-r)
		// the outer phases bend to the circle, which they meet radially at 45 degrees
		const on = r * 0.7071
		for _, side := range []float64{-1, 1} {
			d.line(outline, x+2*side, 0, x+2*side, y-2, x+on*side, y-on)
		}
		d.sign(x, y-0.65, "M", ink.Bold, 1)
		d.sign(x, y+0.75, "3~", ink.Regular, 1)
	}, Box{-0.25, 0.5, 4.25, y + r + 0.25})
	s.beside = []Side{Right, Left, Bottom}
	return s
}

// woundMotor has the armature's pins above those of the field, all on the left.
func woundMotor(ask Ask) Shape {
	armature, field := windings(ask)
	pins := make([]Pin, 4)
	pins[armature[0]] = Pin{At: Cell{0, 0}, Side: Left}
	pins[armature[1]] = Pin{At: Cell{0, 2}, Side: Left}
	pins[field[0]] = Pin{At: Cell{0, 4}, Side: Left}
	pins[field[1]] = Pin{At: Cell{0, 6}, Side: Left}
	width := float64(outline)
	if strings.HasPrefix(plain(ask.Terminals[field[0]].Name), "s") {
		width = ink.Wide // a series field carries the armature's current
	}
	const x = 3.5 // of the machine
	s := fixed(ask, pins, func(d *drawing) {
		d.circle(outline, x, 1, dialRadius)
		d.sign(x, 1, "M", ink.Bold, 1)
		const on = 1.118 // where a line one unit off the centre meets the circle
		d.line(outline, 0, 0, x-on, 0)
		d.line(outline, 0, 2, x-on, 2)
		d.line(outline, 0, 4, x, 4)
		d.line(outline, 0, 6, x, 6)
		for i := range 4 { // winding, 04-03-01
			d.arc(width, x, 4.25+0.5*float64(i), 0.25, -90, 90)
		}
	}, Box{0.5, -0.75, x + dialRadius + 0.25, 6.5})
	s.beside = []Side{Right, Top, Bottom}
	return s
}

// windings tells armature and field apart by the letters of their terminals; the field of
// a series machine is called S or D, a separate or shunt one F or E (IEC 60034-8 has D, E,
// F). Names that say nothing are taken in their order.
func windings(ask Ask) (armature, field [2]int) {
	var a, f []int
	for i, t := range ask.Terminals {
		if strings.ContainsAny(plain(t.Name)[:1], "sdef") {
			f = append(f, i)
		} else {
			a = append(a, i)
		}
	}
	if len(a) != 2 {
		return [2]int{0, 1}, [2]int{2, 3}
	}
	return [2]int{a[0], a[1]}, [2]int{f[0], f[1]}
}
