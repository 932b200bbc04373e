package symbol

import "github.com/lugwright/lugwright/render/ink"

// splice is where wires are joined for good (IEC 60617 03-02-01; IEEE 315 3.1.6). With one
// terminal it is a dot on which wires land from all sides; with two, the sleeve between two
// pieces of a wire; with more, a short bar.
func splice() entry {
	return entry{
		name: "splice", iec: "03-02-01", ieee: "3.1.6",
		build: spliceFor,
		examples: []example{
			{"joint", Ask{Terminals: named("s")}},
			{"in line", Ask{Terminals: named("1", "2")}},
		},
	}
}

// dotRadius is that of a joint, in units. The dot lies on its pin, so it has no body.
const dotRadius = 0.35

func spliceFor(ask Ask) Shape {
	switch len(ask.Terminals) {
	case 0:
		return boxed(ask, mark{})
	case 1:
		s := fixed(ask, []Pin{{Side: AnySide}}, func(d *drawing) { d.dot(0, 0, dotRadius) })
		return s
	case 2:
		pins := []Pin{{At: Cell{0, 0}, Side: Top}, {At: Cell{0, 2}, Side: Bottom}}
		return fixed(ask, pins, func(d *drawing) {
			d.line(outline, 0, 0, 0, 2)
			d.path(ink.Rect{Min: ink.At(-0.35, 0.5), Max: ink.At(0.35, 1.5)}.Path(), ink.Area(ink.Color{}))
		}, Box{-0.4, 0.5, 0.4, 1.5})
	}
	return bar(ask, false)
}
