// Package ink says what can be put on a page: paths, text and groups with a meaning, in
// millimetres from the top left corner, y downwards. Formats implement Page; sheets and
// symbols draw on it and never learn which format they are in.
//
// Style travels with each call, so a format keeps no pen.
package ink

// Point is a place on the page, in millimetres.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle, in millimetres; Min is its top left corner.
type Rect struct{ Min, Max Point }

// Page is one sheet of paper that can be drawn on. Every coordinate and width is in
// millimetres and must be finite; a format reports the first fault when it is closed.
type Page interface {
	// Size returns the width and height of the paper.
	Size() (width, height float64)
	// Path strokes and fills a path.
	Path(p Path, s Style)
	// Text writes one line of text.
	Text(t Text)
	// Open begins a group of marks that mean one thing, such as one wire; groups nest.
	Open(g Group)
	// Close ends the group opened last.
	Close()
}

// Group is a set of marks that mean one thing. A format may keep it (an SVG group with
// data attributes) or ignore it.
type Group struct {
	Class string            // "wire", "part", "rail", "label", "frame": lower case, fixed words only
	Name  string            // what it is on the cart: "W37", "K1"
	Title string            // spoken description for tooltips and screen readers
	Data  map[string]string // further facts, such as from and to; written in sorted order

	// Link says where a reader who picks the marks is led: to the first group of the document
	// with this class and name, "wire W37". Empty: nowhere. A group with a link is never led to.
	Link string
}

// Key is the group as links name it: class and name.
func (g Group) Key() string { return g.Class + " " + g.Name }

// Path is a sequence of straight and curved pieces.
type Path []Segment

// Segment is one piece of a path.
type Segment struct {
	Op   Op
	P    Point // end of the piece
	C, D Point // control points of a CurveTo
}

// Op says how a segment reaches its point.
type Op uint8

// The path operations.
const (
	MoveTo Op = iota
	LineTo
	CurveTo // cubic Bezier with control points C and D
	ClosePath
)

// Color is an sRGB colour with full opacity. Paint says whether it is used at all.
type Color struct{ R, G, B uint8 }

// Style says how a path is drawn.
type Style struct {
	Stroke *Color    // nil: no stroke
	Width  float64   // stroke width in mm
	Dash   []float64 // lengths of marks and gaps in mm; empty: continuous
	Offset float64   // where in the dash pattern the line begins, mm
	Fill   *Color    // nil: no fill
	Round  bool      // round caps and joins instead of butt and mitre
}

// Anchor says which point of a text stands at its position, along the baseline.
type Anchor uint8

// Anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Face picks one of the three faces that every format carries.
type Face uint8

// The faces.
const (
	Regular Face = iota
	Bold
	Mono
)

// Text is one line of text. Its height is that of a capital letter, as ISO 3098 counts it.
type Text struct {
	At      Point   // on the baseline
	String  string  //
	Capital float64 // height of capitals in mm
	Face    Face    //
	Color   Color   //
	Anchor  Anchor  //
	Turned  bool    // reads upwards: rotated 90 degrees counter-clockwise about At
	Halo    bool    // white outline behind the glyphs, for text that must cross a line of the frame
}
