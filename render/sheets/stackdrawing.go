package sheets

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/stack"
)

// stackDrawing is the exploded view of one stud: on its axis from the top nut, spring washer,
// flat washer, the lugs from the outermost to the one on the face, and the stud itself.
type stackDrawing struct {
	book  *sheet.Book
	post  list.Post
	units quantity.System
	width float64
}

// Measures in millimetres.
const (
	stackHead    = 12.0 // the name of the stud and the part
	hardwareHigh = 7.0  // of each piece of hardware
	lugHigh      = 13.5 // of each lug, with three lines of words
	studHigh     = 19.0 // of the stud and the block that it stands in
	stackGap     = 5.0  // to the next drawing
	axis         = 17.0 // from the left edge
	balloon      = 3.2  // radius
	wordsAt      = 38.0 // where words begin
)

// hardware is what holds the lugs, from the top.
func (d stackDrawing) hardware() []string {
	return []string{nutWords(d.post), "spring washer", "flat washer"}
}

func (d stackDrawing) height() float64 {
	return stackHead + float64(len(d.hardware()))*hardwareHigh + float64(len(d.post.Lugs))*lugHigh +
		studHigh + float64(len(d.foot()))*flow.Line + stackGap
}

// foot is the lines below the drawing.
func (d stackDrawing) foot() []string {
	var lines []string
	for _, line := range footLines(d.post, d.units) {
		lines = append(lines, flow.Wrap(line, ink.Regular, d.width, 2)...)
	}
	return lines
}

func (d stackDrawing) draw(page ink.Page, x, y float64) {
	page.Open(ink.Group{Class: "stud", Name: d.post.Terminal.Ref(), Title: "Lugs on " + d.post.Terminal.Ref()})
	defer page.Close()
	d.head(page, x, y)
	y += stackHead
	lowest := y + float64(len(d.hardware()))*hardwareHigh + float64(len(d.post.Lugs))*lugHigh
	page.Path(ink.Lines(ink.At(x+axis, y-1), ink.At(x+axis, lowest+4)), ink.Pen(ink.Hair).DashDotted())
	for i, words := range d.hardware() {
		middle := y + hardwareHigh/2
		drawHardware(page, i, x+axis, middle)
		line(page, x+wordsAt, middle+flow.Letter/2, words, ink.Regular, d.width-wordsAt)
		y += hardwareHigh
	}
	for i := len(d.post.Lugs) - 1; i >= 0; i-- {
		d.lug(page, x, y, i)
		y += lugHigh
	}
	d.stud(page, x, y)
	y += studHigh
	for i, words := range d.foot() {
		line(page, x, y+flow.Letter+float64(i)*flow.Line, words, ink.Regular, d.width)
	}
}

// line writes words, cut to a width.
func line(page ink.Page, x, y float64, words string, face ink.Face, width float64) {
	if s := ink.Cut(ink.Clean(words), face, flow.Letter, width/(1+ink.Slack)); s != "" {
		page.Text(ink.Text{At: ink.At(x, y), String: s, Capital: flow.Letter, Face: face})
	}
}

func (d stackDrawing) head(page ink.Page, x, y float64) {
	t := d.post.Terminal
	name := schematic.Ref(t)
	capital, s := ink.Fit(ink.Clean(name), ink.Bold, flow.Title, flow.Letter, d.width/(1+ink.Slack))
	page.Text(ink.Text{At: ink.At(x, y+flow.Title+1), String: s, Capital: capital, Face: ink.Bold})
	words := t.Part.Short()
	if t.Spoken != "" {
		words += ", " + t.Spoken
	}
	line(page, x, y+flow.Title+1+4.6, words, ink.Regular, d.width)
}

// lug draws a lug with its balloon and words; number 1 is on the face.
func (d stackDrawing) lug(page ink.Page, x, y float64, i int) {
	l := d.post.Lugs[i]
	page.Open(ink.Group{Class: "lug", Name: l.Wire.Name(), Link: wireLink(l.Wire)})
	defer page.Close()
	middle := y + lugHigh/2
	radius := lugRadius(l)
	drawBalloon(page, x+balloon, middle, i+1)
	page.Path(ink.Lines(ink.At(x+2*balloon, middle), ink.At(x+axis-radius, middle)), ink.Pen(ink.Hair))
	d.tail(page, x+axis, middle, radius, l)
	drawRing(page, x+axis, middle, radius, 3, 1)
	words := []string{l.Wire.Name() + "  " + colourSize(l), "to " + farEnd(l), lugAndHole(d, l)}
	for k, s := range words {
		face := ink.Regular
		if k == 0 {
			face = ink.Bold
		}
		line(page, x+wordsAt, middle+flow.Letter/2+float64(k-1)*flow.Line, s, face, d.width-wordsAt)
	}
}

// colourSize is the colour and the size of the piece that a lug is on.
func colourSize(l stack.Lug) string {
	p := pieceAt(l)
	if !p.Colour.Known() {
		return "colour unknown " + sizeWords(l.Size)
	}
	return p.Colour.String() + " " + sizeWords(l.Size)
}

func lugAndHole(d stackDrawing, l stack.Lug) string {
	if hole := holeWords(d.book, l, d.units); hole != "" {
		return lugWords(l) + ", hole " + hole
	}
	return lugWords(l)
}

// lugRadius grows with the diameter of the conductor, so that the order is seen.
func lugRadius(l stack.Lug) float64 {
	const thin, thick, most = 4.2, 3.6, 33.6 // 33.6 mm2 is 2 AWG
	return min(9, thin+thick*math.Sqrt(float64(l.Area)/most))
}

