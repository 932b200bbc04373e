package symbol

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// inlet takes the plug that charges the cart: a row of pins in a shell (IEC 60617
// 03-03-03; IEEE 315 5.3.1). Its terminals leave on the left, beside their names.
func inlet() entry {
	return entry{
		name: "inlet", iec: "03-03-03", ieee: "5.3.1",
		build: inletFor,
		examples: []example{
			{"AC", Ask{Terminals: []Terminal{{"L", "L", Left}, {"N", "N", Left}, {"PE", "PE", Left}}}},
			{"with interlock", Ask{Terminals: []Terminal{{"+", "+", Left}, {"-", "−", Left}, {"lock", "lock", Left}}}},
		},
	}
}

func inletFor(ask Ask) Shape {
	if len(ask.Terminals) == 0 || len(ask.Lines) > 0 {
		return boxed(ask, symbolMark(1.6, 2.4, func(d *drawing) {
			for _, y := range []float64{1.2, 2, 2.8} {
				drawMale(d, 0, y)
			}
		}))
	}
	text := 0.0
	pins := make([]Pin, len(ask.Terminals))
	for i, t := range ask.Terminals {
		pins[i] = Pin{At: Cell{0, 2 * i}, Side: Left}
		text = max(text, ink.Width(t.Label, ink.Regular, 1))
	}
	left := edge + inset + 0.4 // of the row of male pins
	if text > 0 {
		left += text + 0.4
	}
	right := quarter(left + 0.8 + inset + 0.4)
	bottom := float64(2*len(pins)-2) + 1.25
	s := fixed(ask, pins, func(d *drawing) {
		d.path(ink.Rect{Min: ink.At(edge, -1.25), Max: ink.At(right, bottom)}.Round(0.5), ink.Pen(outline))
		for i, t := range ask.Terminals {
			y := float64(2 * i)
			d.line(outline, 0, y, edge, y)
			d.words(edge+inset, y, ink.Start, t.Label, ink.Regular)
			if !strings.HasPrefix(plain(t.Name), "lock") { // an interlock is a contact behind the shell
				drawMale(d, left+0.4, y)
			}
		}
	}, Box{edge, -1.25, right, bottom})
	s.Marked = true
	s.beside = []Side{Right, Top, Bottom}
	return s
}

// drawMale is the pin of a plug, centred.
func drawMale(d *drawing, x, y float64) {
	d.path(ink.Rect{Min: ink.At(x-0.5, y-0.22), Max: ink.At(x+0.5, y+0.22)}.Round(0.22), ink.Area(ink.Color{}))
}

// quarter rounds up to a quarter of a unit that is no whole unit, as edges of bodies are.
func quarter(v float64) float64 {
	q := float64(int(v*4+0.999)) / 4
	if q == float64(int(q)) {
		q += 0.25
	}
	return q
}
