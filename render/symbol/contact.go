package symbol

// Contacts stand between the pins (x, 0) and (x, 4). They move to the right when operated:
// a make contact leans left, a break contact leans right against its hook. Links from an
// operator come from the left at the height linkY.

// linkY is where a mechanical link meets the blade.
const linkY = 2.0

// bladeX is where the blade of a contact stands at linkY, left or right of its pins.
func bladeX(closed bool) float64 {
	if closed {
		return 0.35
	}
	return -0.5
}

// drawContact draws a contact; tip, if any, is drawn at the end of the fixed part.
func drawContact(d *drawing, x float64, closed bool, tip func(d *drawing, x, y float64)) {
	d.line(outline, x, 0, x, 1)
	d.line(outline, x, 3, x, 4)
	if closed { // break contact, 07-02-03
		d.line(outline, x, 1, x+0.75, 1)
		d.line(outline, x, 3, x+0.8, 0.7)
	} else { // make contact, 07-02-01
		d.line(outline, x, 3, x-1, 1)
	}
	if tip != nil {
		tip(d, x, 1)
	}
}

// contactBox is what a contact closes to wires.
func contactBox(x float64) Box { return Box{x - 1.25, 0.5, x + 1.1, 3.5} }

// contactorTip is the half circle of the contactor function (07-01-01).
func contactorTip(d *drawing, x, y float64) { d.arc(outline, x, y-0.22, 0.22, 90, 270) }

// breakerTip is the cross of the circuit-breaker function (07-01-02).
func breakerTip(d *drawing, x, y float64) {
	const arm = 0.32
	d.line(outline, x-arm, y-arm, x+arm, y+arm)
	d.line(outline, x-arm, y+arm, x+arm, y-arm)
}

// coilHalf is half the width of a coil.
const coilHalf = 1.2

// drawCoil draws the operating device of a relay (07-15-01) between (x, 0) and (x, 4).
// One with electronics of its own has a field for them on its left.
func drawCoil(d *drawing, x float64, electronic bool) {
	d.line(outline, x, 0, x, 1.25)
	d.line(outline, x, 2.75, x, 4)
	d.rect(outline, x-coilHalf, 1.25, x+coilHalf, 2.75)
	if electronic {
		const field = 1.3
		d.rect(outline, x-coilHalf-field, 1.25, x-coilHalf, 2.75)
		d.line(detail, x-coilHalf-field, 2.75, x-coilHalf, 1.25)
	}
}

func coilBox(x float64, electronic bool) Box {
	b := Box{x - coilHalf - 0.05, 0.5, x + coilHalf + 0.05, 3.5}
	if electronic {
		b.X0 -= 1.3
	}
	return b
}
