package symbol

import (
	"math"

	"github.com/lugwright/lugwright/render/ink"
)

// fan is a fan with its motor: blades in the circle of a machine (IEC 60617 06-04-01; the
// blades are those of process symbols, ISO 14617).
func fan() entry {
	return entry{
		name: "fan", iec: "06-04-01", ieee: "13.1",
		build: func(ask Ask) Shape {
			if len(ask.Terminals) != 2 {
				return boxed(ask, symbolMark(3, 3, drawFan))
			}
			return upright(ask, dialRadius, dialRadius, func(d *drawing) {
				d.line(outline, 0, 0, 0, 2-dialRadius)
				d.line(outline, 0, 2+dialRadius, 0, 4)
				drawFan(d)
			})
		},
		examples: []example{{"", Ask{Terminals: named("+", "-")}}},
	}
}

func drawFan(d *drawing) {
	d.circle(outline, 0, 2, dialRadius)
	for _, deg := range []float64{-90, 30, 150} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		// at(along, across) is a point of a blade whose tip lies in that direction.
		at := func(along, across float64) ink.Point {
			return ink.At(along*cos-across*sin, 2+along*sin+across*cos)
		}
		tip := at(1.15, 0.1)
		p := ink.Path(nil).Move(0, 2).Curve(at(0.35, -0.5), at(1, -0.55), tip.X, tip.Y)
		p = p.Curve(at(0.9, 0.35), at(0.45, 0.3), 0, 2).Close()
		d.path(p, ink.Area(ink.Color{}))
	}
}
