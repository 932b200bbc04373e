package symbol

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/render/ink"
)

// Measures of the reference card in millimetres.
const (
	cardMargin = 10.0
	cardGap    = 5.0
	cardName   = 2.5 // capital height of the names
	cardNumber = 1.8 // capital height of the numbers of standards
)

// Card draws every symbol with its name and its numbers in the standards, as many as the
// paper holds; on A4 landscape that is all of them. It returns an error for a paper that
// is too small.
func Card(page ink.Page) error {
	width, height := page.Size()
	page.Text(ink.Text{At: ink.At(cardMargin, cardMargin+3.5), String: "Symbols", Capital: 3.5, Face: ink.Bold})
	page.Text(ink.Text{At: ink.At(width-cardMargin, cardMargin+3.5), Anchor: ink.End, Capital: cardName,
		String: "drawn without power and not operated; IEC 60617 / IEEE 315 numbers from memory"})
	x, y := cardMargin, cardMargin+8.0
	high := 0.0
	for _, c := range cards() {
		if x+c.wide > width-cardMargin+0.01 {
			x, y, high = cardMargin, y+high+cardGap, 0
		}
		if y+c.high > height-cardMargin+0.01 {
			return fmt.Errorf("a card of %.0f x %.0f mm is too small for all symbols", width, height)
		}
		c.draw(page, x, y)
		x += c.wide + cardGap
		high = max(high, c.high)
	}
	return nil
}

// card is one symbol with its words, in millimetres.
type card struct {
	shape              Shape
	title, name, where string
	wide, high         float64
	hull               Box
}

func cards() []card {
	var all []card
	for _, e := range entries() {
		for _, x := range e.examples {
			shape, err := Build(e.name, x.ask)
			if err != nil {
				panic(err) // the examples are part of the program and tested
			}
			all = append(all, newCard(e, x, shape))
		}
	}
	// Rows of one height waste no paper: small symbols first, boxes behind them.
	slices.SortStableFunc(all, func(a, b card) int { return cmp.Compare(a.tall(), b.tall()) })
	return all
}

// tall is 1 for what stands higher than a symbol of two pins.
func (c card) tall() int {
	if c.hull.Y1-c.hull.Y0 > 4 {
		return 1
	}
	return 0
}

func newCard(e entry, x example, shape Shape) card {
	c := card{shape: shape, name: e.name, title: x.title, where: e.iec}
	if e.iec == "" {
		c.where = "no number"
	}
	if e.ieee != "" {
		c.where += " / " + e.ieee
	}
	c.hull = shape.reachOfInk()
	words := max(ink.Width(c.name, ink.Bold, cardName), ink.Width(c.title, ink.Regular, cardName), ink.Width(c.where, ink.Regular, cardNumber))
	c.wide = max((c.hull.X1-c.hull.X0)*Unit, words)
	c.high = (c.hull.Y1-c.hull.Y0)*Unit + 13
	return c
}

// reachOfInk is the hull with the pins.
func (s Shape) reachOfInk() Box {
	h := s.Hull()
	for _, pin := range s.Pins {
		x, y := float64(pin.At.X), float64(pin.At.Y)
		h = Box{min(h.X0, x), min(h.Y0, y), max(h.X1, x), max(h.Y1, y)}
	}
	return h
}

func (c card) draw(page ink.Page, x, y float64) {
	middle := x + c.wide/2
	page.Open(ink.Group{Class: "symbol", Name: c.name, Title: c.title})
	line := func(down float64, s string, face ink.Face, capital float64) {
		page.Text(ink.Text{At: ink.At(middle, y+down), String: s, Capital: capital, Face: face, Anchor: ink.Middle})
	}
	line(2.5, c.name, ink.Bold, cardName)
	line(6, c.title, ink.Regular, cardName)
	line(9, c.where, ink.Regular, cardNumber)
	moved := ink.Move(page, middle-(c.hull.X0+c.hull.X1)/2*Unit, y+12-c.hull.Y0*Unit)
	c.shape.Draw(moved, Placement{}, Unit)
	page.Close()
}
