package symbol

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// Operator is what works a switch (IEC 60617 02-13).
type Operator uint8

// The operators.
const (
	AnyOperator Operator = iota // what is usual for the symbol
	Hand                        // 02-13-01, any manual control
	Push                        // 02-13-05
	Turn                        // 02-13-04
	Key                         // 02-13-13
	Pedal                       // 02-13-10
	Magnet                      // a permanent magnet, as for a reed contact
)

// OperatorOf guesses the operator from what a control is called: "key", "button",
// "direction", "brake". It returns AnyOperator for a word that says nothing.
func OperatorOf(control string) Operator {
	n := strings.ToLower(control)
	for _, guess := range []struct {
		word string
		is   Operator
	}{
		{"key", Key}, {"button", Push}, {"push", Push}, {"pedal", Pedal}, {"brake", Pedal}, {"throttle", Pedal},
		{"direction", Turn}, {"selector", Turn}, {"rotary", Turn}, {"plug", Magnet}, {"reed", Magnet},
	} {
		if strings.Contains(n, guess.word) {
			return guess.is
		}
	}
	return AnyOperator
}

// operatorWide is how far an operator reaches left of the end of its link, in units.
const operatorWide = 1.1

// drawOperator draws the operator with the end of its link at (x, linkY).
func drawOperator(d *drawing, x float64, o Operator) {
	const y = linkY
	switch o {
	case Push: // a bracket that the finger presses to the right
		d.line(outline, x+0.35, y-0.6, x, y-0.6, x, y+0.6, x+0.35, y+0.6)
	case Turn: // a bar with an end bent each way
		d.line(outline, x-0.4, y-0.65, x, y-0.65, x, y+0.65, x+0.4, y+0.65)
	case Key: // bow, stem and bit of a key
		d.circle(outline, x-0.7, y, 0.35)
		d.line(outline, x-0.35, y, x+0.3, y)
		d.line(outline, x, y, x, y+0.4)
		d.line(outline, x+0.3, y, x+0.3, y+0.4)
	case Pedal: // a plate hinged at its heel
		d.path(run([]float64{x + 0.15, y - 0.75, x - 0.55, y + 0.6, x + 0.35, y + 0.6}), ink.Pen(outline).Rounded())
	case Magnet: // a bar magnet
		d.rect(outline, x-0.4, y-0.8, x, y+0.8)
		d.path(ink.Rect{Min: ink.At(x-0.4, y), Max: ink.At(x, y+0.8)}.Path(), ink.Area(ink.Color{}))
	default: // Hand
		d.line(outline, x, y-0.6, x, y+0.6)
	}
}