// tail draws barrel and wire of a lug to the right of its ring.
func (d stackDrawing) tail(page ink.Page, x, y, radius float64, l stack.Lug) {
	half := 0.6 + radius/7
	barrel := ink.Rect{Min: ink.At(x+radius*0.8, y-half), Max: ink.At(x+radius*0.8+7, y+half)}
	wirepen.New(pieceAt(l).Colour, float64(l.Area), colour.Code.Print).Draw(page, ink.At(barrel.Max.X, y), ink.At(x+wordsAt-axis-2, y))
	page.Path(barrel.Path(), ink.Pen(ink.Medium).Filled(ink.White()))
}

// drawBalloon draws a number in a circle.
func drawBalloon(page ink.Page, x, y float64, number int) {
	page.Path(ink.Circle(ink.At(x, y), balloon), ink.Pen(ink.Medium))
	page.Text(ink.Text{At: ink.At(x, y+flow.Letter/2), String: fmt.Sprint(number), Capital: flow.Letter, Face: ink.Bold, Anchor: ink.Middle})
}

// drawRing draws a flat ring seen from the side and above: its upper face with the hole, and
// its edge.
func drawRing(page ink.Page, x, y, radius, hole, thick float64) {
	const flat = 0.36 // of the height of the ellipse to its width
	edge := ink.Path(nil).EllipticArc(ink.At(x, y+thick), radius, radius*flat, 0, 180)
	edge = edge.EllipticArc(ink.At(x, y), radius, radius*flat, 180, 360).Close()
	page.Path(edge, ink.Pen(ink.Medium).Filled(ink.White()))
	page.Path(ink.Ellipse(ink.At(x, y), radius, radius*flat), ink.Pen(ink.Medium).Filled(ink.White()))
	page.Path(ink.Ellipse(ink.At(x, y), hole, hole*flat), ink.Pen(ink.Thin))
}

// drawHardware draws the nut, the spring washer or the flat washer.
func drawHardware(page ink.Page, which int, x, y float64) {
	switch which {
	case 0:
		drawNut(page, x, y)
	case 1:
		drawRing(page, x, y-0.4, 4.2, 2.6, 0.9)
		page.Path(ink.Lines(ink.At(x+1.6, y+0.7), ink.At(x+2.6, y+2)), ink.Pen(ink.Medium))
	default:
		drawRing(page, x, y-0.4, 5, 2.6, 0.5)
	}
}

// drawNut draws a hexagon nut (ISO 4032) seen from the side and above.
func drawNut(page ink.Page, x, y float64) {
	const r, flat, high = 4.4, 0.36, 3.0
	corner := func(i int, dy float64) ink.Point {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		return ink.At(x+r*cos, y-1.5+dy+r*flat*sin)
	}
	// Corners 0 to 3 are in front: right, lower right, lower left, left.
	front := ink.Polygon(corner(0, 0), corner(1, 0), corner(2, 0), corner(3, 0), corner(3, high), corner(2, high), corner(1, high), corner(0, high))
	page.Path(front, ink.Pen(ink.Medium).Filled(ink.White()))
	for _, i := range []int{1, 2} {
		page.Path(ink.Lines(corner(i, 0), corner(i, high)), ink.Pen(ink.Medium))
	}
	top := ink.Polygon(corner(0, 0), corner(1, 0), corner(2, 0), corner(3, 0), corner(4, 0), corner(5, 0))
	page.Path(top, ink.Pen(ink.Medium).Filled(ink.White()))
	page.Path(ink.Ellipse(ink.At(x, y-1.5), 2.5, 2.5*flat), ink.Pen(ink.Thin))
}

// stud draws the threaded stud and the face of the terminal.
func (d stackDrawing) stud(page ink.Page, x, y float64) {
	const r, flat, long = 2.3, 0.36, 7.0
	top, face := y+1, y+1+long
	block := ink.At(x+axis, face)
	page.Path(ink.Polygon(
		ink.At(block.X-12, block.Y+3), ink.At(block.X-7, block.Y-3), ink.At(block.X+15, block.Y-3), ink.At(block.X+10, block.Y+3)), ink.Pen(ink.Medium).Filled(ink.White()))
	page.Path(ink.Rect{Min: ink.At(block.X-12, block.Y+3), Max: ink.At(block.X+10, block.Y+9)}.Path(), ink.Pen(ink.Medium).Filled(ink.White()))
	page.Path(ink.Polygon(ink.At(block.X+10, block.Y+3), ink.At(block.X+15, block.Y-3), ink.At(block.X+15, block.Y+3), ink.At(block.X+10, block.Y+9)), ink.Pen(ink.Medium).Filled(ink.White()))
	body := ink.Path(nil).EllipticArc(ink.At(x+axis, face), r, r*flat, 0, 180)
	body = body.EllipticArc(ink.At(x+axis, top), r, r*flat, 180, 360).Close()
	page.Path(body, ink.Pen(ink.Medium).Filled(ink.White()))
	for dy := 1.6; dy < long-0.5; dy += 1.6 {
		page.Path(ink.Path(nil).EllipticArc(ink.At(x+axis, top+dy), r, r*flat, 10, 170), ink.Pen(ink.Hair))
	}
	page.Path(ink.Ellipse(ink.At(x+axis, top), r, r*flat), ink.Pen(ink.Medium).Filled(ink.White()))
	line(page, x+wordsAt, face+flow.Letter/2, "face of the terminal", ink.Regular, d.width-wordsAt)
}
