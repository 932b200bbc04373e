package symbol

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// mostPins is how many pins a symbol may have; a box of so many is longer than a sheet.
const mostPins = 200

// entry is one symbol of the list.
type entry struct {
	name     string
	iec      string // number in IEC 60617; empty: it has none there
	ieee     string // clause of IEEE 315
	build    func(Ask) Shape
	examples []example // for the reference card
}

// example is one form of a symbol on the reference card.
type example struct {
	title string
	ask   Ask
}

// entries lists the symbols, in the order of the reference card. A new symbol is one file
// and one line here.
func entries() []entry {
	return []entry{
		battery(),
		fuse(),
		breaker(),
		switches(),
		keySwitch(),
		pushButton(),
		pedal(),
		contactor(),
		relay(),
		resistor(),
		potentiometer(),
		capacitor(),
		diode(),
		lamp(),
		lampLED(),
		horn(),
		buzzer(),
		loudspeaker(),
		meter(),
		fan(),
		motor(),
		socket(),
		inlet(),
		connector(),
		busBar(),
		splice(),
		stud(),
		frame(),
		capped(),
		reference(),
		radio(),
		fuseBlock(),
		converter(),
		charger(),
		controller(),
		box(),
	}
}

// Names returns the names of all symbols, in the order of the reference card.
func Names() []string {
	var names []string
	for _, e := range entries() {
		names = append(names, e.name)
	}
	return names
}

// Known reports whether there is a symbol of a name.
func Known(name string) bool { _, ok := find(name); return ok }

// Standard returns where a symbol comes from: its number in IEC 60617 and its clause in
// IEEE 315, either empty where it has none.
func Standard(name string) (iec, ieee string) {
	e, _ := find(name)
	return e.iec, e.ieee
}

func find(name string) (entry, bool) {
	for _, e := range entries() {
		if e.name == name {
			return e, true
		}
	}
	return entry{}, false
}

// Build makes a symbol for a part's terminals. A symbol with a fixed form that has no place
// for these terminals becomes a box that carries its mark, so every list of terminals can
// be drawn; an empty name asks for a plain box. It refuses an unknown name, a terminal that
// is named twice or not at all, and more than 200 terminals.
func Build(name string, ask Ask) (Shape, error) {
	if name == "" {
		name = "box"
	}
	e, ok := find(name)
	if !ok {
		return Shape{}, fmt.Errorf("there is no symbol %q; there are %s", ink.Clean(name), strings.Join(Names(), ", "))
	}
	if len(ask.Terminals) > mostPins {
		return Shape{}, fmt.Errorf("a symbol of %d terminals: more than %d cannot be drawn", len(ask.Terminals), mostPins)
	}
	seen := map[string]bool{}
	for i, t := range ask.Terminals {
		if t.Name == "" {
			return Shape{}, fmt.Errorf("terminal %d of a %s has no name", i+1, name)
		}
		if seen[t.Name] {
			return Shape{}, fmt.Errorf("terminal %q of a %s is named twice", ink.Clean(t.Name), name)
		}
		seen[t.Name] = true
	}
	s := e.build(cleaned(ask))
	s.Symbol = name
	return s.noted(), nil
}

// cleaned returns the request with printable words and without empty lines.
func cleaned(ask Ask) Ask {
	terminals := make([]Terminal, len(ask.Terminals))
	for i, t := range ask.Terminals {
		t.Label = ink.Cut(ink.Clean(t.Label), ink.Regular, 1, longestLabel)
		if t.Side > Bottom {
			t.Side = AnySide
		}
		terminals[i] = t
	}
	var lines []string
	for _, line := range ask.Lines {
		face := ink.Regular
		if len(lines) == 0 {
			face = ink.Bold
		}
		if line = ink.Cut(ink.Clean(line), face, 1, longestLine); line != "" {
			lines = append(lines, line)
		}
	}
	ask.Terminals, ask.Lines, ask.Sign = terminals, lines, ink.Clean(ask.Sign)
	return ask
}

// fixed makes a shape whose pins stand at given cells, in the order of the terminals.
func fixed(ask Ask, pins []Pin, draw func(*drawing), body ...Box) Shape {
	for i := range pins {
		pins[i].Terminal = ask.Terminals[i].Name
	}
	return Shape{Body: body, Pins: pins, draw: draw}
}

// upright makes a symbol of two pins in line, four units apart. Its body is as wide as
// stated to the left and to the right of the line; draw need not draw the pin strokes.
func upright(ask Ask, left, right float64, draw func(*drawing)) Shape {
	pins := []Pin{{At: Cell{0, 0}, Side: Top}, {At: Cell{0, 4}, Side: Bottom}}
	return fixed(ask, pins, draw, Box{-left, 0.5, right, 3.5})
}
