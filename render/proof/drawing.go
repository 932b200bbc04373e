package proof

import "github.com/lugwright/lugwright/render/ink"

// Drawing is a schematic as it stands on paper.
type Drawing struct {
	Page  ink.Rect
	Area  ink.Rect // hull of all that belongs to the schematic
	Wires []Wire
	Bars  []Wire // rails, bus bars, splices; a bar is one straight line
	Metal []Wire // lines that are no wires: from a stud to its rail
	Pins  []Pin
	Dots  []ink.Point
	Inks  []Ink
	Boxes []Ink // enclosures
	Texts []Text
}

// Wire is the line of one conductor: its straight stretches, level and upright ones apart,
// each as long as it goes.
type Wire struct {
	Name  string
	Runs  []Run
	Ends  []ink.Point
	Bends []ink.Point
	Width float64
	Slant bool // a stretch is neither level nor upright
}

// Run is a level or upright stretch; A is its left or upper end.
type Run struct{ A, B ink.Point }

// Level reports whether the stretch is level.
func (r Run) Level() bool { return r.A.Y == r.B.Y }

// Pin is where a symbol takes a wire.
type Pin struct {
	Part, Name string
	At         ink.Point
}

// Ref is the pin as "K1.in".
func (p Pin) Ref() string { return p.Part + "." + p.Name }

// Ink is the box of one mark of a symbol, without the strokes to its pins.
type Ink struct {
	Part   string // part, or the wire of a sleeve
	Box    ink.Rect
	Sleeve bool // joins two pieces of a wire
}

// Text is one line of words.
type Text struct {
	Owner   string // wire, part, rail or enclosure to which it belongs
	Class   string // of the group in which it stands: "label", "part"
	String  string
	Box     ink.Rect
	Capital float64
	Turned  bool
	Leader  []ink.Point // of its label; nil: none
}
