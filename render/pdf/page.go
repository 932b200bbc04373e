package pdf

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// pointsPerMM are the units of PDF, of which an inch has 72.
const pointsPerMM = 72 / 25.4

// raw writes marks that have passed the checks as a content stream. Its coordinates are
// millimetres from the top left corner, like those of package ink: the first operator of the
// stream turns and scales them.
type raw struct {
	number        int // of the page, from 0
	width, height float64
	title         string
	fonts         []*font
	content       bytes.Buffer
	now           state

	open    []*ink.Rect // of each open group, what it inks so far; nil: nothing
	groups  []ink.Group
	anchors []place // where named groups stand
	links   []place // where groups stand that lead elsewhere
}

func newRaw(fonts []*font, number int, width, height float64, title string) *raw {
	r := &raw{number: number, width: width, height: height, title: title, fonts: fonts}
	k := pointsPerMM
	fmt.Fprintf(&r.content, "%.6f 0 0 %.6f 0 %.4f cm\n", k, -k, height*k)
	return r
}

func (r *raw) Size() (width, height float64) { return r.width, r.height }

func (r *raw) Path(p ink.Path, s ink.Style) {
	paint := painting(s)
	if paint == "" {
		return
	}
	r.meet(ink.Mark{Path: p, Style: s}.Box())
	r.style(s)
	r.path(p)
	r.content.WriteString(paint + "\n")
}

// path writes the construction operators of a path (8.5.2).
func (r *raw) path(p ink.Path) {
	for _, s := range p {
		switch s.Op {
		case ink.MoveTo:
			r.write(point(s.P), "m ")
		case ink.LineTo:
			r.write(point(s.P), "l ")
		case ink.CurveTo:
			r.write(point(s.C), point(s.D), point(s.P), "c ")
		case ink.ClosePath:
			r.write("h ")
		}
	}
}

func (r *raw) Text(t ink.Text) {
	box := t.Box()
	r.meet(box, true)
	if t.Halo {
		r.halo(t)
	}
	r.fill(t.Color)
	shown, lost := ink.Substitute(t.String, t.Face)
	if len(lost) > 0 {
		// What the face cannot show can still be searched for and copied (14.9.4).
		r.write("/Span<</ActualText<feff", utf16Hex(t.String), ">>>BDC ")
	}
	r.write("BT ")
	r.font(t.Face, ink.Em(t.Face, t.Capital))
	r.write(matrix(t), "Tm <", r.fonts[t.Face].codes(shown), ">Tj ET")
	if len(lost) > 0 {
		r.write(" EMC")
	}
	r.write("\n")
}

// matrix places a text: upright, or a quarter turn counter-clockwise, in coordinates whose y
// runs downwards (9.4.2).
func matrix(t ink.Text) string {
	along := 0.0
	switch t.Anchor {
	case ink.Middle:
		along = -t.Width() / 2
	case ink.End:
		along = -t.Width()
	}
	if t.Turned {
		return "0 -1 -1 0 " + point(ink.At(t.At.X, t.At.Y-along))
	}
	return "1 0 0 -1 " + point(ink.At(t.At.X+along, t.At.Y))
}

// halo draws the white edge of a text as outlines: letters written twice would be found twice.
func (r *raw) halo(t ink.Text) {
	outline, err := ink.Outline(t)
	if err != nil {
		return // the faces are linked in and whole; the letters themselves follow anyhow
	}
	white := ink.White()
	r.style(ink.Style{Stroke: &white, Width: 0.4 * t.Capital, Round: true})
	r.path(outline)
	r.write("S\n")
}

func (r *raw) write(words ...string) {
	for _, w := range words {
		r.content.WriteString(w)
	}
}

func point(p ink.Point) string { return ink.Decimal(p.X) + " " + ink.Decimal(p.Y) + " " }

// boxInPoints writes a rectangle in the coordinates of the page itself, which run upwards.
func (r *raw) boxInPoints(b ink.Rect) string {
	numbers := []float64{b.Min.X, r.height - b.Max.Y, b.Max.X, r.height - b.Min.Y}
	words := make([]string, len(numbers))
	for i, v := range numbers {
		words[i] = ink.Decimal(v * pointsPerMM)
	}
	return "[" + strings.Join(words, " ") + "]"
}
