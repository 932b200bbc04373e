package symbol

import "github.com/lugwright/lugwright/render/ink"

// meter is an indicating instrument (IEC 60617 08-02-01; IEEE 315 12.1): a circle with the
// sign of what it shows, or with a needle. A single terminal is the port that feeds it.
func meter() entry {
	return entry{
		name: "meter", iec: "08-02-01", ieee: "12.1",
		build: func(ask Ask) Shape {
			n := len(ask.Terminals)
			if n != 1 && n != 2 || len(ask.Lines) > 0 {
				return boxed(ask, mark{wide: 3, high: 3, draw: func(d *drawing, x, y float64) { drawDial(d, x, y, ask.Sign) }})
			}
			if n == 2 {
				return upright(ask, dialRadius, dialRadius, func(d *drawing) {
					d.line(outline, 0, 0, 0, 2-dialRadius)
					d.line(outline, 0, 2+dialRadius, 0, 4)
					drawDial(d, 0, 2, ask.Sign)
				})
			}
			return fixed(ask, []Pin{{At: Cell{0, 0}, Side: Top}}, func(d *drawing) {
				d.line(outline, 0, 0, 0, 2-dialRadius)
				drawDial(d, 0, 2, ask.Sign)
			}, Box{-dialRadius, 0.5, dialRadius, 3.5})
		},
		examples: []example{
			{"voltmeter", Ask{Terminals: named("+", "-"), Sign: "V"}},
			{"on a display port", Ask{Terminals: named("display"), Sign: "%"}},
		},
	}
}

const dialRadius = 1.5

func drawDial(d *drawing, x, y float64, sign string) {
	d.circle(outline, x, y, dialRadius)
	if sign != "" && ink.Width(sign, ink.Bold, 1) <= 2.2 {
		d.sign(x, y, sign, ink.Bold, 1)
		return
	}
	d.line(outline, x-0.7, y+0.7, x+0.5, y-0.5)
	d.solid(x+0.85, y-0.85, x+0.25, y-0.55, x+0.55, y-0.25)
}
